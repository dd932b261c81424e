import { addDays } from '../../shared/calendar/plain-date.js';
import {
  phoneLines,
  visitLine,
  whoIsThereText,
  type SitterSheet,
} from '../../shared/plan/handover/sitter-sheet.js';
import { goneByInWords, isGoneBy } from '../../shared/plan/work/gone-by.js';
import { notReady } from '../../shared/plan/work/not-ready.js';
import { choreHoursSaid, roundsSaid } from '../../shared/plan/work/rounds-said.js';
import { weeksToTell } from '../../shared/plan/work/weeks-to-tell.js';
import {
  betterWords,
  chanceWords,
  elseWords,
  heldUpWords,
  isLikely,
  isTried,
  lackWords,
  NOTHING_HELPS,
  playedWords,
  slightlyLateWords,
  unlikelyLines,
  type UnlikelyLine,
} from '../../shared/plan/work/chance-words.js';
import type { JobOutlook } from '../../shared/plan/work/job-outlook.js';
import { inSeries, type Series } from '../../shared/farm/repeated-jobs.js';
import type { WorkOutlook } from '../../shared/plan/work/work-outlook.js';
import type { PlannedJob, WorkPlan } from '../../shared/plan/work/planned-work.js';
import { waysOfDay } from '../../shared/plan/work/short-day.js';
import { inOwnUnits } from '../../shared/units/own-units.js';
import { formatDate, formatLongDate, formatMonthDay } from '../../shared/units/dates.js';
import {
  formatChance,
  formatHours,
  formatValue,
  formatYears,
  type Reader,
} from '../../shared/units/format.js';
import { frostFreeDays } from '../../shared/weather/frost-free-days.js';
import { tablesFor } from './text.js';

const NEXT_DAYS = 4;

/** A household's work as text: the next days, what will not fit, weeks and the whole season. */
export function printWork(plan: WorkPlan, reader: Reader): string {
  const { table } = tablesFor(reader);
  const near = (date: string): string => formatDate(date, reader);
  const names = new Map(plan.people.map(({ id, name }) => [id, name]));
  const days = Array.from({ length: NEXT_DAYS }, (_, k) => addDays(plan.today, k));
  const next = days.flatMap((date, k) => {
    const chores = (plan.chores[k] ?? []).map((chore) => [
      near(date),
      [chore.name, chore.belongsTo].filter(Boolean).join(', '),
      chore.personId === undefined ? 'nobody' : (names.get(chore.personId) ?? ''),
      choreHoursSaid(chore),
      chore.rounds ? roundsSaid(chore.rounds) : 'a chore of the day',
    ]);
    const jobs = plan.jobs.flatMap((job) =>
      job.pieces
        .filter((piece) => piece.date === date)
        .map((piece) => [
          near(date),
          [job.name, job.belongsTo?.name].filter(Boolean).join(', '),
          piece.personIds.map((id) => names.get(id) ?? id).join(' and '),
          formatHours(piece.hours),
          job.why,
        ]),
    );
    return [...chores, ...jobs];
  });
  const goneBy = plan.jobs.filter(isGoneBy);
  const unfit = plan.jobs.filter((job) => job.pieces.length === 0 && !isGoneBy(job));
  // What is late and in part is told once.
  const part = plan.jobs.filter(({ lostHours, lateDays }) => 0 < lostHours && lateDays === 0);
  const late = plan.jobs.filter(({ lateDays }) => 0 < lateDays);
  return [
    `Work from ${near(plan.today)} to ${near(plan.to)}`,
    ...(plan.careGaps.length === 0
      ? []
      : [
          '\nWho is there for the animals?',
          table(
            ['', 'what would do'],
            plan.careGaps.map(({ said, ways }) => [said, ways.join(' Or: ')]),
          ),
        ]),
    ...(plan.eventsToMove.length === 0
      ? []
      : [
          '\nBefore all is ready',
          table(
            ['', 'on', '', 'what would do'],
            plan.eventsToMove.map((event) => [
              event.name,
              near(event.from),
              notReady(event) ?? '',
              event.said,
            ]),
          ),
        ]),
    '\nToday and the next three days',
    next.length === 0
      ? 'Nothing has to be done.'
      : table(['on', 'work', 'who', 'hours', 'why then'], next),
    ...plan.shortDays.map((day) => waysOfDay(day, plan.jobs).join(' Or: ')),
    ...(late.length === 0
      ? []
      : [
          '\nDone late',
          table(
            ['work', 'due by', 'planned for', 'why', 'what it endangers', 'to be in time'],
            inSeries(late).map(({ next: job, ...times }) => [
              nameOf(job, times),
              near(job.latest),
              near(job.pieces.at(-1)!.date),
              [job.whyPart, job.why].filter(Boolean).join(' '),
              job.ifLate ?? '',
              job.waysToFit.join(' Or: '),
            ]),
          ),
        ]),
    ...part.map(
      (job) =>
        `${[job.name, job.belongsTo?.name].filter(Boolean).join(', ')}: ${[job.whyPart, ...job.waysToFit].join(' ')}`,
    ),
    ...(unfit.length + part.length + plan.shortDays.length + late.length === 0
      ? [
          plan.careGaps.length + goneBy.length === 0
            ? '\nTime for everything.'
            : '\nTime for the rest.',
        ]
      : []),
    ...(unfit.length === 0
      ? []
      : [
          '\nNo time for these',
          table(
            ['work', 'hours', 'due by', 'why', 'ways to make room'],
            inSeries(unfit).map(({ next: job, ...times }) => [
              nameOf(job, times),
              formatHours(job.hours),
              near(job.latest),
              job.why,
              job.waysToFit.join(' '),
            ]),
          ),
        ]),
    ...(goneBy.length === 0
      ? []
      : [
          `\nTheir last day is over, and nobody said whether they were done: ${goneByInWords(goneBy)}.`,
        ]),
    '\nHours by week',
    table(
      ['week of', 'available', 'chores', 'planned', 'due', ''],
      weeksToTell(plan).map((week) => [
        near(week.from),
        formatHours(week.hours),
        formatHours(week.choreHours),
        formatHours(week.plannedHours),
        formatHours(week.dueHours),
        week.isOverloaded ? 'more is due than hours available: some of it is done before' : '',
      ]),
    ),
    '\nWork plan',
    table(
      ['first day', 'work', 'hours', 'due by', 'days to spare', 'why then'],
      inSeries(plan.jobs.filter(({ pieces }) => 0 < pieces.length)).map(
        ({ next: job, ...times }) => [
          near(job.pieces[0]!.date),
          nameOf(job, times),
          formatHours(job.hours),
          near(job.latest),
          `${job.calendarSpareDays} d`,
          job.why,
        ],
      ),
    ),
    ...(plan.cost <= plan.costAtLeast + 0.5 ? ['No better plan is known.'] : []),
  ].join('\n');
}

