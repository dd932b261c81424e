import type { Formula, Sourced } from '../../explain/formula.js';
import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { formatMonthDay, type DateReader } from '../../units/dates.js';
import { frostFreeDays, frostFreeFormulas } from '../../weather/frost-free-days.js';
import type { WorkBasis } from './work-basis.js';
import type { JobOutlook } from './job-outlook.js';
import type { NamedFrost, WorkOutlook } from './work-outlook.js';
import type { PlannedJob, WorkWeek } from './planned-work.js';

export const workFormulas = {
  latest: {
    id: 'latest-day',
    title: 'Latest day of a task or job',
    words:
      'The day it is due, or earlier where something waits for it: that one’s own latest day, less the days of waiting between the two. By the calendar alone, before anybody’s hours are known.',
    symbols: 'L = min(due, L(next) − wait)',
    sources: ['KELLEY_WALKER'],
    mark: 'from-memory',
  },
  spareDays: {
    id: 'days-to-spare-of-work',
    title: 'Days to spare',
    words:
      'Days it can slip from where it is planned: from its planned end to its latest day. By the calendar alone they are the days between its earliest and its latest; work with none of those holds up all that follows.',
    symbols: 'S = L − planned end; by the calendar L − E',
    sources: ['KELLEY_WALKER'],
    mark: 'from-memory',
  },
  hours: {
    id: 'hours-of-work',
    title: 'Hours of each who takes part',
    words:
      'A base plus an amount for the birds, head, acres or pieces, from the template or as you set it; where the household logged what such work took, times the geometric mean of logged over reckoned hours, the template counted as one time more.',
    symbols: 'h = (b + v·n)·exp(Σ ln(logged ÷ reckoned) ÷ (times + 1))',
    sources: ['ARITHMETIC'],
    mark: 'own-record',
  },
  week: {
    id: 'hours-of-week',
    title: 'Hours of a week',
    words:
      'Summed over everyone and the seven days. Work is due in the week of its latest day, whoever does it and whenever it is planned.',
    symbols: 'H = Σ h',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  chance: {
    id: 'chance-in-time',
    title: 'Years in which it is done in time',
    words:
      'Share of the years in which it is done by its latest day. In each year the days of the work are chosen anew every week, by what has been done, a forecast of that week that fails as often as forecasts do, and beyond it what is usual; what presses comes first, then what has fewest days left. What is planned for a day that turns out unfit goes undone that day. How far the share may be off (one standard error) comes from the number of years alone.',
    symbols: 'p = years in time ÷ n, ± √(p(1 − p) ÷ n)',
    sources: ['RICHARDSON', 'NOAA_FORECAST'],
    mark: 'estimate',
  },
  startBy: {
    id: 'begin-by',
    title: 'Start by, to be safe in nearly all years',
    words:
      'In each year its suitable days are filled backward from its latest day with the hours available, as if it had them to itself. Only the years beyond the share that counts as nearly always ask for an earlier day than this.',
    symbols: 'percentile (1 − p) of the latest starts of the years',
    sources: ['RICHARDSON'],
    mark: 'estimate',
  },
  frost: {
    id: 'named-frost',
    title: 'How cold it is called what',
    words:
      'A night at or below this counts. What it does to a plant hangs on the plant, its stage and the hollow it stands in.',
    symbols: 'T_min ≤ T',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

type Dated = Pick<
  PlannedJob,
  | 'name'
  | 'latest'
  | 'earliest'
  | 'calendarSpareDays'
  | 'spareDays'
  | 'hours'
  | 'learned'
  | 'hoursFrom'
>;

/** Due day, days to spare and hours of a piece of work, each to be opened. */
export function jobQuantities(
  job: Dated,
  { planned }: Pick<WorkBasis, 'planned'>,
): {
  latest: Quantity;
  spareDays: NumberQuantity;
  hours: NumberQuantity;
} {
  const { name, latest, earliest, calendarSpareDays, spareDays, hours, learned, hoursFrom } = job;
  const work = input('Work', name, 'text');
  return {
    latest: datedFact('Due by', latest, workFormulas.latest, [work]),
    spareDays: quantity(
      'Days to spare',
      spareDays,
      'day',
      workFormulas.spareDays,
      [
        work,
        input('Earliest day', earliest, 'date', 'E'),
        input('Latest day', latest, 'date', 'L'),
        input('Days to spare by the calendar', calendarSpareDays, 'day'),
      ],
      { rows: [planned] },
    ),
    hours: quantity(
      'Hours of each',
      hours,
      'h',
      workFormulas.hours,
      [
        work,
        input('By the template or as set', learned?.reckonedHours ?? hours, 'h'),
        input('Times it was logged', learned?.times ?? 0, 'count'),
      ],
      { rows: [hoursFrom] },
    ),
  };
}

/** What the hours of a week are called. */
export const HOURS_OF = {
  given: 'Hours available',
  chores: 'Hours of chores',
  planned: 'Hours of planned work',
  due: 'Hours of work due',
} as const;

/** Hours of a week, each to be opened. */
export function weekQuantities(
  { from, hours, choreHours, plannedHours, dueHours }: WorkWeek,
  basis: WorkBasis,
): {
  given: NumberQuantity;
  chores: NumberQuantity;
  planned: NumberQuantity;
  due: NumberQuantity;
} {
  const sum = (label: string, value: number, row: Sourced): NumberQuantity =>
    quantity(label, value, 'h', workFormulas.week, [input('Week of', from, 'date')], {
      rows: [row],
    });
  return {
    given: sum(HOURS_OF.given, hours, basis.given),
    chores: sum(HOURS_OF.chores, choreHours, basis.chores),
    planned: sum(HOURS_OF.planned, plannedHours, basis.planned),
    due: sum(HOURS_OF.due, dueHours, basis.due),
  };
}

/** The low from which a frost has its name, to be opened. */
export const frostLow = ({ frostFrom }: WorkOutlook, { name, thresholdC }: NamedFrost) =>
  quantity(name, thresholdC, 'degC', workFormulas.frost, [], { rows: [frostFrom] });

/** Frost-free days at a low, to be opened; undefined where frost does not come and go every year. */
export function frostFree(
  { frostFrom }: WorkOutlook,
  { name, last, first }: NamedFrost,
  reader: DateReader,
) {
  if (!last || !first) return undefined;
  return quantity(
    `Frost-free days, ${name.toLowerCase()}`,
    frostFreeDays(last.usual, first.usual),
    'day',
    frostFreeFormulas.frostFree,
    [
      input('Last in spring, in half of the years', formatMonthDay(last.usual, reader), 'text'),
      input('First in fall, in half of the years', formatMonthDay(first.usual, reader), 'text'),
      input('From safe date to safe date', frostFreeDays(last.safe, first.safe), 'day'),
    ],
    { rows: [frostFrom] },
  );
}

/** Chance and start-by day of a piece of work, each to be opened. */
export function outlookQuantities(
  { years, isMeasured, label, basis, sureShare }: WorkOutlook,
  { name, latest, chance, standardError, startBySafe: startBy }: JobOutlook,
): { chance: NumberQuantity; startBy?: Quantity } {
  const inputs = [
    input('Work', name, 'text'),
    input('Latest day', latest, 'date'),
    input('Years', years, 'count', 'n'),
    input('Weather', isMeasured ? label : `drawn by chance from: ${label}`, 'text'),
  ];
  return {
    chance: quantity('Done in time', chance, 'chance', workFormulas.chance, inputs, {
      spread: {
        low: Math.max(0, chance - standardError),
        high: Math.min(1, chance + standardError),
        because: 'one standard error, from the number of years',
      },
      rows: [basis],
    }),
    ...(startBy === undefined
      ? {}
      : {
          startBy: datedFact(
            'Start by',
            startBy,
            workFormulas.startBy,
            [...inputs, input('Nearly always, share of years', sureShare, 'share', 'p')],
            {
              rows: [basis],
            },
          ),
        }),
  };
}
