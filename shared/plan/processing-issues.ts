import type { Sourced } from '../explain/formula.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { listed } from '../units/listed.js';
import type { PlanContext } from './context.js';
import { birdsToProcess } from './leaving-weights.js';
import { areHandsUnknown } from './hands-of-day.js';
import { daysUpTo, type ProcessingDay, type ProcessingDays } from './processing-days.js';
import type { ProcessingWay } from './processing-way.js';
import { helpersFor, isOnPlannedDay, sayHelpers } from './processing-ways.js';
import { sayDays } from './processing-words.js';
import { paceOf, workOfDay } from './processing-work.js';

/** Said when the planned day is too short for all of it, or nobody is there. */
export function processingIssues(
  context: PlanContext,
  all: ProcessingDays,
  ways: readonly ProcessingWay[],
): PlanIssue[] {
  const { days, left, planned } = all;
  const birds = birdsToProcess(context.life);
  const { say, tables, batch } = context;
  const { leastADay } = tables.judgements.birds;
  const { fixedH, birdH, rows } = workOfDay(context);
  const work = `${birds} birds are about ${say(fixedH + birds * birdH, 'h')} of killing and cleaning`;
  if (areHandsUnknown(context)) return handsUnknown(context, work, fixedH + birds * birdH);
  const station = stationIssue(context, all);
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
  const list = sayDays(context, days);
  const helped = helpersFor(context, birds);
  const help = helped
    ? `With ${sayHelpers(batch, helped.helpers)} it is one day, ${say(helped.date, 'date')}${orLonger(context, birds)}`
    : 'No number of helpers makes it one day with the equipment there is';
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
      : `The days up to ${when} have hours for ${sumOf(days)}: ${sayDays(context, days)}.${lighter(context, days)}`;
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

/** Less than this past the hours there are is not worth a word. */
const SHORT_H = 0.2;

/** How much longer the longest day is than people have hours, for a handful that is not worth another. */
function longer(context: PlanContext, days: readonly ProcessingDay[]): string {
  const { birdH } = workOfDay(context);
  const over = Math.max(
    ...days.map(
      ({ birds, most, hands }) => (Math.max(0, birds - most) * birdH) / Math.max(1, hands),
    ),
  );
  return over < SHORT_H
    ? ''
    : ` That is up to ${context.say(over, 'h')} more for each than the hours you gave, chores done first.`;
}

/** The day on which fewest hours more make it one day, and how many for each. */
function orLonger(context: PlanContext, birds: number): string {
  const { birdH } = workOfDay(context);
  const free = daysUpTo(context).filter(
    ({ hands, most, mostLong }) => 0 < hands && most < mostLong,
  );
  const [least] = free
    .map(({ date, hands, most }) => ({ date, moreH: ((birds - most) * birdH) / hands }))
    .sort((a, b) => a.moreH - b.moreH);
  return least
    ? `, and with ${context.say(least.moreH, 'h')} more for each of you, ${context.say(least.date, 'date')}`
    : '';
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
