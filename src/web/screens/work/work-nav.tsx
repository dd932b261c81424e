import { PartNav } from '../../shell/part-nav.js';

const PARTS = [
  { path: '', label: 'Next days' },
  { path: '/plan', label: 'Work plan' },
  { path: '/chances', label: 'Will it get done?' },
  { path: '/own', label: 'Other jobs' },
  { path: '/herds', label: 'Herd tasks' },
  { path: '/away', label: 'While you’re away' },
] as const;

/** The parts of the household's work. */
export const WorkNav = ({ farmId }: { farmId: string }) => (
  <PartNav base={`/farm/${farmId}/work`} label="Work" parts={PARTS} />
);
