import {
  addDays,
  daysBetween,
  weekdayOf,
  yearOf,
  type PlainDate,
} from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Cow } from '../../shared/farm/cow.js';
import type { Person } from '../../shared/farm/farm.js';
import type { Handover } from '../../shared/farm/handover.js';
import type { Herd } from '../../shared/farm/herd.js';
import type { OwnJob } from '../../shared/farm/job.js';
import type { Said } from '../told/keep-facts.js';
import { isWithin, nextMonthDay } from './sample-dates.js';
import { sampleJobs } from './sample-jobs.js';
import { openedFacts, receiptFacts } from './sample-receipts.js';
import type { BatchWithId, MadeAt, SampleBatch, SampleSeed } from './sample-seed.js';

/** The sample farm as it is on a day: every row with its own dates, and what was told up to then. */
export interface SampleOnDay {
  readonly people: readonly Person[];
  readonly batches: readonly BatchWithId[];
  readonly herds: readonly Herd[];
  readonly cows: readonly Cow[];
  readonly jobs: readonly OwnJob[];
  readonly handover: Handover;
  readonly facts: readonly Said[];
}

/**
 * The sample farm on a day, in season: what comes every year is taken in the year in which it is
 * under way or comes next, and what a household would have told by then is told.
 */
export function sampleOnDay(seed: SampleSeed, at: MadeAt): SampleOnDay {
  const { today } = at;
  const batches = seed.batches.map((each) => batchOn(each, today));
  const days = daysAway(seed, batches, today);
  const jobs = sampleJobs(seed, at);
  return {
    people: seed.people.map((person) => ({ ...person, away: [days] })),
    batches,
    herds: herdsOn(seed, today),
    cows: cowsOn(seed, today),
    jobs: jobs.jobs,
    handover: handoverOn(seed, days, at),
    facts: [
      ...jobs.facts,
      ...grassFacts(seed, today),
      ...receiptFacts(seed, today),
      ...batches.flatMap((batch) => [
        ...weighedFacts(seed, batch, today),
        ...eggFacts(seed, batch, today),
        ...openedFacts(seed, batch, today),
      ]),
    ],
  };
}

function batchOn({ arrival, ...batch }: SampleBatch, today: PlainDate): BatchWithId {
  const comingFrom = (from: PlainDate): BatchWithId => {
    const year = yearOf(nextMonthDay(arrival.monthDay, from)) - (arrival.yearsBefore ?? 0);
    return { ...batch, arrivalDate: `${year}-${arrival.monthDay}` };
  };
  const kept = comingFrom(addDays(today, -arrival.keptDays));
  // Nobody tells that they left: the next ones stand in their place, and Today asks after none.
  return isGone(kept, today) ? comingFrom(today) : kept;
}

/** Whether a batch of meat has left: on the weekday nearest to its age, three days before or after. */
function isGone(batch: BatchWithId, today: PlainDate): boolean {
  const { processingWeekday: wished } = batch;
  return leavesOn(batch).some((byAge) => {
    const near = NEAREST.map((days) => addDays(byAge, days));
    return (near.find((day) => weekdayOf(day) === wished) ?? byAge) < today;
  });
}
const NEAREST = [-3, -2, -1, 0, 1, 2, 3];

function herdsOn({ herds }: SampleSeed, today: PlainDate): Herd[] {
  return herds.map((herd) => ({
    ...herd,
    groups: herd.groups.map(({ calves, nursing, ...group }) => ({
      ...group,
      ...(nursing && isWithin(today, nursing) ? { classId: nursing.classId } : {}),
      ...(calves === undefined ? {} : { calvesOn: nextMonthDay(calves, today) }),
    })),
  }));
}

/** A named cow is of the class that her group is of now. */
function cowsOn({ cows, herds }: SampleSeed, today: PlainDate): Cow[] {
  return cows.map((cow) => {
    const group = herds
      .find(({ id }) => id === cow.herdId)
      ?.groups.find(({ classId }) => classId === cow.classId);
    return group?.nursing && isWithin(today, group.nursing)
      ? { ...cow, classId: group.nursing.classId }
      : cow;
  });
}

