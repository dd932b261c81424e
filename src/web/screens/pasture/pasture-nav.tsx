import { Button, Group } from '@mantine/core';
import { Link, useLocation } from 'wouter';

const PAGES = [
  { path: '', label: 'Season' },
  { path: '/walk', label: 'Walk the field' },
  { path: '/land', label: 'Paddocks and herds' },
  { path: '/sizes', label: 'Sizes and water' },
  { path: '/work', label: 'Work' },
] as const;

/** The parts of grass and cattle. */
export function PastureNav({ farmId }: { farmId: string }) {
  const [at] = useLocation();
  const base = `/farm/${farmId}/pasture`;
  return (
    <Group component="nav" aria-label="Grass and cattle" gap="xs" className="no-print">
      {PAGES.map(({ path, label }) => {
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
            {label}
          </Button>
        );
      })}
    </Group>
  );
}
