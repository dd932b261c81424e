import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { together } from '../../explain/quantity.js';
import { rowById } from '../../tables/tables.js';
import { formatValue } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import { dayInPlan } from '../day-in-plan.js';
import { refillsOn, type RefillDay } from '../refills-on.js';
import { hoursOf } from '../tasks/task-hours.js';
import { comesOn } from './chore-days.js';
import type { LookNeed, PlannedChore, Reading } from './work-need.js';
import type { DatedWork, WorkRequest } from './work-request.js';

const SECOND_ROUND = 'move-to-pasture.second-water-round-on-hot-days';
/** Rounds lie no further apart than this anyhow. */
const HALF_A_DAY_H = 12;

/**
 * What drinkers ask for that do not last from morning to evening: somebody who fills them at noon,
 * on days on which no other chore of the batch brings anybody, and no longer gap by day than they last.
 */
export function readRefills(request: WorkRequest, work: DatedWork, reading: Reading): void {
  if (!work.birds) return;
  const drinkers = drinkersByDay(request, work.birds, reading.days);
  reading.looks.push(...looksOf(work, drinkers));
  const { chores } = reading;
  const atNoon = chores.filter(
    ({ belongsTo, rounds }) => belongsTo?.id === work.id && rounds?.includes('noon'),
  );
  const onDays = [...drinkers].flatMap(([day, { rounds }]) =>
    rounds.includes('noon') && !atNoon.some((chore) => comesOn(chore, day)) ? [day] : [],
  );
  chores.push(...noonRound(request, { ...work, birds: work.birds }, onDays, reading));
}

function drinkersByDay(
  { today, farm, tables }: WorkRequest,
  birds: BatchPlan,
  days: number,
): Map<number, RefillDay> {
  const say = (value: number | string, unit: Parameters<typeof formatValue>[1]): string =>
    formatValue(value, unit, { ...farm, today });
  const found = new Map<number, RefillDay>();
  // What nobody has said of the drinkers is told as it is, but asks for no hours and alarms nobody.
  if (!birds.refills.some(({ kind, isAssumed }) => kind === 'drinkers' && !isAssumed)) return found;
  const first = Math.max(0, daysBetween(today, birds.arrivalDate));
  for (let day = first; day < days; day++) {
    const date = dayInPlan(birds, addDays(today, day));
    if (date === undefined) continue;
    const [drinkers] = refillsOn(birds, date, { farm, tables, say });
    if (drinkers?.kind === 'drinkers' && !drinkers.isAssumed) found.set(day, drinkers);
  }
  return found;
}

/** Days one after the other on which drinkers last as many whole hours. */
function looksOf({ id, name }: DatedWork, drinkers: ReadonlyMap<number, RefillDay>): LookNeed[] {
  const looks: LookNeed[] = [];
  for (const [day, { lastsH }] of drinkers) {
    if (HALF_A_DAY_H <= lastsH) continue;
    const everyH = Math.max(1, Math.floor(lastsH));
    const last = looks.at(-1);
    if (last?.toDay === day - 1 && last.everyH === everyH)
      looks[looks.length - 1] = { ...last, toDay: day };
    else
      looks.push({
        of: { id, name },
        everyH,
        fromDay: day,
        toDay: day,
        isOfDrinkers: true,
      });
  }
  return looks;
}

function noonRound(
  { tables }: WorkRequest,
  { kind, id, name, birds }: DatedWork & { birds: BatchPlan },
  onDays: readonly number[],
  { marks }: Reading,
): PlannedChore[] {
  if (onDays.length === 0) return [];
  const row = rowById(tables.taskTemplates, SECOND_ROUND);
  const key = `${kind}/${id}/drinkers-noon`;
  return [
    {
      key,
      name: 'Fill the drinkers at noon: they do not last till evening on a hot day',
      belongsTo: { kind, id, name },
      hoursPerDay: marks.get(key)?.ownHours ?? hoursOf(row, birds.birds.chicksPlaced.value).hours,
      fromDay: onDays[0]!,
      toDay: onDays.at(-1)!,
      onDays: new Set(onDays),
      rounds: ['noon'],
      row: together([row, tables.space.holds.drinkers]),
    },
  ];
}
