import { Button } from '@mantine/core';
import { Link, useLocation } from 'wouter';

/** Each by its name, and by one short enough that all stand in one line on a phone. */
const PAGES = [
  { path: '', label: 'Season', short: 'Season' },
  { path: '/walk', label: 'Walk the field', short: 'Walk' },
  { path: '/land', label: 'Paddocks and herds', short: 'Land' },
  { path: '/sizes', label: 'Sizes and water', short: 'Sizes' },
  { path: '/work', label: 'Work', short: 'Work' },
] as const;

/** The parts of grass and cattle. */
export function PastureNav({ farmId }: { farmId: string }) {
  const [at] = useLocation();
  const base = `/farm/${farmId}/pasture`;
  return (
    <nav aria-label="Grass and cattle" className="pasture-nav no-print">
      {PAGES.map(({ path, label, short }) => {
        const href = `${base}${path}`;
        const isHere = at === href;
        return (
          <Button
            key={path}
            component={Link}
            href={href}
            variant={isHere ? 'filled' : 'default'}
            aria-current={isHere ? 'page' : undefined}
          >
            <span className="nav-long">{label}</span>
            <span className="nav-short">{short}</span>
          </Button>
        );
      })}
    </nav>
  );
}
