import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import { FieldError } from '../../problems/field-problem.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { formatValue, type Reader } from '../../units/format.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import type { Change } from '../what-changed.js';
import { planningDay } from '../planning-day.js';
import { withoutSlot } from '../slot-weight.js';

/** Another day of processing that one touch sets, instead of the one planned. */
export interface LeavingChoice {
  readonly batchId: string;
  readonly on: PlainDate;
  readonly hatchDate: PlainDate;
  /** What the touch does. */
  readonly words: string;
  /** Key of the alarm that is settled with it. */
  readonly settles: string;
}

/** How far the birds weighed last lie from the plan of their age, as a share; undefined while none count. */
export function weighedOff({ birds: { weighed } }: BatchPlan): number | undefined {
  const row = weighed?.rows.findLast(({ isUsed }) => isUsed);
  return row?.plannedKg === undefined ? undefined : row.average.value / row.plannedKg - 1;
}

/** It comes again only once they are weighed further off, by as much again, whatever day is chosen. */
export const weightAlarmKey = (
  batchId: string,
  offShare: number,
  { slotWeightShare }: Tables['judgements']['birds'],
): string => {
  const times = Math.trunc(Math.abs(offShare) / slotWeightShare.value);
  return `alarm/weight/${batchId}/${offShare < 0 ? 'lighter' : 'heavier'}-${times}`;
};

/** What follows from weights for the day of processing and for what is on the table. */
export interface WeightFollows {
  /** Live weight on a day of both plans over the one planned before, as a share. */
  readonly offShare: number;
  /** Sentences that stand in the place of what a change of weight is called else. */
  readonly changes: readonly Change[];
  /** Left out where little is another, where no other day helps, and where the day is booked. */
  readonly choice?: LeavingChoice;
}

interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly batch: NamedBatch;
  readonly before: BatchPlan;
  readonly after: BatchPlan;
}

/**
 * What birds that weigh otherwise than planned mean for their last day: as many days and other birds, or
 * other days and the weight wanted, with the way that the plan did not take as a choice.
 *
 * @param asked the plans of a batch for meat without the weights and with them
 * @returns undefined of hens, and once they are gone
 */
export function weightFollows(asked: Asked): WeightFollows | undefined {
  const { picture, tables, batch, before, after } = asked;
  const [was, is] = [before.leaving, after.leaving];
  if (!was || !is || dayOf(is) <= picture.today) return undefined;
  const offShare = offOf(before, after);
  if (offShare === undefined) return undefined;
  const reader = { ...picture.farm, today: picture.today };
  const isMuch = tables.judgements.birds.slotWeightShare.value < Math.abs(offShare);
  const of = {
    ...{ batchId: batch.id, hatchDate: after.hatchDate },
    settles: weightAlarmKey(batch.id, weighedOff(after) ?? offShare, tables.judgements.birds),
  };
  const hasMoved = dayOf(was) !== dayOf(is);
  if (hasMoved) {
    const on = dayOf(was);
    const choice = {
      ...{ ...of, on },
      words: `${asks(batch)} ${formatDate(on, reader)} all the same`,
    };
    return {
      offShare,
      changes: [],
      ...(isMuch && picture.today < on ? { choice } : {}),
    };
  }
  const right = isMuch ? whenRight(asked, was.liveEach.value, offShare) : undefined;
  const isBooked = batch.processing === 'hired' && batch.slotDate !== undefined;
  return {
    offShare,
    changes: [
      {
        id: 'weight',
        words: [
          staysSaid(was, is, reader),
          ...(right ? [rightSaid(right, { isBooked, offShare }, reader)] : []),
        ].join(' '),
      },
    ],
    ...(right?.on !== undefined && !isBooked
      ? {
          choice: {
            ...{ ...of, on: right.on },
            words: `${asks(batch)} ${formatDate(right.on, reader)} instead`,
          },
        }
      : {}),
  };
}

type Leaving = NonNullable<BatchPlan['leaving']>;

const dayOf = ({ on }: Leaving): PlainDate => String(on.value);

const asks = ({ processing }: NamedBatch): string =>
  processing === 'hired' ? 'Ask the processor for' : 'Process on';

/** On the last day that both plans have. */
function offOf(before: BatchPlan, after: BatchPlan): number | undefined {
  const last = [before, after].map(({ leaving }) => dayOf(leaving!)).sort()[0]!;
  const [was, is] = [before, after].map(
    ({ daily, arrivalDate }) =>
      daily.find(({ id }) => id === 'weight-mean')?.values[daysBetween(arrivalDate, last)],
  );
  return was === undefined || is === undefined ? undefined : is / was - 1;
}

function staysSaid(was: Leaving, is: Leaving, reader: Reader): string {
  const kg = (of: number): string => formatValue(of, 'kg', reader);
  const than = is.liveEach.value < was.liveEach.value ? 'lighter' : 'heavier';
  return `Processing stays on ${formatDate(dayOf(is), reader)}: as many days, ${than} birds, about ${kg(is.dressedEach.value)} dressed each instead of ${kg(was.dressedEach.value)} (${kg(is.liveEach.value)} live instead of ${kg(was.liveEach.value)}).`;
}

interface Right {
  /** The day on which they are expected to weigh it. */
  readonly reached: PlainDate;
  readonly between: readonly [PlainDate, PlainDate];
  /** The day from then on that has hands for it; left out where that is the day planned, or none is near. */
  readonly on?: PlainDate;
}

/** When birds that grow so reach a weight: the batch as it would be planned for that weight. */
function whenRight(
  { picture, tables, batch, after }: Asked,
  kg: number,
  offShare: number,
): Right | undefined {
  const { leaveAgeDays: _age, targetLiveKg: _weight, ...rest } = withoutSlot(batch);
  const { processingWeekday } = batch;
  const wanted = processingWeekday === undefined ? {} : { processingWeekday };
  const today = planningDay(batch, picture.today);
  const planned = (how: Partial<NamedBatch>): BatchPlan =>
    planBatch(
      withBatch({ ...picture, today }, { ...rest, ...how } as NamedBatch),
      tables,
      batch.id,
    );
  try {
    const { leaving, lastDate } = planned({ ...wanted, targetLiveKg: kg });
    if (!leaving?.ready) return undefined;
    const reached = leaving.reached ? String(leaving.reached.value) : lastDate;
    const between = leaving.ready.map((day) => String(day.value)) as [PlainDate, PlainDate];
    // Light birds are not done before they weigh it because nobody has hands then.
    const on = offShare < 0 && dayOf(leaving) < reached ? undefined : dayOf(leaving);
    const isAnother =
      on !== undefined && on !== dayOf(after.leaving!) && addDays(picture.today, 1) < on;
    return { reached, between, ...(isAnother ? { on } : {}) };
  } catch (error) {
    if (error instanceof FieldError) return undefined;
    throw error;
  }
}

function rightSaid(
  { reached, on, between: [soonest, latest] }: Right,
  { isBooked, offShare }: { readonly isBooked: boolean; readonly offShare: number },
  reader: Reader,
): string {
  const date = (day: PlainDate): string => formatDate(day, reader);
  const about =
    soonest === latest
      ? `about ${date(reached)}`
      : `about ${date(reached)} (between ${date(soonest)} and ${date(latest)})`;
  const hands =
    on === undefined || on <= reached || isBooked
      ? ''
      : `; the next day with hands for it is ${date(on)}`;
  const then = `They weigh what was planned ${about}${hands}.`;
  return isBooked
    ? `${then} The slot is booked: keep it and have ${offShare < 0 ? 'lighter' : 'heavier'} birds, or ask the processor for one about then.`
    : then;
}