/** Work and what it is for; of work that comes again how often, in one line. */
function nameOf(
  { name, belongsTo }: Pick<PlannedJob, 'name' | 'belongsTo'>,
  { often, later }: Pick<Series<{ readonly key: string }>, 'often' | 'later'>,
  shown = '',
): string {
  const whole = [name, belongsTo?.name].filter(Boolean).join(', ');
  return often === undefined ? whole : `${whole} (${often}, ${1 + later.length} times${shown})`;
}

/** Chances of a household's work as text, with workable days and frost. */
export function printOutlook(outlook: WorkOutlook, reader: Reader): string {
  const sure = formatYears(outlook.sureShare, 'of');
  const { table } = tablesFor(reader);
  const near = (date: string): string => formatDate(date, reader);
  const likely = outlook.jobs.filter((job) => isLikely(outlook, job));
  const unlikely = unlikelyLines(outlook);
  const slightly = slightlyLateWords(outlook);
  return [
    `Played through ${outlook.years} years of weather, ${outlook.isMeasured ? 'measured' : 'drawn from monthly averages'}. ${playedWords(outlook)}`,
    '\nProbably not in time',
    ...(unlikely.length === 0 && slightly === undefined
      ? ['All of it is likely to get done in time.']
      : unlikely.map((line) => unlikelyText(line, outlook, reader))),
    ...(slightly === undefined ? [] : [slightly]),
    '\nLikely in time',
    table(
      [
        'work',
        'due by',
        'in time',
        `start by, to be safe ${formatYears(outlook.sureShare, 'years in')}`,
        'suitable days',
      ],
      inSeries(likely).map((line) => {
        const job = hardestOf(line);
        return [
          nameOf(job, line, ', the hardest of them'),
          near(job.latest),
          formatChance(job.chance),
          job.startBySafe === undefined ? 'no day is early enough' : near(job.startBySafe),
          job.suitableDays
            ? `${job.suitableDays.tenth} to ${job.suitableDays.ninetieth} of ${job.windowDays}`
            : 'any',
        ];
      }),
    ),
    '\nDays dry enough to work',
    table(
      ['from', 'days', 'wet year', 'half', 'dry year'],
      outlook.workable.map((span) => [
        near(span.from),
        span.days,
        span.tenth,
        span.half,
        span.ninetieth,
      ]),
    ),
    '\nFrost',
    table(
      [
        'at or below',
        'last spring, half',
        `${sure} by`,
        'first fall, half',
        `${sure} after`,
        'frost-free days',
      ],
      outlook.frost.map(({ thresholdC, last, first }) => [
        formatValue(thresholdC, 'degC', reader),
        ...[last?.usual, last?.safe, first?.usual, first?.safe].map((day) =>
          day === undefined ? 'none' : formatMonthDay(day, reader),
        ),
        last && first ? frostFreeDays(last.usual, first.usual) : 'none',
      ]),
    ),
  ].join('\n');
}

