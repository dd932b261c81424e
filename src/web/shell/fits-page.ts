import { useCallback } from 'react';
import type { UnitSystem } from '../../../shared/units/unit.js';

/**
 * What a page holds within its margins: Letter where units are those of its country, else what
 * Letter and A4 both hold. A4 is a little narrower and
 * longer by more.
 */
const PAGE_MM = { us: { width: 187, height: 249 }, metric: { width: 181, height: 246 } } as const;
const PX_PER_MM = 96 / 25.4;
/** Larger where a page would stay half empty; smaller than usual only on the fullest of days. */
const SIZES = { least: 0.5, most: 1.25, step: 0.005 };

/** Sets the size of print so that a section fills one page: `--fit` is for the print style. */
export const useFitsPage = (units: UnitSystem) =>
  useCallback(
    (section: HTMLElement | null) => {
      if (!section) return;
      const observer = new ResizeObserver(() =>
        section.style.setProperty('--fit', sizeThatFits(section, units).toFixed(3)),
      );
      observer.observe(section);
      return () => observer.disconnect();
    },
    [units],
  );

/** By halving, as each try lays out the section anew. */
function sizeThatFits(section: HTMLElement, units: UnitSystem): number {
  const { width, height } = PAGE_MM[units];
  let [low, high] = [SIZES.least, SIZES.most];
  while (SIZES.step < high - low) {
    const size = (low + high) / 2;
    section.style.width = `${width / size}mm`;
    if (size * section.offsetHeight <= height * PX_PER_MM) low = size;
    else high = size;
  }
  section.style.removeProperty('width');
  return low;
}
