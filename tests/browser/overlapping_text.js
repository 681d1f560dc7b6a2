// Pieces of text that lie over one another: their line boxes, less a fifth above and below, share more than a pixel.
() => {
  const unseen = 'title, desc, script, option, legend, .visually-hidden, .skip';
  const seen = { opacityProperty: true, visibilityProperty: true, contentVisibilityAuto: true };
  const pieces = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const parent = node.parentElement;
    if (!node.data.trim() || parent.closest(unseen) || !parent.checkVisibility(seen)) continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects()) {
      if (box.width < 1) continue;
      const [top, bottom] = [box.top + 0.2 * box.height, box.bottom - 0.2 * box.height];
      pieces.push({ node, top, bottom, left: box.left, right: box.right });
    }
  }
  pieces.sort((one, other) => one.top - other.top);
  const over = (one, other) => one.node !== other.node
    && Math.min(one.right, other.right) - Math.max(one.left, other.left) > 1
    && Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 1;
  const words = (piece) => piece.node.data.trim().slice(0, 30);
  const found = [];
  pieces.forEach((one, at) => {
    for (let next = at + 1; next < pieces.length && pieces[next].top < one.bottom; next++) {
      if (over(one, pieces[next])) found.push(`'${words(one)}' over '${words(pieces[next])}'`);
    }
  });
  return found;
}
