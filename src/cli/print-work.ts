import { addDays } from '../../shared/calendar/plain-date.js';
import type { CaretakerSheet } from '../../shared/plan/handover/caretaker-sheet.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import type { WorkPlan } from '../../shared/plan/work/work-plan.js';
import {
  formatChance,
  formatDate,
  formatMonthDay,
  formatShortDate,
  formatValue,
} from '../../shared/units/format.js';
import type { Reader } from '../../shared/units/format.js';
import { tablesFor } from './text.js';

const NEXT_DAYS = 4;
const tenth = (hours: number): string => (Math.round(hours * 10) / 10).toString();

/** A household's work as text: the next days, what will not fit, weeks and the whole season. */
export function printWork(plan: WorkPlan, reader: Reader): string {
  const { table } = tablesFor(reader);
  const names = new Map(plan.people.map(({ id, name }) => [id, name]));
  const days = Array.from({ length: NEXT_DAYS }, (_, k) => addDays(plan.today, k));
  const next = days.flatMap((date, k) => {
    const chores = (plan.chores[k] ?? []).map((chore) => [
      formatShortDate(date),
      `${chore.name}, ${chore.belongsTo}`,
      chore.personId === undefined ? 'nobody' : (names.get(chore.personId) ?? ''),
      tenth(chore.hours),
      'every day',
    ]);
    const jobs = plan.jobs.flatMap((job) =>
      job.pieces
        .filter((piece) => piece.date === date)
        .map((piece) => [
          formatShortDate(date),
          [job.name, job.belongsTo?.name].filter(Boolean).join(', '),
          piece.personIds.map((id) => names.get(id) ?? id).join(' and '),
          tenth(piece.hours),
          job.why,
        ]),
    );
    return [...chores, ...jobs];
  });
  const unfit = plan.jobs.filter(({ pieces }) => pieces.length === 0);
  const short = plan.jobs.filter(({ shortHours }) => 0 < shortHours);
  return [
    `Work from ${formatDate(plan.today)} to ${formatDate(plan.to)}`,
    '\nToday and the next three days',
    next.length === 0
      ? 'Nothing has to be done.'
      : table(['on', 'work', 'who', 'h', 'why then'], next),
    ...short.map(
      (job) =>
        `${job.name} on ${formatShortDate(job.pieces[0]!.date)} takes ${tenth(job.shortHours)} h more than anyone has.`,
    ),
    ...(unfit.length + short.length === 0
      ? ['\nTime for everything.']
      : [
          '\nNo time for these',
          table(
            ['work', 'h', 'due by', 'why', 'ways to make room'],
            unfit.map((job) => [
              [job.name, job.belongsTo?.name].filter(Boolean).join(', '),
              tenth(job.hours),
              formatShortDate(job.latest),
              job.why,
              job.remedies.join(' '),
            ]),
          ),
        ]),
    '\nHours by week',
    table(
      ['week of', 'available', 'chores', 'planned', 'due', ''],
      plan.weeks.map((week) => [
        formatShortDate(week.from),
        tenth(week.hours),
        tenth(week.choreHours),
        tenth(week.plannedHours),
        tenth(week.dueHours),
        week.isOverloaded ? 'more is due than hours available' : '',
      ]),
    ),
    '\nWork plan',
    table(
      ['first day', 'work', 'h', 'due by', 'days to spare', 'why then'],
      plan.jobs
        .filter(({ pieces }) => 0 < pieces.length)
        .map((job) => [
          formatShortDate(job.pieces[0]!.date),
          [job.name, job.belongsTo?.name].filter(Boolean).join(', '),
          tenth(job.hours),
          formatShortDate(job.latest),
          `${job.slackDays} d`,
          job.why,
        ]),
    ),
    ...(plan.cost <= plan.costAtLeast + 0.5 ? ['No better plan is known.'] : []),
  ].join('\n');
}

/** Chances of a household's work as text, with workable days and frost. */
export function printOutlook(outlook: WorkOutlook, reader: Reader): string {
  const { table } = tablesFor(reader);
  return [
    `Played through ${outlook.years} years of weather, ${outlook.isMeasured ? 'measured' : 'drawn from monthly averages'}.`,
    '\nWill it get done?',
    table(
      ['work', 'due by', 'in time', 'start by, to be safe 9 years in 10', 'suitable days'],
      outlook.jobs.map((job) => [
        [job.name, job.belongsTo?.name].filter(Boolean).join(', '),
        formatShortDate(job.latest),
        formatChance(job.chance),
        job.startBy === undefined ? 'no day is early enough' : formatShortDate(job.startBy),
        job.suitingDays
          ? `${job.suitingDays.tenth} to ${job.suitingDays.ninetieth} of ${job.windowDays}`
          : 'any',
      ]),
    ),
    '\nDays dry enough to work',
    table(
      ['from', 'days', 'wet year', 'half', 'dry year'],
      outlook.workable.map((span) => [
        formatShortDate(span.from),
        span.days,
        span.tenth,
        span.half,
        span.ninetieth,
      ]),
    ),
    '\nFrost',
    table(
      ['at or below', 'last spring, half', '9 of 10 by', 'first fall, half', '9 of 10 after'],
      outlook.frost.map(({ thresholdC, lastSpring, firstAutumn }) => [
        formatValue(thresholdC, 'degC', reader),
        lastSpring ? formatMonthDay(lastSpring.half) : 'none',
        lastSpring ? formatMonthDay(lastSpring.ninetieth) : 'none',
        firstAutumn ? formatMonthDay(firstAutumn.half) : 'none',
        firstAutumn ? formatMonthDay(firstAutumn.tenth) : 'none',
      ]),
    ),
  ].join('\n');
}

/** A caretaker's sheet as text, a form feed between pages. */
export function printSheet(sheet: CaretakerSheet, reader: Reader): string {
  return sheet.pages
    .map((page) =>
      [
        `${formatDate(page.date)}, for ${sheet.caretaker}: ${tenth(page.hours)} h of work, ${tenth(page.hoursThere)} h available`,
        ...page.stops.flatMap((stop, k) => [
          `${k + 1}. ${stop.name}${stop.where ? `, ${stop.where}` : ''}`,
          ...stop.amounts.map(
            ({ label, value, unit }) => `   ${label}: ${formatValue(value, unit, reader)}`,
          ),
          ...stop.actions.map((line) => `   [ ] ${line}`),
          ...(stop.named ?? []).map((line) => `   ${line}`),
          `   Look for: ${stop.lookFor.join(' ')}`,
        ]),
        ...[...page.chores, ...page.jobs].map(
          ({ name, of, hours }) => `[ ] ${name}${of ? `, ${of}` : ''}: ${tenth(hours)} h`,
        ),
        ...page.noHours.map(({ name, why }) => `[ ] ${name}: due today, no hours planned. ${why}`),
        ...sheet.phones.map(({ who, number }) => `Call ${who}: ${number}`),
        ...sheet.left.map(({ what, where }) => `${what}: ${where}`),
        ...(sheet.notes === undefined ? [] : [sheet.notes]),
      ].join('\n'),
    )
    .join('\n\f\n');
}
