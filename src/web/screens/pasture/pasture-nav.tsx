import { PartNav } from '../../shell/part-nav.js';

const PARTS = [
  { path: '', label: 'Season', short: 'Season' },
  { path: '/walk', label: 'Walk the field', short: 'Walk' },
  { path: '/land', label: 'Paddocks and herds', short: 'Land' },
  { path: '/sizes', label: 'Sizes and water', short: 'Sizes' },
  { path: '/work', label: 'Herd work', short: 'Work' },
] as const;

/** The parts of grass and cattle. */
export const PastureNav = ({ farmId }: { farmId: string }) => (
  <PartNav base={`/farm/${farmId}/pasture`} label="Grass and cattle" parts={PARTS} />
);
