/**
 * What fills a line of the strip: two broad strokes whose dashes are stripes, dots or hatching, as
 * `year.css` says for each kind. Strokes print the same everywhere, which patterns of the
 * background do not.
 */
export const LineFill = () => (
  <svg className="year-fill" aria-hidden>
    <line x1="-40" x2="100%" y1="50%" y2="50%" />
    <line x1="-40" x2="100%" y1="50%" y2="50%" />
  </svg>
);
