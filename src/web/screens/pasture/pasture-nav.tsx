import { PartNav } from '../../shell/part-nav.js';

const PARTS = [
  { path: '', label: 'Season' },
  { path: '/walk', label: 'Pasture walk' },
  { path: '/land', label: 'Paddocks and herds' },
  { path: '/sizes', label: 'Stocking and water' },
] as const;

/** The parts of grass and cattle. */
export const PastureNav = ({ farmId }: { farmId: string }) => (
  <PartNav base={`/farm/${farmId}/pasture`} label="Grass and cattle" parts={PARTS} />
);
