import { PartNav } from '../../shell/part-nav.js';

const PARTS = [
  { path: '', label: 'Season', short: 'Season' },
  { path: '/walk', label: 'Pasture walk', short: 'Walk' },
  { path: '/land', label: 'Paddocks and herds', short: 'Paddocks' },
  { path: '/sizes', label: 'Stocking and water', short: 'Stocking' },
] as const;

/** The parts of grass and cattle. */
export const PastureNav = ({ farmId }: { farmId: string }) => (
  <PartNav base={`/farm/${farmId}/pasture`} label="Grass and cattle" parts={PARTS} />
);
