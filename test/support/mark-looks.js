/* global document, getComputedStyle */
// Marks text for the rule of contrast: of all that looks the same, the first two. What looks the
// same has the same contrast, and the rule takes longer than all other rules together.
// Read as text and run in a browser.
() => {
  const painted = new Map();
  /** What lies behind an element's text, from the page up. */
  const behind = (element) => {
    if (!element) return '';
    if (!painted.has(element)) {
      const { backgroundColor, backgroundImage, opacity, filter, position } =
        getComputedStyle(element);
      // What is placed over something else may lie on anything, so that it looks like nothing else.
      const place = position === 'absolute' ? painted.size : '';
      painted.set(
        element,
        `${behind(element.parentElement)}/${[backgroundColor, backgroundImage, opacity, filter, place]}`,
      );
    }
    return painted.get(element);
  };
  const isText = (element) =>
    element.matches('input, select, textarea') ||
    [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== '');
  const seen = new Map();
  for (const element of document.body.querySelectorAll('*')) {
    element.removeAttribute('data-look');
    if (!isText(element) || element.getClientRects().length === 0) continue;
    const { color, fontSize, fontWeight, textShadow } = getComputedStyle(element);
    const isOff = element.closest(':disabled, [data-disabled], [aria-disabled=true]') !== null;
    const look = [behind(element), color, fontSize, fontWeight, textShadow, isOff].join();
    const count = (seen.get(look) ?? 0) + 1;
    seen.set(look, count);
    if (count <= 2) element.setAttribute('data-look', '');
  }
};
