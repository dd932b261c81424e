import type { PlainDate } from '../../calendar/plain-date.js';
import type { BatchPlan } from '../batch-plan.js';
import { inOrder, type YearBar, type YearDate, type YearRow } from './year-row.js';

/** A batch on the strip: where it lives when, and the days on which that changes. */
export function batchRow(id: string, plan: BatchPlan): YearRow {
  const { name, arrivalDate, today } = plan;
  return {
    kind: 'batch',
    id,
    name,
    bars: barsOf(plan),
    dates: inOrder(datesOf(plan)),
    ...(today <= arrivalDate ? { arrivesOn: arrivalDate } : {}),
  };
}

const dateOf = (
  quantity: { readonly value: number | string } | undefined,
): PlainDate | undefined => (quantity === undefined ? undefined : String(quantity.value));

/** Last day of birds: meat birds are processed, hens are planned as far as their table goes. */
const endOf = ({ leaving, lastDate }: BatchPlan): PlainDate =>
  leaving?.processingDays.at(-1)?.on ?? lastDate;

const outOn = ({ outdoors }: BatchPlan): PlainDate | undefined => dateOf(outdoors.moveOut);

const eggsSetOn = ({ tasks }: BatchPlan): PlainDate | undefined =>
  tasks.events.find(({ kind }) => kind === 'eggs-set')?.date;

function barsOf(plan: BatchPlan): YearBar[] {
  const { arrivalDate, brooding, leaving, laying, purpose, outdoors } = plan;
  const out = outOn(plan);
  const end = endOf(plan);
  const firstEgg = dateOf(laying?.firstEgg);
  const eggsSet = eggsSetOn(plan);
  const eatenUp = dateOf(leaving?.eatenUp);
  const firstPacked = leaving?.processingDays[0]?.on;
  const isInCoop = purpose === 'layers' || (outdoors.home !== undefined && !outdoors.pensNeeded);
  return [
    ...(eggsSet === undefined ? [] : [bar('eggs', eggsSet, arrivalDate)]),
    bar(brooding ? 'brooder' : 'hen', arrivalDate, out ?? end),
    ...(out === undefined ? [] : [bar(isInCoop ? 'coop' : 'pens', out, firstEgg ?? end)]),
    ...(firstEgg === undefined ? [] : [bar('laying', firstEgg, end)]),
    ...(eatenUp === undefined || firstPacked === undefined
      ? []
      : [bar('freezer', firstPacked, eatenUp)]),
  ].filter(({ from, until }) => from < until);
}

const bar = (kind: YearBar['kind'], from: PlainDate, until: PlainDate): YearBar => ({
  kind,
  from,
  until,
});

function datesOf(plan: BatchPlan): YearDate[] {
  const { arrivalDate, birds, hatching, laying, leaving } = plan;
  const cockerels = dateOf(birds.cockerelsLeave?.on);
  return [
    ...on(eggsSetOn(plan), 'eggs set'),
    ...on(arrivalDate, hatching ? 'hatch' : 'arrive'),
    ...on(outOn(plan), plan.brooding ? 'out of the brooder' : 'without the hen'),
    ...on(dateOf(laying?.firstEgg), 'first eggs'),
    ...on(cockerels, 'cockerels processed'),
    ...(leaving?.processingDays ?? []).map(({ on: date }) => ({ on: date, words: 'processing' })),
    ...on(dateOf(leaving?.eatenUp), 'eaten up'),
  ];
}

const on = (date: PlainDate | undefined, words: string): YearDate[] =>
  date === undefined ? [] : [{ on: date, words }];
