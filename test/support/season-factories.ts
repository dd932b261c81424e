import type { OwnJob } from '../../shared/farm/job.js';
import type { Farm } from '../../shared/farm/farm.js';
import type { DatedWork, WorkRequest } from '../../shared/plan/work/work-request.js';
import { keyDatesOf } from '../../shared/plan/tasks/event.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newFarm, newRequest, tables } from './factories.js';
import { RAIN_MM } from './pasture-factories.js';
import { plannedBatch } from './pictures.js';

/** A valid job of the household's own. A test writes only what it is about. */
export const newOwnJob = (more: Partial<OwnJob> = {}): OwnJob => ({
  id: 'bed',
  name: 'Dig the long bed',
  hours: 1,
  dueOn: '2027-05-20',
  priority: 'should',
  conditions: {},
  canBeSpread: true,
  ...more,
});

/** Work of a meat batch that arrives on a date. */
export function newBatchWork(arrivalDate: string, today: string, wantedBirds = 60): DatedWork {
  const plan = plannedBatch(newRequest({ today, batch: { arrivalDate, wantedBirds } }));
  return {
    id: 'meat',
    name: 'Meat chicks',
    kind: 'batch',
    tasks: plan.tasks.tasks,
    events: keyDatesOf({ id: 'meat', name: plan.name }, plan.tasks.events),
  };
}

/** A valid season of two people in the spring of 2027. */
export function newWork(
  more: Partial<Omit<WorkRequest, 'farm'>> & { farm?: Partial<Farm>; rainMm?: number[] } = {},
): WorkRequest {
  const { farm: given, rainMm = RAIN_MM, ...rest } = more;
  const farm = newFarm(given);
  return {
    farm,
    climate: climateFromMonthlyMeans(farm.monthlyMinC, farm.monthlyMaxC, 6, rainMm),
    tables,
    today: '2027-04-05',
    people: [
      { id: 'a', name: 'Adult A', away: [] },
      { id: 'b', name: 'Adult B', away: [] },
    ],
    work: [],
    unplanned: [],
    ownJobs: [],
    progress: [],
    groundChecks: [],
    handovers: [],
    seed: 1,
    ...rest,
  };
}
