import './shell.css';
import { useLayoutEffect, useRef } from 'react';
import { Link, useLocation } from 'wouter';

export interface Part {
  readonly path: string;
  readonly label: string;
}

/** The parts of a large section, as links. */
export function PartNav({
  base,
  label,
  parts,
}: {
  base: string;
  label: string;
  parts: readonly Part[];
}) {
  const [at] = useLocation();
  const ref = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const nav = ref.current!;
    const here = nav.querySelector<HTMLElement>('[aria-current]');
    // Where they stand in one line, the one that is open in its middle; the page itself stays.
    if (here) nav.scrollLeft = here.offsetLeft - (nav.clientWidth - here.offsetWidth) / 2;
  }, [at]);
  return (
    <nav aria-label={label} className="part-nav no-print" ref={ref}>
      {parts.map((part) => {
        const href = `${base}${part.path}`;
        return (
          <Link key={part.path} href={href} aria-current={at === href ? 'page' : undefined}>
            {part.label}
          </Link>
        );
      })}
    </nav>
  );
}
