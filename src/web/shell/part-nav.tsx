import './shell.css';
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
  return (
    <nav aria-label={label} className="part-nav no-print">
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
