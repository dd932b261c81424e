import type { GrazingProblem } from '../../shared/pasture/grazing-problem.js';
import { grazingProblem, pastureContext } from '../../shared/plan/pasture/pasture-context.js';
import { newGroup, newHerd, newPaddocks, newPastureRequest } from './pasture-factories.js';

/** Too many cattle on a few paddocks for some weeks: cases of which every order can be tried. */
interface SmallCase {
  readonly paddocks: number;
  readonly head: number;
  readonly from: string;
  readonly to: string;
  readonly isQuick?: true;
}

export const SMALL_CASES: readonly SmallCase[] = [
  // From turn-out through the flush.
  { paddocks: 2, head: 5, from: '2027-05-01', to: '2027-06-25', isQuick: true },
  { paddocks: 3, head: 9, from: '2027-05-15', to: '2027-06-20' },
  // From the time when growth slows.
  { paddocks: 2, head: 5, from: '2027-05-22', to: '2027-07-10', isQuick: true },
  { paddocks: 4, head: 10, from: '2027-06-20', to: '2027-07-25', isQuick: true },
  { paddocks: 2, head: 6, from: '2027-05-22', to: '2027-07-10' },
  { paddocks: 2, head: 5, from: '2027-06-20', to: '2027-08-31' },
  { paddocks: 3, head: 9, from: '2027-05-22', to: '2027-06-26' },
  { paddocks: 3, head: 9, from: '2027-06-20', to: '2027-07-25' },
];

export const smallCase = ({ paddocks, head, from, to }: SmallCase): GrazingProblem =>
  grazingProblem(
    pastureContext(
      newPastureRequest({
        today: from,
        paddocks: newPaddocks(paddocks, { areaM2: 4000, forageId: 'orchardgrass-legume' }),
        herds: [newHerd({ groups: [newGroup({ head })] })],
        choices: { from, to },
      }),
    ),
  );
