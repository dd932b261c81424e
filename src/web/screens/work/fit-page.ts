import { useLayoutEffect, useRef, type RefObject } from 'react';

/** What Letter and A4 both hold within their margins: the height of the one, the width of the other. */
const PAGE_MM = { width: 181, height: 238 };
const PX_PER_MM = 96 / 25.4;
/** As large as still reads as a page, and as small as still reads at all. */
const ZOOM = { most: 1.5, least: 0.5, step: 0.02 };

/** Sets what is printed as large as fits on one page, so that no page is half empty. */
export function useFitPage(): RefObject<HTMLElement | null> {
  const ref = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const fit = (): void => {
      if (ref.current) ref.current.style.setProperty('--sheet-zoom', String(zoomOf(ref.current)));
    };
    fit();
    void document.fonts.ready.then(fit);
  });
  return ref;
}

/** By halving, as each try lays out the day anew. */
function zoomOf(of: HTMLElement): number {
  let [low, high] = [ZOOM.least, ZOOM.most];
  while (ZOOM.step < high - low) {
    const zoom = (low + high) / 2;
    if (zoom * heightAt(of, zoom) <= PAGE_MM.height * PX_PER_MM) low = zoom;
    else high = zoom;
  }
  of.style.removeProperty('width');
  return low;
}

function heightAt(of: HTMLElement, zoom: number): number {
  of.style.width = `${PAGE_MM.width / zoom}mm`;
  return of.offsetHeight;
}
