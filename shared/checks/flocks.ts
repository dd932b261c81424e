import { planBatch, type BatchPlan } from '../plan/batch-plan.js';
import { KILLING } from '../plan/processing-work.js';
import type { Tables } from '../tables/tables.js';
import { EXAMPLE_BATCH, exampleFarm } from './example-farm.js';
import type { Given, Topic } from './given.js';

/** Plans by what they are made from: rows of one flock share one. */
const kept = new WeakMap<Tables, Map<string, BatchPlan>>();

function planOf(given: Given): BatchPlan {
  const picture = exampleFarm(given);
  const key = JSON.stringify([picture.batches, picture.facilities]);
  let plans = kept.get(given.tables);
  if (!plans) kept.set(given.tables, (plans = new Map()));
  let plan = plans.get(key);
  if (!plan) plans.set(key, (plan = planBatch(picture, given.tables, EXAMPLE_BATCH)));
  return plan;
}

function seriesOf(given: Given, id: string): readonly number[] {
  const series = planOf(given).daily.find((each) => each.id === id);
  if (!series) throw new Error(`The plan has no series "${id}".`);
  return series.values;
}

const placedIn = (plan: BatchPlan): number => plan.birds.chicksPlaced.value;
const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);

/** Lay of one week of age, by what a plan shows of that week. */
function weekOf(given: Given) {
  const age = given.number('week');
  const week = planOf(given).laying?.weeks.find(({ ageWeeks }) => Math.floor(ageWeeks) === age);
  if (!week) throw new Error(`The plan has no week ${age}.`);
  return week;
}

const leavingIn = (given: Given) => planOf(given).leaving!;
const layingIn = (given: Given) => planOf(given).laying!;

/** Whole plans of flocks, as their keepers told of them. */
export const flockChecks: Topic = {
  title: 'Whole plans of flocks',
  by: {
    'live-weight': (given) => leavingIn(given).liveEach.value,
    'dressed-weight': (given) => leavingIn(given).dressedEach.value,
    'feed-per-dressed': (given) =>
      planOf(given).feed.total.value / leavingIn(given).dressedAll.value,
    'feed-by-day': (given) =>
      seriesOf(given, 'feed-total')[given.number('day') - 1]! / placedIn(planOf(given)),
    'feed-bags': (given) =>
      sum(planOf(given).feed.phases.map(({ totalKg }) => totalKg.value)) / given.number('bagKg'),
    'feed-bill': (given) =>
      sum(
        planOf(given)
          .bill.lines.filter(({ label }) => label.endsWith(' feed'))
          .map(({ cost }) => cost?.value ?? NaN),
      ),
    'lost-by-day': (given) =>
      1 - seriesOf(given, 'alive')[given.number('day')]! / placedIn(planOf(given)),
    'killing-hours': (given) =>
      sum(
        planOf(given)
          .tasks.tasks.filter(({ templateId }) => KILLING.includes(templateId))
          .map(({ hours }) => hours),
      ),
    'water-of-day': (given) =>
      seriesOf(given, 'water-day')[given.number('day')]! /
      seriesOf(given, 'alive')[given.number('day')]!,
    'heat-needed': (given) => planOf(given).heat!.need.value,
    'heat-per-chick': (given) => planOf(given).heat!.energyTotal.value / placedIn(planOf(given)),
    'eggs-of-first-year': (given) => layingIn(given).eggsPerHen.value,
    'eggs-in-weeks': (given) => {
      const [from, to] = [given.number('fromWeek'), given.number('toWeek')];
      const share = seriesOf(given, 'hen-day');
      return sum(share.slice(7 * from, 7 * (to + 1)));
    },
    'feed-of-hen': (given) => {
      const week = weekOf(given);
      return week.feed.value / (7 * seriesOf(given, 'alive')[7 * given.number('week')]!);
    },
    'feed-of-flock-week': (given) => weekOf(given).feed.value,
    'feed-per-dozen-of-week': (given) => {
      const { feed, eggs } = weekOf(given);
      return (12 * feed.value) / eggs.value;
    },
    'feed-per-dozen': (given) => layingIn(given).feedPerDozen.value,
    'age-at-first-egg': (given) => layingIn(given).ageAtFirstEgg.value,
    'feed-to-week': (given) =>
      seriesOf(given, 'feed-total')[7 * given.number('week') - 1]! / placedIn(planOf(given)),
  },
};
