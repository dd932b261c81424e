import { PartNav } from '../../shell/part-nav.js';

const PARTS = [
  { path: '', label: 'Today', short: 'Today' },
  { path: '/season', label: 'The season', short: 'Season' },
  { path: '/chances', label: 'Chances and dates', short: 'Chances' },
  { path: '/own', label: 'Work of your own', short: 'Own' },
  { path: '/away', label: 'Handing over', short: 'Away' },
] as const;

/** The parts of the household's work. */
export const WorkNav = ({ farmId }: { farmId: string }) => (
  <PartNav base={`/farm/${farmId}/work`} label="The work" parts={PARTS} />
);
