import type { FarmPicture } from '../../farm/picture.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { BedPart } from '../pasture/beds.js';
import { keyDatesOf, type KeyDate } from '../tasks/event.js';
import type { DatedWork } from './work-request.js';

/** A batch with its plan. */
export interface PlannedBatch {
  readonly id: string;
  readonly name: string;
  readonly plan: BatchPlan;
}

/** The work of planned batches and herds, as the plan of the work takes it. */
export const datedWork = (
  batches: readonly PlannedBatch[],
  { herds, cows }: Pick<FarmPicture, 'herds' | 'cows'>,
  pasture: PasturePlan | undefined,
): DatedWork[] => [
  ...batches.map(({ id, name, plan }): DatedWork => ({
    id,
    name,
    kind: 'batch',
    tasks: plan.tasks.tasks,
    events: keyDatesOf({ id, name }, plan.tasks.events),
    birds: plan,
  })),
  ...herds.map((herd, h): DatedWork => {
    const { id, name } = herd;
    return {
      ...{ id, name, kind: 'herd' },
      tasks: pasture?.tasks.filter((task) => task.belongsToId === id) ?? [],
      events: [
        ...keyDatesOf({ id, name }, pasture?.herds.find((each) => each.id === id)?.events ?? []),
        // The beds are of all herds: they stand with the first.
        ...(h === 0 ? bedDates(pasture?.beds ?? []) : []),
      ],
      round: { herd: withNamedCows(herd, cows), ...(pasture ? { pasture } : {}) },
    };
  }),
];

/** Last days for animals and raw manure on ground that is harvested, as dates of the calendar. */
const bedDates = (beds: readonly BedPart[]): KeyDate[] =>
  beds.map(({ paddockId, name, lastDay }) => ({
    id: `event/bed-${paddockId}/last-day`,
    name: `${name}: last day for herd, pens and raw manure before its harvest`,
    date: String(lastDay.value),
  }));
