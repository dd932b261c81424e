import { useEffect, useId } from 'react';

/** Forms in which something is typed that a way to another screen would throw away. */
const unsaved = new Set<string>();

export const isAnythingUnsaved = (): boolean => 0 < unsaved.size;

/** Has leaving the screen ask first, for as long as something is typed and not saved. */
export function useUnsaved(isUnsaved: boolean): void {
  const id = useId();
  useEffect(() => {
    if (!isUnsaved) return;
    unsaved.add(id);
    return () => {
      unsaved.delete(id);
    };
  }, [id, isUnsaved]);
}
