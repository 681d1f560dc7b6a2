// Search: lists the entries that answer the form; the form's state lives in the address. What it looks through comes in parts,
// fetched when they are asked for (look/search-index.js says which there are).
(() => {
  const AT_ONCE = 40; // more of them when asked for
  const FIRST = 6; // so many are shown before the others are made
  const form = document.querySelector('form.search');
  const index = self.diarySearch;
  if (!form || !index) return;
  const found = document.querySelector('.found');
  const source = document.querySelector('script[src*="search-index.js"]').getAttribute('src');
  const base = source.replace(/look\/search-index\.js.*$/, '');

  // parts by their name: what they hold, or who waits for it
  const parts = new Map();
  const arrived = new Map();
  index.part = (name, held) => arrived.get(name)?.(held);
  const fetched = (name) => new Promise((resolve, reject) => {
    arrived.set(name, resolve);
    const script = document.createElement('script');
    script.src = source.replace(/search-index\.js/, `search/${name}.js`);
    script.onerror = () => { parts.delete(name); reject(new Error(name)); };
    document.head.append(script);
  });
  const part = (name) => {
    if (index.parts) return Promise.resolve(index.parts[name]);
    if (!parts.has(name)) parts.set(name, fetched(name));
    return parts.get(name);
  };

  // words as the index has them: lower case, no accents; names without blanks and hyphens
  const fold = (text) => text.toLowerCase().normalize('NFKD').replace(/\p{M}/gu, '');
  const tight = (text) => fold(text).replace(/[\s-]+/g, '');
  const wordsOf = (text) => fold(text).split(/[^\p{L}\p{N}_]+/u).filter(Boolean);
  const hex = (text) => Array.from(new TextEncoder().encode(text), (byte) => byte.toString(16).padStart(2, '0')).join('');

  // entries of a term: steps from one to the next, a run of n steps of 1 as -n
  const unfold = (steps, into) => {
    let at = -1;
    for (const step of steps) {
      if (step > 0) into.add(at += step);
      else for (let n = step; n < 0; n += 1) into.add(at += 1);
    }
  };
  // a term is looked for by its beginning, a whole name as it is
  const entriesWith = async (asked, whole) => {
    const beginnings = index.words.filter((each) => asked.startsWith(each) || (!whole && each.startsWith(asked)));
    const held = await Promise.all(beginnings.map((each) => part(`words-${hex(each)}`)));
    const entries = new Set();
    for (const terms of held) {
      if (whole) {
        if (Object.hasOwn(terms, asked)) unfold(terms[asked], entries);
      } else {
        for (const term in terms) if (term.startsWith(asked)) unfold(terms[term], entries);
      }
    }
    return entries;
  };
  // a designation written in one or two pieces ("m 83", "ngc5236") is a name; else every word has to be there, or the beginning
  // of a name
  const answering = async (query) => {
    const name = `=${tight(query)}`;
    const named = await entriesWith(name, true);
    if (named.size) return named;
    const sets = await Promise.all(wordsOf(query).map((word) => entriesWith(word, false)));
    if (!sets.length) return new Set();
    const [first, ...others] = sets.sort((one, other) => one.size - other.size);
    const worded = [...first].filter((entry) => others.every((set) => set.has(entry)));
    return new Set([...worded, ...(await entriesWith(name, false))]);
  };
  const fitting = (choices, state) => {
    const tests = [];
    for (const name of ['rig', 'filter', 'band', 'year']) {
      if (state[name]) {
        const { answers, of } = choices[name];
        const fit = answers.map((answer) => answer.some((one) => String(one) === state[name]));
        tests.push((entry) => fit[of[entry]]);
      }
    }
    if (state.hours) tests.push((entry) => choices.hours[entry] >= 100 * Number(state.hours));
    if (state.moon === 'dark') tests.push((entry) => choices.darkest[entry] >= 0 && choices.darkest[entry] <= 50);
    if (state.moon === 'bright') tests.push((entry) => choices.brightest[entry] > 50);
    return (entry) => tests.every((test) => test(entry));
  };
  const hitsOf = async (state) => {
    const { q, ...chosen } = state;
    const entries = q ? [...await answering(q)].sort((a, b) => a - b) : Array.from({ length: index.entries }, (_, entry) => entry);
    return Object.keys(chosen).length ? entries.filter(fitting(await part('choices'), chosen)) : entries;
  };

  // a hit as the page lists it: title, day, summary, hours
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
  const row = ([title, address, published, hours, summary, type]) => {
    const item = document.createElement('li');
    const words = element('div', '', item);
    words.className = 'words';
    const link = element('a', title, element('h2', '', words));
    link.href = `${base}${address}index.html`;
    const by = element('p', '', words);
    by.className = 'by';
    element('time', day.format(new Date(published)), by).dateTime = published;
    if (index.types[type]) by.append(` · ${index.types[type]}`);
    if (summary) element('p', summary, words);
    if (hours) element('p', duration(hours), words).className = 'sum';
    return item;
  };
  const rowOf = async (entry) => (await part(`rows-${Math.floor(entry / index.rowsAPart)}`))[entry % index.rowsAPart];

  const newest = document.querySelector('#newest');
  const hits = document.querySelector('#hits');
  const more = document.querySelector('#more');
  let waiting = [];
  let asking = 0; // of several answers under way, only that of the newest question is shown
  const showMore = async (question) => {
    const rows = waiting.splice(0, AT_ONCE).map(rowOf);
    for (const [number, coming] of rows.entries()) {
      const item = row(await coming);
      if (question !== asking) return;
      hits.append(item);
      if (number === FIRST - 1) await new Promise((resolve) => { setTimeout(resolve); });
    }
    more.hidden = waiting.length === 0;
  };
  const show = async () => {
    asking += 1;
    const question = asking;
    const state = Object.fromEntries([...new FormData(form)].filter(([, value]) => value !== ''));
    const query = new URLSearchParams(state).toString();
    history.replaceState(null, '', query ? `?${query}` : location.pathname);
    const all = query === '';
    const fit = await hitsOf(state);
    if (question !== asking) return;
    newest.hidden = !all;
    hits.hidden = all;
    hits.replaceChildren();
    more.hidden = true;
    waiting = all ? [] : fit;
    const count = fit.length;
    found.textContent = count === 0 ? found.dataset.none : count === 1 ? found.dataset.one : found.dataset.many.replace('#', count);
    await showMore(question);
  };
  const failed = () => { found.textContent = found.dataset.failed; };
  const ask = () => show().catch(failed);

  for (const [name, value] of new URLSearchParams(location.search)) {
    const field = form.elements.namedItem(name);
    if (field) field.value = value;
  }
  more.addEventListener('click', () => showMore(asking).catch(failed));
  form.addEventListener('input', ask);
  form.addEventListener('submit', (event) => { event.preventDefault(); ask(); });
  ask();
})();
