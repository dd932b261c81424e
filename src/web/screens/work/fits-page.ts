import { useCallback } from 'react';

/** What a sheet of paper holds, Letter as well as A4, in pixels of CSS between usual margins, with room to spare. */
const PAGE = { width: 700, height: 850 };
/** Type is made larger where a page would stay half empty, and never too small to read. */
const SIZES = { least: 0.7, most: 1.25 };

/** Sets the size of print so that a section fills one page: `--fit` is for the print style. */
export const useFitsPage = () =>
  useCallback((section: HTMLElement | null) => {
    if (!section) return;
    const measure = () => {
      const { width, height } = section.getBoundingClientRect();
      // Larger type makes lines longer and more of them: what it takes grows by the square.
      const size = Math.sqrt((PAGE.width * PAGE.height) / (width * height));
      const fit = Math.min(SIZES.most, Math.max(SIZES.least, size));
      section.style.setProperty('--fit', String(Math.floor(100 * fit) / 100));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(section);
    return () => observer.disconnect();
  }, []);
