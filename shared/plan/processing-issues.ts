import type { Sourced } from '../explain/formula.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { listed } from '../units/listed.js';
import type { PlanContext } from './context.js';
import { birdsToProcess } from './leaving-weights.js';
import { areHandsUnknown } from './hands-of-day.js';
import type { ProcessingDay, ProcessingDays } from './processing-days.js';
import { longerDayFor, longestMoreH } from './processing-longer.js';
import type { ProcessingWay } from './processing-way.js';
import { helpersFor, isOnPlannedDay, sayHelpers } from './processing-ways.js';
import { sayDays } from './processing-words.js';
import { paceOf, workOfDay } from './processing-work.js';
import { daysWaited } from './wait-for-hands.js';

/** Said when the planned day is too short for all of it, or nobody is there. */
export function processingIssues(
  context: PlanContext,
  all: ProcessingDays,
  ways: readonly ProcessingWay[],
): PlanIssue[] {
  const { days, left, over, planned } = all;
  const birds = birdsToProcess(context.life);
  const { say, tables } = context;
  const { leastADay } = tables.judgements.birds;
  const { fixedH, birdH, rows } = workOfDay(context);
  const work = `${birds} birds are about ${say(fixedH + birds * birdH, 'h')} of killing and cleaning`;
  if (areHandsUnknown(context)) return handsUnknown(context, work, fixedH + birds * birdH);
  const station = [...waitedFor(context, days), ...stationIssue(context, all)];
  if (isOnPlannedDay(context, all)) {
    const more = longer(context, days);
    if (more === '') return station;
    return [
      ...station,
      issue(
        'act',
        'processing-long',
        `${work}, on ${say(planned.date, 'date')} in one long day.${more} Get a helper, or hire a custom processor.`,
        rows,
      ),
    ];
  }
  if (0 < left) return [...station, tooMuch(context, all, ways, { words: work, rows })];
  if (0 < over) return [...station, allLonger(context, all, ways, { words: work, rows })];
  const list = sayDays(context, days);
  const help = asOneDay(context, birds);
  if (days.length === 1 || planned.most < Math.min(birds, leastADay.value)) {
    return [
      ...station,
      issue(
        'act',
        'processing-weekday',
        `By their age processing would be on ${say(planned.date, 'date')}, when ${planned.hands === 0 ? 'nobody has hours' : `there are only ${say(planned.hours, 'h')} for it`}. Planned instead: ${list}.${longer(context, days)}${lighter(context, days)} ${1 < days.length ? `${help}. Or choose` : 'Choose'} the weekday you want, get helpers, or hire a custom processor.`,
        rows,
      ),
    ];
  }
  return [
    ...station,
    issue(
      'act',
      'processing-split',
      `${work}, too much for the hands and daylight of one day. ${help}; a custom processor takes all on one. Planned until you choose, with scalder and tables set up ${days.length} times: ${list}.${longer(context, days)}${lighter(context, days)}`,
      rows,
    ),
  ];
}

/** More than the hours of all days: what would spare the longer ones is said beside them. */
function allLonger(
  context: PlanContext,
  { days, over, planned }: ProcessingDays,
  ways: readonly ProcessingWay[],
  work: { readonly words: string; readonly rows: readonly Sourced[] },
): PlanIssue {
  const others = ways.filter(({ id }) => id !== 'planned').map(({ id }) => WAYS[id]);
  return issue(
    'act',
    'processing-all-longer',
    `${work.words}, and the hours you gave hold ${sumOf(days) - over} of them on all days up to ${context.say(planned.date, 'date')}. Planned until you choose, on longer days: ${sayDays(context, days)}.${longer(context, days)}${lighter(context, days)} What would do instead: ${listed(others, 'or')}.`,
    work.rows,
  );
}

const WAYS: Record<ProcessingWay['id'], string> = {
  planned: 'several days',
  helpers: 'helpers',
  'grow-on': 'growing the last ones on',
  fewer: 'fewer birds',
  hired: 'a processor’s slot',
};

