import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Away } from '../../farm/farm.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import { listed } from '../../units/listed.js';
import { isOfGarden, isOfPlace } from '../work/of-place.js';
import { longLeads } from '../story/long-leads.js';
import { fittedDays } from '../work/fitted-days.js';
import type { PlannedBatch } from '../work/dated-work.js';
import { nextPlanned } from '../work/next-planned.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { WorkPlan } from '../work/planned-work.js';
import { bornAlready, calvesAhead, weanings } from './calves-ahead.js';
import type { ComingDate } from './coming-date.js';

/** Dates further off are read in the year. */
const AHEAD_DAYS = 60;
const MOST = 8;

/** The next key dates: of batches and herds, changes of feed, absences; and the next work. */
export function comingDates(
  { picture, tables }: { readonly picture: FarmPicture; readonly tables: Tables },
  plan: WorkPlan,
  batches: readonly PlannedBatch[],
  pasture?: PasturePlan,
): ComingDate[] {
  const { today } = picture;
  const last = addDays(today, AHEAD_DAYS);
  const calves = calvesAhead(picture, tables, pasture);
  const born = bornAlready(calves);
  const dates = [
    ...keyDates(picture, plan, batches).filter(({ key }) => !born.has(key)),
    ...bookedAhead(picture, plan, batches),
    ...feeds(batches),
    ...absences(picture),
    ...weanings(calves),
  ];
  const told = new Set(dates.map(({ key }) => key));
  const ahead = [...dates, ...firstWork(plan, batches).filter(({ key }) => !told.has(key))]
    .filter(({ on }) => today < on)
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const soon = ahead.filter(({ on }) => on <= last).slice(0, MOST);
  // In a quiet time the next one is told, however far ahead: a new farm begins with it.
  return 0 < soon.length ? soon : ahead.slice(0, 1);
}

function keyDates(
  { jobs }: FarmPicture,
  { events }: WorkPlan,
  batches: readonly PlannedBatch[],
): ComingDate[] {
  const isBatch = new Set(batches.map(({ id }) => id));
  const isHungOn = new Set(jobs.map(({ tiedTo }) => tiedTo?.eventId));
  // Dates of garden and hives are for those whose work hangs on them.
  const told = events.filter((event) => !isOfGarden(event) || isHungOn.has(event.id));
  return told.map((event) => {
    const { id, name, date } = event;
    const of = id.split('/')[1]!;
    return {
      key: id,
      on: date,
      text: name,
      place: isBatch.has(of)
        ? { kind: 'batch', id: of }
        : { kind: isOfPlace(event) ? 'work' : 'pasture' },
    };
  });
}

/** Slots to book and birds to order, on the day that the plan of the work has for it. */
function bookedAhead(
  { today }: Pick<FarmPicture, 'today'>,
  work: WorkPlan,
  batches: readonly PlannedBatch[],
): ComingDate[] {
  const fitted = fittedDays(work);
  return batches.flatMap(({ id, name, plan }) =>
    longLeads(plan).flatMap(({ task, words }) => {
      const key = `batch/${id}/${task.id}`;
      const day = fitted.get(key);
      // Once its day is past it is asked for today, and no later day is told for it.
      if (task.start < today) return [];
      const text = `${name}: ${words}`;
      return day ? [{ key, on: day.on, text, place: { kind: 'batch' as const, id } }] : [];
    }),
  );
}

/** The work that comes first after today, so that no later date stands as the next thing. */
function firstWork(work: WorkPlan, batches: readonly PlannedBatch[]): ComingDate[] {
  const next = nextPlanned(work, addDays(work.today, 1));
  if (!next) return [];
  const { key, name, belongsTo } = next.job;
  const isOfBatch = batches.some(({ id }) => id === belongsTo?.id);
  return [
    {
      key,
      on: next.on,
      text: belongsTo ? `${belongsTo.name}: ${lowerFirst(name)}` : name,
      place: isOfBatch ? { kind: 'batch', id: belongsTo!.id } : { kind: 'work' },
    },
  ];
}

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;

/** A feed that begins; the first comes with the birds. */
const feeds = (batches: readonly PlannedBatch[]): ComingDate[] =>
  batches.flatMap(({ id, name, plan }) =>
    plan.feed.phases.slice(1).map((phase) => ({
      key: `feed/${id}/${phase.phaseId}`,
      on: String(phase.starts.value),
      text: `${name}: ${phase.name.toLowerCase()} from now on, ${mixedIn(plan.feed.mixDays)}`,
      place: { kind: 'batch' as const, id },
    })),
  );

const mixedIn = (days: number): string =>
  days === 0 ? 'the medicated feed all gone by then' : `mixed in over ${days} days`;

/** Absences, those of the same days in one line. */
function absences({ people }: FarmPicture): ComingDate[] {
  const bySpan = new Map<string, (Away & { id: string; name: string })[]>();
  for (const { id, name, away } of people)
    for (const { from, to, isIll = false } of away) {
      const span = `${from}/${to}/${isIll}`;
      bySpan.set(span, [...(bySpan.get(span) ?? []), { id, name, from, to, isIll }]);
    }
  return [...bySpan.values()].map((who) => {
    const { id, from, to, isIll } = who[0]!;
    const days = daysBetween(from, to) + 1;
    return {
      key: `away/${id}/${from}`,
      on: from,
      text: `${listed(who.map(({ name }) => name))} ${isIll ? 'ill' : 'away'} ${days === 1 ? 'for the day' : `for ${days} days`}`,
      place: { kind: 'away' as const },
    };
  });
}
