// Lives in pages shown by `sitegen preview` alone: reloads when the site has changed, keeps the scroll position, shows problems.
(() => {
  'use strict';
  const shown = new URL(document.currentScript.src).searchParams.get('shown');
  const place = `sitegen-preview ${location.pathname}`;

  const kept = sessionStorage.getItem(place);
  if (kept !== null) {
    sessionStorage.removeItem(place);
    const back = () => scrollTo({ left: 0, top: Number(kept), behavior: 'instant' });
    back();
    addEventListener('load', () => { back(); history.scrollRestoration = 'auto'; });
  }

  const reload = () => {
    sessionStorage.setItem(place, String(scrollY));
    history.scrollRestoration = 'manual';
    location.reload();
  };

  // Set through the object model: the page's own policy allows no style attributes.
  const look = {
    position: 'fixed', inset: 'auto 0 0 0', zIndex: '2147483647', maxHeight: '45vh', overflow: 'auto', margin: '0',
    padding: '0.8rem 1rem', background: 'Canvas', color: 'CanvasText', borderTop: '3px solid', font: '0.9rem/1.45 monospace',
    whiteSpace: 'pre-wrap', overflowWrap: 'anywhere',
  };
  let board = null;
  const tell = (problems) => {
    board?.remove();
    board = null;
    if (!problems.length) return;
    board = document.createElement('aside');
    board.id = 'sitegen-problems';
    board.setAttribute('role', 'alert');
    Object.assign(board.style, look);
    const head = problems.length === 1 ? 'A problem: the page below is the last good one.'
      : `${problems.length} problems: the page below is the last good one.`;
    board.textContent = [head, ...problems].join('\n');
    document.body.append(board);
  };

  const news = new EventSource('/-/news');
  news.addEventListener('message', (event) => {
    const now = JSON.parse(event.data);
    if (now.shown !== shown) reload();
    else tell(now.problems);
  });
})();
