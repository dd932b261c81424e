import type { WorkConditions } from '../../farm/job.js';
import { followersOf, spanOf } from '../../schedule/work-span.js';
import { finishDay, placedMinutes, type WorkJob, type WorkPiece } from '../../schedule/work.js';
import { asksForWeather } from './days-that-suit.js';
import { suitsNeed } from './suits-of-needs.js';
import type { WholeWork } from './whole-work.js';

/** Work done in other weather than it asks for, and the day on which it would be done then. */
export interface WeatherWay {
  readonly words: string;
  readonly doneOn: number;
}

interface Eased {
  readonly words: string;
  readonly conditions: WorkConditions;
  /** Of the days that suit it then only the driest, as few as it takes. */
  readonly onDriest?: true;
}

/**
 * The first way to do a piece of work in weather that it does not ask for, if the household can:
 * fewer dry days in a row, wet ground on the driest days, colder air, at last any weather. Each is
 * tried in the hours that the plan leaves, with all else where it is.
 *
 * @returns undefined where it asks nothing of a day, or where no weather would make all of it fit
 */
export function wayByWeather(work: WholeWork, index: number): WeatherWay | undefined {
  const job = work.problem.jobs[index]!;
  if (!asksForWeather(work.needs[index]!.conditions) || job.able.length < job.peopleNeeded)
    return undefined;
  for (const eased of easedOf(work.needs[index]!.conditions)) {
    const need = { ...work.needs[index]!, conditions: eased.conditions };
    const wetFromMm = work.request.tables.work.wetDay.rainMm;
    const suits = onOpenGround(work, index, suitsNeed(need, work.days, wetFromMm));
    const pieces = eased.onDriest ? onDriestDays(work, index, suits!) : tried(work, index, suits);
    if (pieces) return { words: eased.words, doneOn: finishDay(pieces) };
  }
  return undefined;
}

/** Work of the ground is not done on ice or snow, whatever the weather else. */
function onOpenGround(
  { needs, days }: WholeWork,
  index: number,
  suits: Uint8Array | undefined,
): Uint8Array | undefined {
  if (!needs[index]!.conditions.dryGround) return suits;
  return days.isWintry.map((is, day) =>
    suits?.[day] === 0 || (is === 1 && days.isLookedAt[day] === 0) ? 0 : 1,
  );
}

function easedOf({ peopleNeeded, daylight, shopsOpen, ...asks }: WorkConditions): Eased[] {
  const always = {
    ...(peopleNeeded === undefined ? {} : { peopleNeeded }),
    ...(daylight === undefined ? {} : { daylight }),
    ...(shopsOpen === undefined ? {} : { shopsOpen }),
  };
  const { dryDaysInRow, dryGround, noRain, dayMaxAtMostC, ...colder } = asks;
  const eased: Eased[] = [];
  for (let days = (dryDaysInRow ?? 0) - 1; 1 < days; days--)
    eased.push({
      words: `With ${days} dry days in a row instead of ${dryDaysInRow}`,
      conditions: { ...always, ...asks, dryDaysInRow: days },
    });
  if (dryDaysInRow !== undefined) {
    const { dryDaysInRow: _run, ...others } = asks;
    eased.push({
      words: 'On a single dry day',
      conditions: { ...always, ...others, noRain: true },
    });
  }
  if (dryGround) {
    const { dryGround: _ground, ...others } = asks;
    eased.push({
      words: 'On the driest days, though the ground is wetter than asked for',
      conditions: { ...always, ...others, noRain: true },
      onDriest: true,
    });
  }
  if (Object.keys(colder).length > 0)
    eased.push({
      words: 'Though it is colder than asked for',
      conditions: {
        ...always,
        ...(dryDaysInRow === undefined ? {} : { dryDaysInRow }),
        ...(dryGround === undefined ? {} : { dryGround }),
        ...(noRain === undefined ? {} : { noRain }),
        ...(dayMaxAtMostC === undefined ? {} : { dayMaxAtMostC }),
      },
    });
  return [...eased, { words: 'Whatever the weather', conditions: always }];
}

/** Where all of a job would go on days that suit it otherwise; undefined when it does not fit. */
function tried(
  { problem, fitted, left }: WholeWork,
  index: number,
  suits: Uint8Array | undefined,
): readonly WorkPiece[] | undefined {
  const { suits: _asked, ...job } = problem.jobs[index]!;
  const { from, until } = spanOf(job, followersOf(problem)[index]!, fitted.plan);
  if (from < 0) return undefined;
  const easier: WorkJob = suits ? { ...job, suits } : job;
  const own = fitted.plan[index]!;
  left.giveBack(job, own);
  const pieces = left.put(easier, from, until);
  left.giveBack(job, pieces);
  for (const piece of own) left.take(job, piece);
  return placedMinutes(pieces) < job.minutes ? undefined : pieces;
}

/** The same on as few of those days as it takes, those on which the ground lacks most water. */
function onDriestDays(
  work: WholeWork,
  index: number,
  suits: Uint8Array,
): readonly WorkPiece[] | undefined {
  const { fromDay, untilDay } = work.problem.jobs[index]!;
  const { missingMm } = work.days;
  const days = [...suits.keys()]
    .filter((day) => suits[day] === 1 && fromDay <= day && day <= untilDay)
    .sort((a, b) => missingMm[b]! - missingMm[a]! || a - b);
  const onFirst = (count: number): readonly WorkPiece[] | undefined => {
    const only = new Uint8Array(suits.length);
    for (const day of days.slice(0, count)) only[day] = 1;
    return tried(work, index, only);
  };
  let [fails, fits] = [0, days.length];
  if (!onFirst(fits)) return undefined;
  while (1 < fits - fails) {
    const count = (fails + fits) >> 1;
    if (onFirst(count)) fits = count;
    else fails = count;
  }
  return onFirst(fits);
}