/** When a batch of meat leaves, as near as its weekday lets it. */
const leavesOn = ({ arrivalDate, hatchToArrivalDays, leaveAgeDays }: Batch): PlainDate[] =>
  leaveAgeDays === undefined ? [] : [addDays(arrivalDate, leaveAgeDays - hatchToArrivalDays)];

/** Nobody goes away while chicks are new, or about the day on which birds are processed. */
function daysAway(
  { away }: SampleSeed,
  batches: readonly BatchWithId[],
  today: PlainDate,
): { readonly from: PlainDate; readonly to: PlainDate } {
  const isClear = (from: PlainDate): boolean => {
    const to = addDays(from, away.days - 1);
    return batches.every(
      (batch) =>
        (addDays(to, 1) < batch.arrivalDate ||
          addDays(batch.arrivalDate, away.clearOfArrivalDays) < from) &&
        leavesOn(batch).every(
          (on) => addDays(to, away.clearOfLeavingDays) < on || addDays(on, 1) < from,
        ),
    );
  };
  let from = addDays(today, away.afterDays);
  while (weekdayOf(from) !== away.weekday || !isClear(from)) from = addDays(from, 1);
  return { from, to: addDays(from, away.days - 1) };
}

function handoverOn(
  { away, people, herds, batches }: SampleSeed,
  days: { readonly from: PlainDate; readonly to: PlainDate },
  { suffix }: MadeAt,
): Handover {
  const { sitter, hoursPerDay, phones, whereabouts, notes } = away;
  return {
    id: `away-${suffix}`,
    ...{ ...days, sitter, hoursPerDay, phones, whereabouts, notes },
    awayIds: people.map(({ id }) => id),
    roundOrder: [...batches, ...herds].map(({ id }) => id),
  };
}

/** The last pasture walk, and the paddocks that the herds were in, in turn, since turn-out. */
function grassFacts({ walks, paddocks, herds }: SampleSeed, today: PlainDate): Said[] {
  const walk = [...walks].reverse().find(({ from }) => from <= today.slice(5)) ?? walks.at(-1)!;
  const { grazing, heightsCm, daysAgo } = walk;
  const turnOut = grazing ? nextMonthDay(grazing.since, `${yearOf(today)}-01-01`) : today;
  const stay = grazing ? Math.floor(daysBetween(turnOut, today) / grazing.stayDays) : 0;
  const at = (k: number) => paddocks[(stay + k) % paddocks.length]!.id;
  const moves = Array.from({ length: grazing ? stay + 1 : 0 }, (_, k) =>
    herds.map(({ id }): Said => ({
      ...{ kind: 'herd-move', about: id, on: addDays(turnOut, k * grazing!.stayDays) },
      details: { paddockId: paddocks[k % paddocks.length]!.id },
    })),
  );
  return [
    ...heightsCm.map((heightCm, k): Said => ({
      ...{ kind: 'grass-reading', about: at(k), on: addDays(today, -daysAgo) },
      details: { heightCm },
    })),
    ...moves.flat(),
  ];
}

function weighedFacts({ told }: SampleSeed, batch: BatchWithId, today: PlainDate): Said[] {
  return told.weighed.flatMap(({ purpose, ageDays, birds, averageKg }): Said[] => {
    const on = addDays(batch.arrivalDate, ageDays - batch.hatchToArrivalDays);
    return purpose === batch.purpose && on < today
      ? [{ kind: 'weighed', about: batch.id, on, details: { birds, averageKg } }]
      : [];
  });
}

/** Eggs are counted over a week, on Sundays. */
function eggFacts({ told }: SampleSeed, batch: BatchWithId, today: PlainDate): Said[] {
  if (batch.purpose !== 'layers') return [];
  const sunday = addDays(today, -(weekdayOf(today) % 7 || 7));
  return [2, 1, 0].flatMap((weeks): Said[] => {
    const on = addDays(sunday, -7 * weeks);
    const days = daysBetween(batch.arrivalDate, on) - 6;
    const rate = told.eggs.findLast(({ fromDays }) => fromDays <= days);
    if (!rate) return [];
    return [
      { kind: 'eggs-counted', about: batch.id, on, details: { days: 7, eggs: rate.perWeek } },
    ];
  });
}
