// Search: shows the entries of the list that answer the form; the form's state lives in the address.
(() => {
  const form = document.querySelector('form.search');
  const index = self.diaryIndex;
  if (!form || !index) return;
  const fold = (text) => text.toLocaleLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');
  const tight = (text) => fold(text).replace(/[\s-]+/g, '');
  const entries = index.entries.map((one) => ({
    ...one,
    text: fold([one.t, one.s, one.w, ...one.n, ...one.o, ...one.r, ...one.f, index.types[one.p] || ''].join(' ')),
    names: one.n.map(tight),
  }));
  const rows = new Map([...document.querySelectorAll('#results .entries > li')].map((row) => [
    row.querySelector('a').getAttribute('href').replace(/^(\.\.\/)+/, '').replace(/index\.html$/, ''), row,
  ]));
  const found = document.querySelector('.found');
  const asked = () => Object.fromEntries([...new FormData(form)].filter(([, value]) => value !== ''));

  // words of the query; a designation written in one or two pieces ("m 83", "ngc5236") is tried as a name first
  const answers = (one, query) => {
    const whole = tight(query);
    if (one.names.includes(whole)) return true;
    return fold(query).split(/\s+/).filter(Boolean).every((word) => one.text.includes(word));
  };
  const fits = (one, state) =>
    (!state.q || answers(one, state.q)) &&
    (!state.rig || one.r.includes(state.rig)) &&
    (!state.filter || one.f.includes(state.filter)) &&
    (!state.band || one.k.includes(state.band)) &&
    (!state.year || one.y.includes(Number(state.year))) &&
    (!state.hours || one.h >= Number(state.hours)) &&
    (!state.moon || (one.m && (state.moon === 'dark' ? one.m[0] <= 0.5 : one.m[1] > 0.5)));

  const show = () => {
    const state = asked();
    let count = 0;
    const named = Boolean(state.q) && entries.some((one) => one.names.includes(tight(state.q)));
    for (const one of entries) {
      const fit = fits(one, state) && (!named || one.names.includes(tight(state.q)) || one.text.includes(fold(state.q)));
      const row = rows.get(one.a);
      if (row) row.hidden = !fit;
      count += fit;
    }
    found.textContent = count === 0 ? found.dataset.none : count === 1 ? found.dataset.one : found.dataset.many.replace('#', count);
    const query = new URLSearchParams(state).toString();
    history.replaceState(null, '', query ? `?${query}` : location.pathname);
  };

  for (const [name, value] of new URLSearchParams(location.search)) {
    const field = form.elements.namedItem(name);
    if (field) field.value = value;
  }
  form.addEventListener('input', show);
  form.addEventListener('submit', (event) => { event.preventDefault(); show(); });
  show();
})();