/** More than the hands can do on all days: who does the others is said to be open, never planned. */
function tooMuch(
  context: PlanContext,
  { days, left, planned }: ProcessingDays,
  ways: readonly ProcessingWay[],
  work: { readonly words: string; readonly rows: readonly Sourced[] },
): PlanIssue {
  const when = context.say(planned.date, 'date');
  const { leastADay } = context.tables.judgements.birds;
  const own =
    days.length === 0
      ? `No day up to ${when} has hours for ${leastADay.value} of them, and for fewer it is not worth setting up.`
      : `The days up to ${when} hold ${sumOf(days)}: ${sayDays(context, days)}.${longer(context, days)}${lighter(context, days)}`;
  return issue(
    'act',
    'processing-too-much',
    `More birds than these hands can do. ${work.words}. ${own} ${left} have nobody to process them yet. What would do: ${listed(
      ways.map(({ id }) => WAYS[id]),
      'or',
    )}.`,
    work.rows,
  );
}

const sumOf = (days: readonly ProcessingDay[]): number =>
  days.reduce((sum, { birds }) => sum + birds, 0);

/** Said where birds weigh what is wished before anybody has hands for them. */
function waitedFor(context: PlanContext, days: readonly ProcessingDay[]): PlanIssue[] {
  const { batch, life, say, dateOf } = context;
  const waited = daysWaited(context);
  const reached = dateOf(life.days - 1 - waited);
  const first = days.find(({ date }) => reached <= date);
  if (waited === 0 || !first) return [];
  return [
    issue(
      'note',
      'processing-waits',
      `${say(batch.targetLiveKg!, 'kg')} live is reached on ${say(reached, 'date')}; ${say(first.date, 'date')} is the first day with hands for processing, when they weigh about ${say(life.meanWeightKg[first.index]!, 'kg')}.`,
      life.weightRows,
    ),
  ];
}

/** Said where hands wait for cones, scalder or plucker. */
function stationIssue(context: PlanContext, { days }: ProcessingDays): PlanIssue[] {
  const hands = Math.max(1, ...days.map((day) => day.hands));
  const { perHour, slowest } = paceOf(context, hands);
  if (!slowest) return [];
  const byHands = Math.floor(hands / workOfDay(context).killH);
  return [
    issue(
      'note',
      'processing-station',
      `At most about ${Math.floor(perHour)} birds an hour go through ${slowest.name}, and ${hands} people could do ${byHands}: that is what decides how long the day is. Have more room there, or fewer people.`,
      [slowest.row],
    ),
  ];
}

/** How much longer the longest day is than people have hours. */
function longer(context: PlanContext, days: readonly ProcessingDay[]): string {
  const moreH = longestMoreH(context, days);
  return moreH === 0
    ? ''
    : ` That is up to ${context.say(moreH, 'h')} more for each than the hours you gave, chores done first.`;
}

/** With how many helpers it is one day, or with how many hours more. */
function asOneDay(context: PlanContext, birds: number): string {
  const { say, batch } = context;
  const helped = helpersFor(context, birds);
  const long = longerDayFor(context, birds);
  const more = long && `with ${say(long.moreH, 'h')} more for each of you`;
  if (!helped)
    return `No number of helpers makes it one day with the equipment there is${long ? `; ${more} it is one, ${say(long.date, 'date')}` : ''}`;
  const help = `With ${sayHelpers(batch, helped.helpers)}`;
  const when = say(helped.date, 'date');
  if (!long) return `${help} it is one day, ${when}`;
  return long.date === helped.date
    ? `${help}, or ${more}, it is one day, ${when}`
    : `${help} it is one day, ${when}, and ${more}, ${say(long.date, 'date')}`;
}

/** What birds of an early day weigh, where that is some days before the last. */
function lighter({ life, say }: PlanContext, days: readonly ProcessingDay[]): string {
  const [first] = days;
  const lastKg = life.meanWeightKg[life.days - 1]!;
  if (!first || life.days - 1 - first.index < 3) return '';
  return ` The first are ${say(life.arrivalAgeDays + first.index, 'day')} old and about ${say(life.meanWeightKg[first.index]!, 'kg')} live; on the last day planned they would be ${say(lastKg, 'kg')}. Take the largest first.`;
}

function handsUnknown(context: PlanContext, work: string, hours: number): PlanIssue[] {
  const { handHours, handsUnknown: hands } = context.tables.judgements.birds;
  const { rows } = workOfDay(context);
  const needed = Math.ceil(hours / (hands.value * handHours.value));
  if (needed <= 1) return [];
  return [
    issue(
      'act',
      'processing-hours',
      `${work}: ${needed} days for ${hands.value} people. Name the people of the farm and their hours, or helpers, and the days are planned; or hire a custom processor.`,
      rows,
    ),
  ];
}
