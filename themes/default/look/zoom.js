/* A picture that zooms to its pixels. Without this script the link opens the full picture.

   <a class="zoomable" href="(full picture)"
      data-tiles="tiles/"   their folder, or the info.json in it; data-tile="1024", their side
      data-width="6000" data-height="4000"   of the full picture; else the img's attributes
      data-say-close="…" (-in, -out, -whole), data-say-type="…" what it is, where it is no observation>
     <img …> (or a picture element around it)</a>

   An svg.overlay in the same figure lies over it where the page shows it. Tiles are named as IIIF Image API 3
   has them, level 0; nothing is fetched by script. Keys: + - 0, arrows, Escape. */
(() => {
  const CLOSEST = 4; // screen pixels for one of the picture's
  const STEP = 1.6;
  const FILL = { position: 'absolute', inset: '0', width: '100%', height: '100%', maxWidth: 'none', maxHeight: 'none' };

  const make = (tag, into, style, also = {}) => {
    const element = Object.assign(document.createElement(tag), also);
    Object.assign(element.style, style);
    into.append(element);
    return element;
  };

  const open = (link, shown, width, height) => {
    const tiles = (link.dataset.tiles || '').replace(/info\.json$/, '').replace(/([^/])$/, '$1/');
    const side = Number(link.dataset.tile || 1024);
    const dialog = make('dialog', document.body, { ...FILL, position: 'fixed', padding: '0', border: '0', overflow: 'hidden', background: 'var(--picture, #000)' }, { className: 'viewer', ariaLabel: shown.alt });
    const stage = make('div', dialog, { ...FILL, overflow: 'hidden', touchAction: 'none', cursor: 'grab' }, { className: 'zoomable', tabIndex: 0 });
    const layer = make('div', stage, { position: 'absolute', transformOrigin: '0 0', width: `${width}px`, height: `${height}px` });
    make('img', layer, FILL, { alt: shown.alt, draggable: false, src: tiles ? shown.currentSrc || shown.src : link.href });
    const drawn = link.closest('figure')?.querySelector('svg.overlay');
    if (drawn && getComputedStyle(drawn).display !== 'none') {
      Object.assign(layer.appendChild(drawn.cloneNode(true)).style, FILL, { pointerEvents: 'none', zIndex: 1 });
    }

    let scale = 1, x = 0, y = 0; // screen pixels: of one picture pixel, and of the picture's corner
    let wanted = new Set();
    const placed = new Map();

    // tiles of other levels stay until every one that is wanted has come
    const tidy = () => {
      if ([...wanted].some((key) => !placed.get(key).dataset.done)) return;
      for (const [key, img] of placed) if (!wanted.has(key)) { img.remove(); placed.delete(key); }
    };
    const tile = (left, top, level) => {
      const across = Math.min(side * level, width - left), down = Math.min(side * level, height - top);
      const region = across === width && down === height ? 'full' : `${left},${top},${across},${down}`;
      const box = { inset: `${top}px auto auto ${left}px`, width: `${across}px`, height: `${down}px` };
      const img = make('img', layer, { ...FILL, ...box }, { alt: '', draggable: false });
      img.onload = img.onerror = () => { img.dataset.done = '1'; tidy(); };
      img.src = `${tiles}${region}/${Math.ceil(across / level)},${Math.ceil(down / level)}/0/default.jpg`;
      return img;
    };
    const fill = () => {
      let level = 1; // the coarsest that still has a pixel for each of the screen's
      while (level * 2 * scale * devicePixelRatio <= 1 && Math.max(width, height) / level > side) level *= 2;
      const step = side * level, first = (at) => Math.max(0, Math.floor(-at / scale / step) * step);
      wanted = new Set();
      for (let top = first(y); top < Math.min(height, (stage.clientHeight - y) / scale); top += step) {
        for (let left = first(x); left < Math.min(width, (stage.clientWidth - x) / scale); left += step) {
          const key = `${level}/${left}/${top}`;
          wanted.add(key);
          if (!placed.has(key)) placed.set(key, tile(left, top, level));
        }
      }
      tidy();
    };

    const clamp = (value, low, high) => Math.min(Math.max(value, low), high);
    const within = (at, room, length) => (length <= room ? (room - length) / 2 : clamp(at, room - length, 0));
    const draw = () => {
      x = within(x, stage.clientWidth, width * scale);
      y = within(y, stage.clientHeight, height * scale);
      layer.style.transform = `translate(${x}px,${y}px) scale(${scale})`;
      layer.style.setProperty('--unscale', 1 / scale); // for what is drawn over it and keeps its size
      if (tiles) fill();
    };
    const zoom = (times, atX = stage.clientWidth / 2, atY = stage.clientHeight / 2) => {
      const before = scale, whole = Math.min(stage.clientWidth / width, stage.clientHeight / height);
      scale = clamp(scale * times, whole, Math.max(CLOSEST, whole));
      x = atX - (atX - x) * scale / before;
      y = atY - (atY - y) * scale / before;
      draw();
    };
    const move = (right, down) => { x += right; y += down; draw(); };
    const fit = () => zoom(1e-9);

    const fingers = new Map();
    const spread = () => {
      const [a, b = a] = fingers.values();
      return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2, apart: Math.hypot(a.x - b.x, a.y - b.y) || 1 };
    };
    const on = (kind, act, how) => stage.addEventListener(kind, act, how);
    const touch = (event) => fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
    const lift = (event) => fingers.delete(event.pointerId);
    on('pointerdown', (event) => { stage.setPointerCapture(event.pointerId); touch(event); });
    on('pointermove', (event) => {
      if (!fingers.has(event.pointerId)) return;
      const before = spread();
      touch(event);
      const now = spread();
      move(now.x - before.x, now.y - before.y);
      if (fingers.size === 2) zoom(now.apart / before.apart, now.x, now.y);
    });
    on('pointerup', lift);
    on('pointercancel', lift);
    on('wheel', (event) => {
      event.preventDefault();
      zoom(Math.exp(-event.deltaY * (event.deltaMode ? 0.05 : 0.002)), event.clientX, event.clientY);
    }, { passive: false });
    on('dblclick', (event) => (scale >= CLOSEST * 0.99 ? fit() : zoom(STEP ** 2, event.clientX, event.clientY)));

    const closer = () => zoom(STEP), farther = () => zoom(1 / STEP);
    const keys = {
      '+': closer, '=': closer, '-': farther, 0: fit,
      ArrowLeft: () => move(80, 0), ArrowRight: () => move(-80, 0), ArrowUp: () => move(0, 80), ArrowDown: () => move(0, -80),
    };
    dialog.addEventListener('keydown', (event) => {
      if (event.ctrlKey || event.metaKey || !keys[event.key]) return;
      event.preventDefault();
      keys[event.key]();
    });

    const bar = make('div', dialog, { position: 'absolute', top: '.6rem', right: '.6rem', display: 'flex', gap: '.4rem' });
    const button = (mark, title, onclick) => {
      make('button', bar, { minWidth: '2.75rem', minHeight: '2.75rem' }, { textContent: mark, title, ariaLabel: title, onclick });
    };
    const say = link.dataset;
    button('−', say.sayOut || 'Farther', farther);
    button('+', say.sayIn || 'Closer', closer);
    button('▭', say.sayWhole || 'Whole picture', fit);
    button('×', say.sayClose || 'Close', () => dialog.close());

    if (say.sayType) make('p', dialog, { position: 'absolute', left: '.6rem', bottom: '.6rem', margin: '0' }, { className: 'picture-type', textContent: say.sayType });

    addEventListener('resize', fit);
    dialog.addEventListener('close', () => { removeEventListener('resize', fit); dialog.remove(); link.focus(); });
    dialog.showModal();
    stage.focus();
    fit();
  };

  document.addEventListener('click', (event) => {
    const link = event.target.closest?.('a.zoomable');
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
    const img = link.querySelector('img');
    const [width, height] = ['width', 'height'].map((side) => Number(link.dataset[side] || img.getAttribute(side)));
    if (!width || !height) return;
    event.preventDefault();
    open(link, img, width, height);
  });
})();
