/* Two pictures of one framing, one laid over the other, with an edge to push. Without this script both are shown, one
   below the other.

   <figure class="compare" data-before="One night" data-after="Five nights" data-say-edge="Where the two meet">
     <img src="before/800.jpg" alt="…" width="…" height="…">
     <img src="after/800.jpg" alt="…" width="…" height="…">     (or picture elements around each; both of one size)
     <figcaption>…</figcaption>
   </figure>

   Drag or tap on the pictures, or use the slider below them with a finger or the arrow keys. The first picture lies
   left of the edge. Gives the classes .compare-pictures, .compare-edge and .compare-word to the style sheet;
   words and edge are drawn in --on-picture, or white. */
(() => {
  const COVER = { position: 'absolute', inset: '0', width: '100%', height: '100%', maxHeight: 'none', objectFit: 'cover' };

  const make = (tag, name, into, style) => {
    const element = document.createElement(tag);
    element.className = name;
    Object.assign(element.style, style);
    into.append(element);
    return element;
  };

  const word = (text, into, style) => {
    if (!text) return null;
    const element = make('span', 'compare-word', into, {
      position: 'absolute', bottom: '.5rem', padding: '.1rem .5rem', pointerEvents: 'none', color: 'var(--on-picture, #fff)', background: 'rgb(0 0 0 / .6)', ...style,
    });
    element.textContent = text;
    return element;
  };

  const set = (figure) => {
    const [before, after] = figure.querySelectorAll('img');
    if (!before || !after || figure.dataset.set) return;
    figure.dataset.set = '1';
    const [first, second] = [before, after].map((img) => img.closest('picture') || img);
    const pictures = document.createElement('div');
    pictures.className = 'compare-pictures';
    Object.assign(pictures.style, { position: 'relative', overflow: 'hidden', touchAction: 'pan-y', cursor: 'ew-resize', isolation: 'isolate' });
    first.before(pictures);
    pictures.append(first, second);
    Object.assign(before.style, { display: 'block', width: '100%', height: 'auto' });
    Object.assign(after.style, COVER);
    before.draggable = after.draggable = false;
    const edge = make('div', 'compare-edge', pictures, { position: 'absolute', top: '0', bottom: '0', width: '2px', marginLeft: '-1px', background: 'var(--on-picture, #fff)', pointerEvents: 'none' });
    const left = word(figure.dataset.before, pictures, { left: '.5rem' });
    const right = word(figure.dataset.after, pictures, { right: '.5rem' });

    const slider = document.createElement('input');
    Object.assign(slider, { type: 'range', min: 0, max: 100, step: 0.5, value: 50 });
    Object.assign(slider.style, { display: 'block', width: '100%', margin: '0', minHeight: '1.5rem' });
    slider.setAttribute('aria-label', figure.dataset.sayEdge || 'Where the two meet');
    pictures.after(slider);

    const show = () => {
      const at = Number(slider.value);
      after.style.clipPath = `inset(0 0 0 ${at}%)`;
      edge.style.left = `${at}%`;
      slider.setAttribute('aria-valuetext', `${Math.round(at)} %`);
      if (left) left.style.visibility = at < 12 ? 'hidden' : 'visible';
      if (right) right.style.visibility = at > 88 ? 'hidden' : 'visible';
    };
    const follow = (event) => {
      const box = pictures.getBoundingClientRect();
      slider.value = 100 * (event.clientX - box.left) / box.width;
      show();
    };
    pictures.addEventListener('pointerdown', (event) => { pictures.setPointerCapture(event.pointerId); follow(event); });
    pictures.addEventListener('pointermove', (event) => { if (pictures.hasPointerCapture(event.pointerId)) follow(event); });
    slider.addEventListener('input', show);
    show();
  };

  document.querySelectorAll('figure.compare').forEach(set);
})();
