import { dayLengthFormulas } from '../calendar/day-length.js';
import type { PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  fromFarm,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { layFormulas } from '../poultry/lay.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import type { LayDays } from './lay-days.js';
import { LAY_YEAR_DAYS } from './laying-years.js';
import { found, type Found } from './found.js';
import { eggsOfOthers, eggsWanted, YEARS_BY_MONTH } from './other-flocks.js';
import { formatHours } from '../units/format.js';

export const layMonthFormulas = {
  aWeek: {
    id: 'eggs-a-week',
    title: 'Eggs a week',
    words: 'Eggs of the flock over the days of the month, made into a week.',
    symbols: 'E = 7·Σ N·y ÷ days',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  hensNeeded: {
    id: 'hens-for-eggs',
    title: 'Hens for the eggs you eat',
    words:
      'Eggs wanted in a week, less those of other hens of the farm in their first two laying years, divided by the eggs of a hen of this flock over that month, rounded up. Hens die: start with a few more.',
    symbols: 'N = ⌈(E_wanted − E_others) ÷ 7 ÷ y⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** A month of lay, or the part of it after the first egg. */
export interface LayMonth {
  readonly from: PlainDate;
  /** Length of the day, sun alone. */
  readonly sun: NumberQuantity;
  /** Eggs a week, as planned: with a lamp where the coop has one. */
  readonly planned: NumberQuantity;
  readonly unlit: NumberQuantity;
  readonly lit: NumberQuantity;
  /** Hens for the eggs wanted, where that is known. */
  readonly hensUnlit?: NumberQuantity;
  readonly hensLit?: NumberQuantity;
}

/** Weeks one after the other in which fewer eggs are laid than wanted. */
export interface ShortOfEggs {
  readonly from: PlainDate;
  readonly to: PlainDate;
  readonly weeks: number;
  /** Of its worst week. */
  readonly least: NumberQuantity;
}

export interface LayMonths {
  readonly months: readonly LayMonth[];
  /** Left out when nobody said how many eggs are wanted. */
  readonly shortOf?: readonly ShortOfEggs[];
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Eggs by month over two laying years, with and without a lamp, and against the eggs wanted. */
export function layMonths(context: PlanContext, lay: LayDays): Found<LayMonths> {
  const { dateOf } = context;
  const wanted = eggsWanted(context);
  const end = lay.firstDay + YEARS_BY_MONTH * LAY_YEAR_DAYS;
  const months = monthsOf(lay.firstDay, end, dateOf).map((span) => monthOf(context, lay, span));
  if (wanted === undefined) return found({ months });
  const shortOf = shortSpans(context, lay, { from: lay.firstDay, to: end }, wanted);
  return found(
    { months, shortOf },
    { issues: tooFewEggs(context, lay, months, { shortOf, wanted }) },
  );
}

/** Days from one to another, cut where a month begins. */
export function monthsOf(
  from: number,
  to: number,
  dateOf: (day: number) => PlainDate,
): readonly Span[] {
  const spans: Span[] = [];
  let begin = from;
  for (let i = from + 1; i <= to; i++) {
    if (i < to && !dateOf(i).endsWith('-01')) continue;
    spans.push({ from: begin, to: i });
    begin = i;
  }
  return spans;
}

function monthOf(context: PlanContext, lay: LayDays, span: Span): LayMonth {
  const { farm, dateOf, life } = context;
  const rows = [...rowsOn(lay, span), life.losses];
  const days = span.to - span.from;
  const eggsAWeek = (label: string, share: Float64Array, light: string): NumberQuantity =>
    quantity(
      label,
      (7 * eggsOver(share, lay, span)) / days,
      'eggs',
      layMonthFormulas.aWeek,
      [
        input('Hens', mean(lay.hens, span), 'count', 'N'),
        input('Eggs per hen and day, average', mean(share, span), 'share', 'y'),
        input('Light', light, 'text'),
        input('Days', days, 'day'),
      ],
      { rows },
    );
  const sunH = mean(lay.sunH, span);
  const lamp = `lamp to ${formatHours(lay.lampH)}`;
  const unlit = eggsAWeek('Eggs a week without a lamp', lay.share.unlit, 'the sun alone');
  const lit = eggsAWeek('Eggs a week with a lamp', lay.share.lit, lamp);
  const wanted = eggsWanted(context);
  const ofOthers = (7 * eggsOfOthers(context, span)) / days;
  const needed = (label: string, share: Float64Array): NumberQuantity | undefined => {
    const perHen = mean(share, span);
    if (wanted === undefined || !isSettled(context, lay, span)) return undefined;
    return quantity(
      label,
      Math.max(0, Math.ceil((wanted - ofOthers) / 7 / perHen - 1e-9)),
      'count',
      layMonthFormulas.hensNeeded,
      [
        fromFarm('Eggs wanted a week', wanted, 'eggs', 'E_wanted'),
        ...othersInput(context, ofOthers),
        input('Eggs per hen and day, average', perHen, 'share', 'y'),
      ],
      { rows: rowsOn(lay, span) },
    );
  };
  const hensUnlit = needed('Hens for your eggs without a lamp', lay.share.unlit);
  const hensLit = needed('Hens for your eggs with a lamp', lay.share.lit);
  return {
    from: dateOf(span.from),
    sun: quantity('Daylight, average', sunH, 'h', dayLengthFormulas.dayLength, [
      input('Latitude', `${farm.latitudeDeg}°`, 'text', 'φ'),
      input('From', dateOf(span.from), 'date'),
    ]),
    planned: eggsAWeek('Eggs a week', lay.planned, lay.isLit ? lamp : 'the sun alone'),
    unlit,
    lit,
    ...(hensUnlit ? { hensUnlit } : {}),
    ...(hensLit ? { hensLit } : {}),
  };
}

/** Eggs a week of the farm's other hens, where there are other flocks. */
const othersInput = ({ otherFlocks = [] }: PlanContext, eggs: number): readonly QuantityInput[] =>
  otherFlocks.length === 0 ? [] : [input('Eggs a week of other hens', eggs, 'eggs', 'E_others')];

/** Hens are young for so long that nobody sizes a flock by it. */
const COMING_INTO_LAY_DAYS = 35;

/** Whether a flock can be sized by those days: neither coming into lay nor in molt. */
function isSettled({ tables }: PlanContext, lay: LayDays, { from, to }: Span): boolean {
  const moltDays = 7 * tables.laying.molt.weeks;
  return (
    lay.firstDay + COMING_INTO_LAY_DAYS <= to &&
    (lay.hens[from + 27] === undefined || from + 27 < to) &&
    !lay.molts.some((begins) => from < begins + moltDays && begins < to)
  );
}

/** Rows that lay rests on over some days: those of molts from the first one on. */
export const rowsOn = (lay: LayDays, { to }: Span): LayDays['rows'] =>
  (lay.molts[0] ?? Infinity) < to ? [...lay.rows, ...lay.laterRows] : lay.rows;

/** Eggs of the flock over some days. */
export function eggsOver(share: Float64Array, { hens }: LayDays, { from, to }: Span): number {
  let eggs = 0;
  for (let i = from; i < to; i++) eggs += share[i]! * hens[i]!;
  return eggs;
}

function mean(values: Float64Array, { from, to }: Span): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum / (to - from);
}

function shortSpans(
  context: PlanContext,
  lay: LayDays,
  within: Span,
  wanted: number,
): ShortOfEggs[] {
  const { dateOf, life } = context;
  const spans: { from: number; to: number; least: number; worst: Span }[] = [];
  for (let from = within.from; from + 7 <= within.to; from += 7) {
    const week = { from, to: from + 7 };
    const eggs = eggsOver(lay.planned, lay, week) + eggsOfOthers(context, week);
    if (wanted <= eggs) continue;
    const last = spans.at(-1);
    if (last?.to !== from) spans.push({ ...week, least: eggs, worst: week });
    else
      Object.assign(last, { to: week.to }, eggs < last.least ? { least: eggs, worst: week } : {});
  }
  return spans.map(({ from, to, least, worst }) => ({
    from: dateOf(from),
    to: dateOf(to - 1),
    weeks: (to - from) / 7,
    least: quantity(
      'Eggs in the worst week',
      least,
      'eggs',
      layFormulas.eggs,
      [
        input('Hens', lay.hens[worst.from]!, 'count', 'N'),
        input('Eggs per hen and day, average', mean(lay.planned, worst), 'share', 'y'),
        ...othersInput(context, eggsOfOthers(context, worst)),
        input('Week from', dateOf(worst.from), 'date'),
      ],
      { rows: [...rowsOn(lay, worst), life.losses] },
    ),
  }));
}

function tooFewEggs(
  { say, otherFlocks = [] }: PlanContext,
  lay: LayDays,
  months: readonly LayMonth[],
  { shortOf, wanted }: { readonly shortOf: readonly ShortOfEggs[]; readonly wanted: number },
): PlanIssue[] {
  if (shortOf.length === 0) return [];
  const spans = shortOf.map(
    ({ from, to, least }) =>
      `${say(from, 'date')} to ${say(to, 'date')} (down to about ${Math.round(least.value)})`,
  );
  const most = (of: 'hensUnlit' | 'hensLit'): number =>
    Math.max(...months.map((month) => month[of]?.value ?? 0));
  const [unlit, lit] = [most('hensUnlit'), most('hensLit')];
  const outside =
    unlit === 0 && lit === 0
      ? 'Outside the molt there are enough without this flock.'
      : `The poorest month outside the molt takes ${unlit} hens${otherFlocks.length === 0 ? '' : ' of this flock'} without a lamp, ${lit} with one to ${formatHours(lay.lampH)}.`;
  return [
    issue(
      'note',
      'eggs-short',
      `Fewer than the ${wanted} eggs a week you eat${otherFlocks.length === 0 ? '' : ', those of your other hens counted'}: ${spans.join('; ')}. ${outside} In the molt hardly any hen lays: put eggs by, or raise pullets for each fall.`,
      rowsOn(lay, { from: 0, to: Infinity }),
    ),
  ];
}
