import { PartNav } from '../../shell/part-nav.js';

const PARTS = [
  { path: '', label: 'Next days', short: 'Days' },
  { path: '/plan', label: 'Work plan', short: 'Plan' },
  { path: '/chances', label: 'Will it get done?', short: 'In time?' },
  { path: '/own', label: 'Other jobs', short: 'Other' },
  { path: '/herds', label: 'Herd tasks', short: 'Herd' },
  { path: '/away', label: 'While you’re away', short: 'Away' },
] as const;

/** The parts of the household's work. */
export const WorkNav = ({ farmId }: { farmId: string }) => (
  <PartNav base={`/farm/${farmId}/work`} label="Work" parts={PARTS} />
);
