import { isStarted } from '../farm/batch-origin.js';
import type { Farm } from '../farm/farm.js';
import { heatOutsIn, type HeatOut } from '../farm/heat-out.js';
import type { HeadChange } from '../farm/head-count.js';
import type { AnimalPicture, NamedBatch } from '../farm/picture.js';
import { isGrownUp } from '../farm/who-is-there.js';
import type { Tables } from '../tables/tables.js';
import type { PlanContext } from './context.js';
import { planContext } from './plan-context.js';
import { asItCame } from './flock-told.js';
import { flockOf } from './other-flocks.js';
import type { OtherFlock, PlanRequest } from './request.js';
import { isSameTold, toldOfBatch, type ToldOfBatch } from './told-of-batch.js';

/** What a batch is by itself: nothing in it hangs on the other batches. */
interface Alone {
  /** The last picture it was found to hold in. */
  picture: AnimalPicture;
  readonly told: ToldOfBatch;
  /** Told of the heat of its brooder, by any batch. */
  readonly heatOuts: readonly HeatOut[];
  readonly tables: Tables;
  readonly context: PlanContext;
  readonly flock: OtherFlock | undefined;
}

/** Kept by the batch itself: the plan of each of its neighbors asks for it. */
const aloneOf = new WeakMap<NamedBatch, Alone>();

/** The parts of a picture that a batch's own dates rest on, beside the farm and what was told of it. */
const RESTS_ON = [
  'today',
  'climate',
  'facilities',
  'products',
  'people',
  'handovers',
  'publicHolidays',
] as const satisfies readonly (keyof AnimalPicture)[];

/** Another batch's entry, or one that no plan goes by, does not make it anew. */
const isKnownFor = (
  before: Alone,
  picture: AnimalPicture,
  { tables, told, heatOuts }: Pick<Alone, 'tables' | 'told' | 'heatOuts'>,
): boolean =>
  before.tables === tables &&
  (before.picture === picture || isSameIn(before, picture, { told, heatOuts }));

const isSameIn = (
  before: Alone,
  picture: AnimalPicture,
  { told, heatOuts }: Pick<Alone, 'told' | 'heatOuts'>,
): boolean =>
  before.heatOuts.length === heatOuts.length &&
  before.heatOuts.every((out, k) => out === heatOuts[k]) &&
  RESTS_ON.every((part) => before.picture[part] === picture[part]) &&
  isSameFarm(before.picture.farm, picture.farm) &&
  isSameTold(before.told, told);

const COUNTED: ReadonlySet<string> = new Set(['revision', 'version']);

/** Whether two are one and the same farm but for the number of times that anything was saved. */
function isSameFarm(one: Farm, other: Farm): boolean {
  if (one === other) return true;
  const fields = new Set([...Object.keys(one), ...Object.keys(other)]) as Set<keyof Farm>;
  return [...fields].every((field) => COUNTED.has(field) || one[field] === other[field]);
}

/** @throws FieldError when it cannot be planned */
export function alone(picture: AnimalPicture, tables: Tables, batch: NamedBatch): Alone {
  const told = toldOfBatch(picture, batch.id);
  const { heatOuts = [] } = around(picture, tables, batch);
  const before = aloneOf.get(batch);
  if (before && isKnownFor(before, picture, { tables, told, heatOuts })) {
    // Each of its neighbors asks again with the same picture.
    before.picture = picture;
    return before;
  }
  const context = planContext({
    ...around(picture, tables, batch),
    batch: asPlanned(batch, told.headChanges),
    ...told,
    occupied: [],
    packed: [],
  });
  const found = { picture, told, heatOuts, tables, context, flock: flockOf(context) };
  aloneOf.set(batch, found);
  return found;
}

/**
 * A batch as it came. A hen and grown birds need no brooder, whatever stands in the row; a slot is a
 * processor's.
 */
export function asPlanned(row: NamedBatch, changes: readonly HeadChange[]): NamedBatch {
  const batch = asItCame(row, changes);
  const { brooderId, ...rest } = batch;
  const isIdle = (batch.origin === 'hen' || isStarted(batch)) && brooderId !== undefined;
  const planned = isIdle ? rest : batch;
  return planned.slotDate === undefined || planned.processing !== undefined
    ? planned
    : { ...planned, processing: 'hired' };
}

/** What a batch is planned with beside what is told of its birds. */
export const around = (
  {
    farm,
    climate,
    facilities,
    batches,
    heatOuts,
    products,
    people,
    handovers,
    publicHolidays = [],
    today,
  }: AnimalPicture,
  tables: Tables,
  { brooderId }: NamedBatch,
): Omit<PlanRequest, 'batch' | 'occupied' | 'packed' | keyof ToldOfBatch> => ({
  farm,
  climate,
  facilities,
  heatOuts: heatOutsIn(brooderId, heatOuts, batches),
  products,
  // A child does not stand in for a grown-up, on the day of processing least of all.
  people: people.filter(isGrownUp),
  handovers,
  publicHolidays,
  today,
  tables,
});
