// Keyboard in a ribbon's lanes: focus a lane, then left and right walk through its subs; Home and End jump.
(() => {
  const steps = { ArrowRight: 1, ArrowLeft: -1 };
  for (const lane of document.querySelectorAll('svg.ribbon .lane')) {
    const subs = [...lane.querySelectorAll('.s')];
    lane.addEventListener('keydown', (event) => {
      const at = subs.indexOf(document.activeElement);
      let next = event.key === 'Home' ? 0 : event.key === 'End' ? subs.length - 1 : at + (steps[event.key] || 0);
      if (!(event.key in steps) && event.key !== 'Home' && event.key !== 'End') return;
      next = Math.min(Math.max(next, 0), subs.length - 1);
      subs[next].focus();
      event.preventDefault();
    });
  }
})();
