// Search: lists the entries that answer the form; the form's state lives in the address.
(() => {
  const AT_ONCE = 40; // more of them when asked for
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

  // a hit as the page lists it: title, day, summary, hours
  const base = document.querySelector('script[src*="search-index.js"]').getAttribute('src').replace(/look\/search-index\.js.*$/, '');
  const { lang } = document.documentElement; // dates as the pages write them: plain English is British there
  const day = new Intl.DateTimeFormat(lang === 'en' ? 'en-GB' : lang, { dateStyle: 'long', timeZone: 'UTC' });
  const element = (name, text, parent) => {
    const made = document.createElement(name);
    if (text) made.textContent = text;
    parent.append(made);
    return made;
  };
  const duration = (hours) => {
    const minutes = Math.round(hours * 60);
    return [[Math.floor(minutes / 60), 'h'], [minutes % 60, 'min']].filter(([n]) => n).map((part) => part.join('\u202f')).join(' ');
  };
  const row = (one) => {
    const item = document.createElement('li');
    const words = element('div', '', item);
    words.className = 'words';
    const link = element('a', one.t, element('h2', '', words));
    link.href = `${base}${one.a}index.html`;
    const by = element('p', '', words);
    by.className = 'by';
    element('time', day.format(new Date(one.d)), by).dateTime = one.d;
    if (index.types[one.p]) by.append(` · ${index.types[one.p]}`);
    if (one.s) element('p', one.s, words);
    if (one.h) element('p', duration(one.h), words).className = 'sum';
    return item;
  };
  const newest = document.querySelector('#newest');
  const hits = document.querySelector('#hits');
  const more = document.querySelector('#more');
  let waiting = [];
  const showMore = () => {
    hits.append(...waiting.splice(0, AT_ONCE).map(row));
    more.hidden = waiting.length === 0;
  };

  const show = () => {
    const state = asked();
    const named = Boolean(state.q) && entries.some((one) => one.names.includes(tight(state.q)));
    const fit = entries.filter((one) =>
      fits(one, state) && (!named || one.names.includes(tight(state.q)) || one.text.includes(fold(state.q))));
    const all = Object.keys(state).length === 0;
    newest.hidden = !all;
    hits.hidden = all;
    hits.replaceChildren();
    waiting = all ? [] : [...fit];
    showMore();
    const count = fit.length;
    found.textContent = count === 0 ? found.dataset.none : count === 1 ? found.dataset.one : found.dataset.many.replace('#', count);
    const query = new URLSearchParams(state).toString();
    history.replaceState(null, '', query ? `?${query}` : location.pathname);
  };

  for (const [name, value] of new URLSearchParams(location.search)) {
    const field = form.elements.namedItem(name);
    if (field) field.value = value;
  }
  more.addEventListener('click', showMore);
  form.addEventListener('input', show);
  form.addEventListener('submit', (event) => { event.preventDefault(); show(); });
  show();
})();
