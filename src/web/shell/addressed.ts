import { useEffect, useRef } from 'react';

/** A part of a screen that comes into view where the address ends in its name. */
export function useAddressed<Part extends HTMLElement>(id: string) {
  const part = useRef<Part>(null);
  useEffect(() => {
    if (window.location.hash === `#${id}`) part.current?.scrollIntoView();
  }, [id]);
  return part;
}
