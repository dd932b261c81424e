import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import type { FarmPicture, NamedBatch } from '../farm/picture.js';
import { FieldError } from '../problems/field-problem.js';
import type { Tables } from '../tables/tables.js';
import type { Climate } from '../weather/climate.js';
import { planContext } from './context.js';
import { packedOf } from './leaving-freezer.js';
import { occupanciesOf } from './occupancy.js';
import { FURTHEST_DAYS } from './planning-day.js';
import type { PlanRequest } from './request.js';

/**
 * A batch in the picture of its farm, with what the other batches hold on to.
 *
 * @param previousArrivalDate when given, the plan says which tasks moved since
 * @throws FieldError when the picture has no such batch
 */
export function batchRequest(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
  previousArrivalDate?: PlainDate,
): PlanRequest {
  const batch = picture.batches.find(({ id }) => id === batchId);
  if (!batch) throw unknownBatch(picture, batchId);
  const others = picture.batches
    .filter(({ id }) => id !== batchId)
    .map((other) => heldBy(picture, tables, other));
  return {
    ...around(picture, tables),
    batch: withoutIdleBrooder(batch),
    hasOlderFlock: picture.batches.some((other) => isOlderFlock(other, batch, tables)),
    weighings: weighingsOf(picture, batchId),
    occupied: others.flatMap(({ occupied }) => occupied),
    packed: others.flatMap(({ packed }) => packed),
    ...(previousArrivalDate === undefined ? {} : { previousArrivalDate }),
  };
}

/** A hen needs no brooder, whatever stands in the row of her chicks. */
function withoutIdleBrooder(batch: NamedBatch): NamedBatch {
  if (batch.origin !== 'hen' || batch.brooderId === undefined) return batch;
  const { brooderId: _idle, ...rest } = batch;
  return rest;
}

/** Layers that came so much earlier that they rule the coop when these join them. */
function isOlderFlock(other: NamedBatch, batch: NamedBatch, tables: Tables): boolean {
  const before = daysBetween(other.arrivalDate, batch.arrivalDate);
  const { olderFlockDays } = tables.judgements.birds;
  return other.purpose === 'layers' && olderFlockDays.value <= before && before <= FURTHEST_DAYS;
}
const weighingsOf = ({ weighings }: FarmPicture, of: string): FarmPicture['weighings'] =>
  weighings.filter(({ batchId }) => batchId === of);

const around = (
  {
    farm,
    climate,
    facilities,
    products,
    people,
    handovers,
    publicHolidays = [],
    today,
  }: FarmPicture,
  tables: Tables,
): Omit<PlanRequest, 'batch' | 'occupied' | 'packed' | 'weighings'> => ({
  farm,
  climate,
  facilities,
  products,
  // A child does not stand in for a grown-up, on the day of processing least of all.
  people: people.filter(({ isChild }) => !isChild),
  handovers,
  publicHolidays,
  today,
  tables,
});

/** What a batch takes from the others. */
type Held = Pick<PlanRequest, 'occupied' | 'packed'>;

interface KnownHeld extends Held {
  readonly weighings: FarmPicture['weighings'];
  readonly climate: Climate;
  readonly people: FarmPicture['people'];
  readonly tables: Tables;
}

/** Kept by the batch itself: the plan of each of its neighbors asks for it. */
const known = new WeakMap<NamedBatch, KnownHeld>();

/** What a batch holds on to; nothing when it cannot be planned, rather than blocking the farm. */
function heldBy(picture: FarmPicture, tables: Tables, batch: NamedBatch): Held {
  const { climate, people, weighings } = picture;
  const before = known.get(batch);
  if (
    before?.climate === climate &&
    before.people === people &&
    before.weighings === weighings &&
    before.tables === tables
  ) {
    return before;
  }
  const held = heldOrNothing(() => {
    const context = planContext({
      ...around(picture, tables),
      batch: withoutIdleBrooder(batch),
      weighings: weighingsOf(picture, batch.id),
      occupied: [],
      packed: [],
    });
    return { occupied: occupanciesOf(context), packed: packedOf(context) };
  });
  known.set(batch, { ...held, climate, people, weighings, tables });
  return held;
}

function heldOrNothing(hold: () => Held): Held {
  try {
    return hold();
  } catch {
    return { occupied: [], packed: [] };
  }
}

const unknownBatch = ({ batches }: FarmPicture, given: string): FieldError =>
  new FieldError([
    {
      field: 'batchId',
      code: 'not-allowed',
      given,
      allowed: batches.map(({ id }) => id),
      fix: 'Choose one of the farm’s batches.',
    },
  ]);