const hardestOf = ({ next, later }: Series<JobOutlook>): JobOutlook =>
  later.reduce((a, b) => (b.chance < a.chance ? b : a), next);

/** A piece of work that is unlikely to get done in time, and what would help, a line each. */
function unlikelyText(line: UnlikelyLine, outlook: WorkOutlook, reader: Reader): string {
  const { job, often, times } = line;
  const { startBySafe } = job;
  const says = [
    chanceWords(job, reader),
    ...elseWords(job, reader),
    lackWords(job),
    heldUpWords(line),
    startBySafe && `Start by ${formatDate(startBySafe, reader)} to be safe.`,
    isTried(job) && job.better.length === 0 && NOTHING_HELPS,
  ];
  const whole = job.belongsTo ? `${job.name} (${job.belongsTo.name})` : job.name;
  const unlikelyName = often === undefined ? whole : `${whole}, ${often}, ${times} times`;
  return [
    `${unlikelyName}. ${says.filter(Boolean).join(' ')}`,
    ...job.better.map((better) => `  ${betterWords(outlook, job, better, reader)}`),
  ].join('\n');
}

/** A sitter's sheet as text, a form feed between pages. */
export function printSheet(sheet: SitterSheet, reader: Reader): string {
  return sheet.pages
    .map((page) =>
      [
        `${formatLongDate(page.date, reader)}, for ${sheet.sitter}: ${formatHours(page.hours)} of work, ${formatHours(page.hoursAvailable)} available`,
        whoIsThereText(page),
        ...visitLine(page),
        ...page.stops.flatMap((stop, k) => [
          `${k + 1}. ${stop.name}${stop.where ? `, ${stop.where}` : ''}`,
          ...stop.amounts.map(
            ({ label, value, unit }) => `   ${label}: ${formatValue(value, unit, reader)}`,
          ),
          ...[...stop.carried, ...stop.actions].map((line) => `   [ ] ${line}`),
          ...(stop.named ?? []).map((line) => `   ${line}`),
          `   Look for: ${inOwnUnits(stop.lookFor.join(' '), reader.units)}`,
        ]),
        ...[...page.chores, ...page.jobs].map(
          ({ name, of, hours, lateDays }) =>
            `[ ] ${name}${of ? `, ${of}` : ''}: ${formatHours(hours)}${lateDays === undefined ? '' : `, ${lateDays} ${lateDays === 1 ? 'day' : 'days'} late`}`,
        ),
        ...page.noHours.map(({ name, why }) => `[ ] ${name}: due today, no hours planned. ${why}`),
        ...phoneLines(sheet.phones, ': ').map(
          (line) => `${sheet.phones.length === 0 ? 'Call:' : 'Call'} ${line}`,
        ),
        ...sheet.troubles.map((each) => inOwnUnits(each, reader.units)),
        ...sheet.tooSoon.flatMap(({ name, on, said }) =>
          on === page.date ? [`${name}: ${said}`] : [],
        ),
        ...sheet.late.flatMap(({ name, of, latest, doneOn }) =>
          page === sheet.pages.at(-1)
            ? [
                `Late: ${name}${of ? `, ${of}` : ''}, due by ${formatDate(latest, reader)}, done on ${formatDate(doneOn, reader)}`,
              ]
            : [],
        ),
        ...sheet.whereabouts.map(({ what, where }) => `${what}: ${where}`),
        ...(sheet.notes === undefined ? [] : [sheet.notes]),
      ].join('\n'),
    )
    .join('\n\f\n');
}
