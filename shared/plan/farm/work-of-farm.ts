import { isAllUntold } from '../came-untold.js';
import { withStillHere } from '../left-untold.js';
import { withBatch, type FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { DailyWeather } from '../../weather/climate.js';
import { planBatch } from '../batch-plan.js';
import { orNothing, type AnimalPlans } from './animal-plans.js';
import { compareWorkPlans, type WorkComparison } from '../work/compare-plans.js';
import { tripsAhead } from '../feed-year/trips-ahead.js';
import { withoutBirthsTold } from '../work/births-told.js';
import { datedWork } from '../work/dated-work.js';
import { takenOrders } from '../taken-orders.js';
import { withTrips } from '../feed-year/fetch-trips.js';
import { workOutlookOf, type WorkOutlook } from '../work/work-outlook.js';
import { workPlanOf } from '../work/work-plan.js';
import type { WorkRequest } from '../work/work-request.js';

/** The same farm gives the same plan: the seed only has to stay what it is. */
const SEED = 1;

/** The household's work in the picture of its farm. */
export function workOfFarm(
  picture: FarmPicture,
  tables: Tables,
  animals: AnimalPlans,
): WorkRequest {
  const { pasture, unplanned } = animals;
  const batches = animals.batches.filter((batch) => !isAllUntold(batch, { ...picture, tables }));
  const { farm, climate, today, people, handovers, progress: marks, groundChecks } = picture;
  const [kept] = picture.keptPlans;
  const before = picture.keptPlans.find(({ plannedOn }) => plannedOn < today);
  return {
    farm,
    climate,
    tables,
    today,
    people,
    work: withTrips(
      datedWork(withStillHere(batches, { ...picture, tables }), picture, pasture).map((each) =>
        each.round
          ? { ...each, tasks: withoutBirthsTold(each.tasks, each.round.herd, picture, tables) }
          : each,
      ),
      animals.trips ?? tripsAhead(picture, tables, animals),
      picture,
    ),
    unplanned,
    ownJobs: picture.jobs,
    progress: marks,
    groundChecks,
    ...(picture.publicHolidays ? { publicHolidays: picture.publicHolidays } : {}),
    handovers,
    ...(kept ? { kept } : {}),
    ...(before ? { before } : {}),
    seed: SEED,
  };
}

/** A piece of work and its last day. */
export interface DueWork {
  readonly key: string;
  readonly latest: string;
}

/**
 * Work whose last day lies before a day, orders that are taken as made among it: the first plan that fits
 * says so as well as the best. With that done other work is no longer held up, and its last day may lie
 * before that day as well.
 */
export function workDueBefore(
  picture: FarmPicture,
  tables: Tables,
  animals: AnimalPlans,
  before: string,
): DueWork[] {
  const due: DueWork[] = takenOrders(animals.batches).map(({ key, latest }) => ({ key, latest }));
  const trips = animals.trips ?? tripsAhead(picture, tables, animals);
  for (;;) {
    const done = due.map(({ key, latest }) => ({ key, doneOn: latest }));
    const then = { ...picture, progress: [...picture.progress, ...done] };
    const more = workPlanOf(workOfFarm(then, tables, { ...animals, trips }), 1).jobs.filter(
      ({ key, latest }) => latest < before && !due.some((each) => each.key === key),
    );
    if (more.length === 0) return due;
    due.push(...more.map(({ key, latest }) => ({ key, latest })));
  }
}

/** The household's work of a farm, fitted into its hours and days. */
export const planWork = (
  picture: FarmPicture,
  tables: Tables,
  animals: AnimalPlans,
): ReturnType<typeof workPlanOf> => workPlanOf(workOfFarm(picture, tables, animals));

/**
 * Chances of a farm's work over many years of weather.
 *
 * @param onPlayed told the share of it that is played, 0 to 1
 */
export const workOutlook = (
  picture: FarmPicture,
  tables: Tables,
  animals: AnimalPlans,
  history: readonly DailyWeather[],
  onPlayed?: (share: number) => void,
): WorkOutlook =>
  workOutlookOf({
    ...workOfFarm(picture, tables, animals),
    history,
    withFewerBirds: (batchId, birds) =>
      withFewerBirds(picture, tables, animals, { batchId, birds }),
    ...(onPlayed ? { onPlayed } : {}),
  });

/** The work with some birds of a batch fewer; none where it has come, or is not so large. */
function withFewerBirds(
  picture: FarmPicture,
  tables: Tables,
  animals: AnimalPlans,
  { batchId, birds }: { batchId: string; birds: number },
): WorkRequest | undefined {
  const batch = picture.batches.find(({ id }) => id === batchId);
  if (!batch || batch.arrivalDate <= picture.today || batch.wantedBirds <= birds) return undefined;
  const fewer = withBatch(picture, { ...batch, wantedBirds: batch.wantedBirds - birds });
  const plan = orNothing(() => planBatch(fewer, tables, batchId));
  if (!plan) return undefined;
  const batches = animals.batches.map((each) => (each.id === batchId ? { ...each, plan } : each));
  return workOfFarm(fewer, tables, { ...animals, batches });
}

/** A farm's work as it is and as it would be. */
export function compareWork(
  tables: Tables,
  now: { readonly picture: FarmPicture; readonly animals: AnimalPlans },
  then: { readonly picture: FarmPicture; readonly animals: AnimalPlans },
): WorkComparison {
  return compareWorkPlans(
    workOfFarm(now.picture, tables, now.animals),
    workOfFarm(then.picture, tables, then.animals),
  );
}
