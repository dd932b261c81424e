import { useEffect, type RefObject } from 'react';

/** Where one was before; undefined when the page was just loaded. */
let before: string | undefined;

/**
 * After a change of place the title of the new screen takes the focus, as it does when a page is
 * loaded, so that a screen reader says where one is. It names the browser's tab as well.
 */
export function useTitleFocus(page: RefObject<HTMLElement | null>, path: string, farm: string) {
  useEffect(() => {
    const isChange = before !== undefined && before !== path;
    before = path;
    const arrive = (): boolean => {
      const title = page.current?.querySelector('h1');
      if (!title) return false;
      // The screen before stays in the document, hidden, while the next one is loaded. To ask that
      // of the first screen would lay it out once more before it is drawn.
      if (isChange && title.getClientRects().length === 0) return false;
      document.title = `${title.textContent} · ${farm}`;
      if (isChange) focusQuietly(title);
      return true;
    };
    if (arrive()) return;
    const watch = new MutationObserver(() => arrive() && watch.disconnect());
    watch.observe(page.current!, { childList: true, subtree: true });
    return () => watch.disconnect();
  }, [page, path, farm]);
}

function focusQuietly(title: HTMLElement): void {
  title.tabIndex = -1;
  title.focus({ preventScroll: true });
  window.scrollTo(0, 0);
}
