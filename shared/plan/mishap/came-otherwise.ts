import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { formatDate } from '../../units/dates.js';
import { planBatch, type BatchPlan } from '../batch-plan.js';
import { changes, planned } from './cold-snap.js';
import { leavingOn } from '../leaving-on.js';
import type { WayOn } from './way-on.js';

/** What of a batch can come otherwise than planned. */
export type OtherwiseField = 'arrivalDate' | 'orderedBirds' | 'slotDate';

/** A batch with the plan of it. */
export interface WithPlan {
  readonly batch: NamedBatch;
  readonly plan: BatchPlan;
}

interface Asked {
  readonly picture: FarmPicture;
  readonly tables: Tables;
  readonly field: OtherwiseField;
  readonly before: WithPlan;
  readonly after: WithPlan;
}

/**
 * Ways to answer a box that comes on another day or with fewer in it, or another day of the processor,
 * besides taking all that follows: each is the batch with one thing more changed, planned as ever.
 *
 * Left out: ways that change nothing, and those of which no plan can be made.
 *
 * @param asked the batch and its plan before, and as it comes now
 */
export function waysWhenOtherwise(asked: Asked): WayOn[] {
  const was = leaves(asked.before.plan);
  const is = leaves(asked.after.plan);
  if (was === undefined || is === undefined) return [];
  const tries = TRIES[asked.field](asked, was, is);
  return tries.flatMap((each) => tried(asked, each) ?? []);
}

interface Try {
  readonly id: string;
  readonly words: (leaves: string, comes: string) => string;
  readonly batch: NamedBatch;
}

const WEEK_DAYS = 7;

/** Asks the processor where there is one: at home the day is the household's own. */
const askedFor = ({ processing }: NamedBatch, on: string, home: string): string =>
  processing === 'hired' ? `Ask the processor for ${on}` : `${home} ${on}`;

const TRIES: Readonly<
  Record<OtherwiseField, (asked: Asked, was: PlainDate, is: PlainDate) => Try[]>
> = {
  /** The day that is booked or wished stays, or goes along with them. */
  arrivalDate: ({ before, after: { batch, plan } }, was, is) => {
    const late = daysBetween(before.batch.arrivalDate, batch.arrivalDate);
    if (was !== is)
      return [
        {
          id: 'same-day',
          words: (on) => `Process on ${on} all the same`,
          batch: leavingOn(batch, plan, was),
        },
      ];
    if (late === 0) return [];
    return [
      {
        id: 'day-moves',
        words: (on) => `${askedFor(batch, on, 'Process on')}, so that they are as old`,
        batch: leavingOn(batch, plan, addDays(was, late)),
      },
    ];
  },
  /** Fewer birds bring more of the meat back when they grow a week longer. */
  orderedBirds: ({ before, after: { batch, plan } }, _was, is) =>
    plan.birds.atEnd.value < before.plan.birds.atEnd.value
      ? [
          {
            id: 'longer',
            words: (on) => `${askedFor(batch, on, 'Process on')}: keep them a week longer`,
            batch: leavingOn(batch, plan, addDays(is, WEEK_DAYS)),
          },
        ]
      : [],
  /** Where the box is still to come, it can come as much later or sooner. */
  slotDate: ({ picture, after: { batch } }, was, is) => {
    const arrivalDate = addDays(batch.arrivalDate, daysBetween(was, is));
    return picture.today < batch.arrivalDate && picture.today < arrivalDate
      ? [
          {
            id: 'box-moves',
            words: (_on, comes) => `Have the chicks come ${comes}`,
            batch: { ...batch, arrivalDate },
          },
        ]
      : [];
  },
};

function tried(asked: Asked, { id, words, batch }: Try): WayOn | undefined {
  const { picture, tables, before, after } = asked;
  const plan = planned(() => planBatch(withBatch(picture, batch), tables, batch.id));
  const on = plan && leaves(plan);
  if (!plan || on === undefined) return undefined;
  const isSame = on === leaves(after.plan) && plan.arrivalDate === after.plan.arrivalDate;
  if (isSame) return undefined;
  const reader = { ...picture.farm, today: picture.today };
  return {
    id,
    words: words(formatDate(on, reader), formatDate(plan.arrivalDate, reader)),
    follows: changes(before.plan, plan, { picture, tables }),
    batch,
  };
}

const leaves = ({ leaving }: BatchPlan): PlainDate | undefined =>
  leaving && String(leaving.on.value);
