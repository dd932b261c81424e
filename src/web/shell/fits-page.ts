import { useCallback } from 'react';

/** What Letter and A4 both hold within their margins: the height of the one, the width of the other. */
const PAGE_MM = { width: 181, height: 246 };
const PX_PER_MM = 96 / 25.4;
/** Larger where a page would stay half empty; smaller than usual only on the fullest of days. */
const SIZES = { least: 0.5, most: 1.25, step: 0.02 };

/** Sets the size of print so that a section fills one page: `--fit` is for the print style. */
export const useFitsPage = () =>
  useCallback((section: HTMLElement | null) => {
    if (!section) return;
    const observer = new ResizeObserver(() =>
      section.style.setProperty('--fit', sizeThatFits(section).toFixed(2)),
    );
    observer.observe(section);
    return () => observer.disconnect();
  }, []);

/** By halving, as each try lays out the section anew. */
function sizeThatFits(section: HTMLElement): number {
  let [low, high] = [SIZES.least, SIZES.most];
  while (SIZES.step < high - low) {
    const size = (low + high) / 2;
    section.style.width = `${PAGE_MM.width / size}mm`;
    if (size * section.offsetHeight <= PAGE_MM.height * PX_PER_MM) low = size;
    else high = size;
  }
  section.style.removeProperty('width');
  return low;
}
