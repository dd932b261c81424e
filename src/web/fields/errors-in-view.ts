import { useEffect, type RefObject } from 'react';

/**
 * After a save was refused the first field that is wrong takes the focus and comes into view, or
 * else what is said to be wrong.
 *
 * @param refusals how many saves were refused so far
 */
export function useErrorsInView(form: RefObject<HTMLElement | null>, refusals: number): void {
  useEffect(() => {
    if (refusals === 0) return;
    const wrong =
      form.current?.querySelector<HTMLElement>('[aria-invalid="true"]') ??
      form.current?.querySelector<HTMLElement>('[role="alert"]:not(:empty)');
    if (!wrong) return;
    if (!wrong.matches('input, select, textarea, button')) wrong.tabIndex = -1;
    wrong.focus({ preventScroll: true });
    wrong.scrollIntoView({ block: 'center' });
  }, [form, refusals]);
}
