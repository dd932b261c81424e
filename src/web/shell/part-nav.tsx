import { Button } from '@mantine/core';
import { Link, useLocation } from 'wouter';

/** A part by its name, and by one short enough that all stand in one line on a phone. */
export interface Part {
  readonly path: string;
  readonly label: string;
  readonly short: string;
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
  return (
    <nav aria-label={label} className="part-nav no-print">
      {parts.map((part) => {
        const href = `${base}${part.path}`;
        const isHere = at === href;
        return (
          <Button
            key={part.path}
            component={Link}
            href={href}
            variant={isHere ? 'filled' : 'default'}
            aria-current={isHere ? 'page' : undefined}
          >
            <span className="nav-long">{part.label}</span>
            <span className="nav-short">{part.short}</span>
          </Button>
        );
      })}
    </nav>
  );
}
