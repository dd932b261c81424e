import './shell.css';
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
        return (
          <Link key={part.path} href={href} aria-current={at === href ? 'page' : undefined}>
            <span className="nav-long">{part.label}</span>
            <span className="nav-short">{part.short}</span>
          </Link>
        );
      })}
    </nav>
  );
}
