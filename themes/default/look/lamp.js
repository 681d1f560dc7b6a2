// The three-way lamp: remembers the reader's choice. Without this script the switch still works, for one page.
(() => {
  const lamps = document.querySelectorAll('input[name="lamp"]');
  const kept = () => { try { return localStorage.getItem('lamp'); } catch { return null; } };
  const keep = (lamp) => { try { localStorage.setItem('lamp', lamp); } catch { /* private window: not remembered */ } };
  const show = (lamp) => { document.documentElement.dataset.lamp = lamp; };
  const systems = matchMedia('(prefers-color-scheme: dark)').matches ? 'dusk' : 'paper';
  const chosen = kept();
  if (chosen) show(chosen);
  for (const one of lamps) {
    one.checked = one.value === (chosen || systems);
    one.addEventListener('change', () => { keep(one.value); show(one.value); });
  }
})();
