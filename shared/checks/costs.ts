import type { Batch } from '../farm/batch.js';
import { planBatch } from '../plan/batch-plan.js';
import { batchRequest } from '../plan/batch-request.js';
import { planContext } from '../plan/plan-context.js';
import { batchCost } from '../plan/cost/batch-cost.js';
import { keptOn } from '../plan/cost/kept-on.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { EXAMPLE_FARM, NOTHING_ELSE } from './example-farm.js';
import type { Given, Topic } from './given.js';

const ID = 'checked';
const MILD_C = Array.from({ length: 12 }, () => 20);

/** A flock of which none is lost, in mild air, at the prices of the row. */
function pictureOf({ text, textOr, numberOr }: Given) {
  const perBag = String(numberOr('feedPerBag', 20));
  const strainId = text('strain');
  const leaveAgeDays = numberOr('day', undefined);
  const batch: Batch & { readonly id: string } = {
    id: ID,
    name: 'Checked',
    purpose: 'meat',
    strainId,
    sex: 'straight-run',
    wantedBirds: 100,
    orderedBirds: 100,
    arrivalDate: '2027-05-05',
    hatchToArrivalDays: 0,
    firstWeekLossPercent: 0,
    laterLossPercent: 0,
    processing: 'hired',
    keptAs: textOr('keptAs', 'small-flock') as NonNullable<Batch['keptAs']>,
    ...(leaveAgeDays === undefined ? {} : { leaveAgeDays }),
    prices: {
      perBird: String(numberOr('chick', 3)),
      processingPerBird: String(numberOr('processing', 0)),
      feedPerBag: { starter: perBag, grower: perBag, finisher: perBag },
    },
  };
  return {
    ...NOTHING_ELSE,
    farm: { ...EXAMPLE_FARM, monthlyMinC: MILD_C, monthlyMaxC: MILD_C },
    climate: climateFromMonthlyMeans(MILD_C, MILD_C, 0),
    today: '2027-05-04',
    batches: [batch],
  };
}

const keptOnOf = (given: Given) =>
  keptOn(planContext(batchRequest(pictureOf(given), given.tables, ID)));

/** What birds eat for their meat, as they are kept on, and when they are best processed. */
export const costChecks: Topic = {
  title: 'What it costs, and when to stop',
  by: {
    'feed-for-dressed': (given) => {
      const plan = planBatch(pictureOf(given), given.tables, ID);
      return plan.feed.total.value / plan.leaving!.dressedAll.value;
    },
    'conversion-between': (given) => {
      const { life } = keptOnOf(given);
      const [from, to] = [given.number('fromDay'), given.number('toDay')];
      const fed = life.flockFeedKg.subarray(from, to).reduce((sum, kg) => sum + kg, 0);
      const massOn = (day: number): number => life.aliveAll[day]! * life.meanWeightKg[day]!;
      return fed / (massOn(to) - massOn(from));
    },
    'best-age': (given) => batchCost(pictureOf(given), given.tables, ID).stop!.stop!.bestAge.value,
  },
};
