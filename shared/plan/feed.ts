import { plainFormulas } from '../explain/plain-formulas.js';
import { daysBetween, type PlainDate } from '../calendar/plain-date.js';
import { dailySeries } from '../explain/daily-series.js';
import type { Formula, Sourced } from '../explain/formula.js';
import {
  datedFact,
  from as fromQuantity,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { bagsFor } from '../money/money.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { layFormulas } from '../poultry/lay.js';
import type { Life } from './life.js';
import { outsideFromDay, type PlanContext } from './context.js';
import {
  deliveriesOf,
  deliveryFormulas,
  storeTooSmall,
  type FeedDelivery,
} from './feed-deliveries.js';
import { found, joined, type Found } from './found.js';
import { goneBefore } from './gone-before.js';
import { isMedicated, lastFeedOf, type ShortLastFeed } from './last-feed.js';
import { feedWithLay } from './lay-feed.js';
import { ownFeedInputs, usedFeedIssues, usedOf, type UsedFeed } from './used-feed.js';
import { bagOf } from './prices.js';
import { withoutThoseGone } from './still-here.js';
import { livingInputs, speedInputs } from './weighed.js';
import { planWater } from './water.js';

export const feedFormulas = {
  phaseTotal: {
    id: 'feed-of-phase',
    title: 'Feed of one phase',
    words: 'Feed of the flock summed over the days of the phase, waste included.',
    symbols: 'F = Σ N(t)·F_day(t)',
    sources: [],
    mark: 'computed',
  },
  flockDay: {
    id: 'flock-feed-day',
    title: 'Feed of the flock in a day',
    words:
      'Growing birds: the step of the table’s cumulative feed, times the feed factor, plus waste, times the birds alive. Hens in lay: their energy needs divided by the energy of the feed, plus waste.',
    symbols: 'F = N·[F(t + 1) − F(t)]·f_feed·(1 + waste)',
    sources: [],
    mark: 'computed',
  },
  phaseStart: {
    id: 'feed-phase-start',
    title: 'First day of a feed phase',
    words:
      'Hatch date plus the age at which the feeding program starts the phase. Mix old and new over a few days.',
    symbols: 'D = hatch + age',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface FeedPhasePart {
  readonly phaseId: string;
  readonly name: string;
  readonly bagKg: number;
  readonly protein: string;
  readonly starts: Quantity;
  readonly lastDay: PlainDate;
  readonly totalKg: NumberQuantity;
  readonly bags: NumberQuantity;
  readonly deliveries: readonly FeedDelivery[];
}

export interface FeedPart {
  readonly phases: readonly FeedPhasePart[];
  readonly total: NumberQuantity;
  readonly perBird: NumberQuantity;
  readonly peakWater: NumberQuantity;
  /**
   * Over so many days one feed goes over into the next; 0 where feed is medicated, whose last day is
   * what the label counts from.
   */
  readonly mixDays: number;
  /** Share of what they eat that is planned as spilled beside it. */
  readonly wasteShare: number;
  /** Feed used so far beside what was planned; undefined while too few bags were emptied. */
  readonly used?: UsedFeed;
  /** Left out where the last feed is fed long enough. */
  readonly shortLast?: ShortLastFeed;
  /** Flock feed by day after arrival. */
  readonly flockFeedKg: Float64Array;
}

export function planFeed(context: PlanContext): Found<FeedPart> {
  const { life, batch, phases } = context;
  const lay = feedWithLay(context);
  const flockFeedKg = withoutThoseGone(context, lay.part);
  const factorInputs = [
    input('Growth table', life.growthTable.name, 'text'),
    ...(life.growthTable.feedModel
      ? [input('Where no feed is printed', life.growthTable.feedModel.note, 'text')]
      : []),
    input('Feed factor', life.feedFactor, 'ratio', 'f_feed'),
    ...livingInputs(context),
    ...speedInputs(life),
    ...ownFeedInputs(life),
    givenOrTable(
      batch.wastePercent !== undefined,
      life.strain.waste,
      ...(['Waste', life.wasteShare, 'share'] as const),
    ),
  ];
  const feedOptions = {
    rows: [
      ...life.feedRows,
      life.losses,
      ...(life.layCurve ? [layFormulas.layerEnergy, life.layCurve, ...eggWeightRows(life)] : []),
    ],
  };
  const cumulative = new Float64Array(life.days);
  let sum = 0;
  flockFeedKg.forEach((kg, i) => (cumulative[i] = sum += kg));
  const seriesOptions = { ...feedOptions, outside: outsideFromDay(context) };
  const series = [
    dailySeries(
      'feed-day',
      'Feed of the flock in the day',
      'kg',
      feedFormulas.flockDay,
      flockFeedKg,
      [...factorInputs, { label: 'Birds alive', symbol: 'N', series: 'alive' }],
      seriesOptions,
    ),
    dailySeries(
      'feed-total',
      'Feed since arrival',
      'kg',
      feedFormulas.phaseTotal,
      cumulative,
      [{ label: 'Feed in the day', series: 'feed-day' }],
      seriesOptions,
    ),
  ];
  const water = planWater(context);
  const parts = phases.map((dated): FeedPhasePart => {
    const from = dated.fromAgeDays - life.arrivalAgeDays;
    const to = dated.toAgeDays - life.arrivalAgeDays;
    const totalKg = sumOf(flockFeedKg, from, to);
    const fedTo = lastFed(flockFeedKg, from, to);
    const { phase } = dated;
    const { bagKg, bagInput } = bagOf(context, phase.id);
    const total = quantity(
      `${phase.name} in all`,
      totalKg,
      'kg',
      feedFormulas.phaseTotal,
      factorInputs,
      feedOptions,
    );
    const isLow = phase.proteinPercentLow === phase.proteinPercentHigh;
    return {
      phaseId: phase.id,
      name: phase.name,
      bagKg,
      protein: `${isLow ? phase.proteinPercentLow : `${phase.proteinPercentLow}–${phase.proteinPercentHigh}`} % protein${phase.calciumPercent ? `, ${phase.calciumPercent} % calcium` : ''}`,
      starts: datedFact(
        `${phase.name} from`,
        context.dateOf(from),
        feedFormulas.phaseStart,
        [
          input('Age', dated.fromAgeDays, 'day'),
          input('Program', life.program.name, 'text'),
          input('Energy of a kilogram', phase.energyKcalPerKg, 'kcal'),
        ],
        { rows: [life.program] },
      ),
      lastDay: context.dateOf(fedTo - 1),
      totalKg: total,
      bags: quantity(`${phase.name} bags`, bagsFor(totalKg, bagKg), 'bags', deliveryFormulas.bags, [
        fromQuantity(total, 'F', 'Feed'),
        bagInput,
      ]),
      deliveries: deliveriesOf(
        context,
        flockFeedKg,
        { from, to: fedTo, name: phase.name },
        {
          bagKg,
          bagInput,
          rows: feedOptions.rows,
        },
      ),
    };
  });
  const total = quantity(
    'Feed for the whole batch',
    sum,
    'kg',
    feedFormulas.phaseTotal,
    factorInputs,
    feedOptions,
  );
  const endBirds = life.aliveAll[life.days - 1]! + goneBefore(life).birds;
  const isLaying = batch.purpose === 'layers';
  const shortLast = lastFeedOf(context);
  const part: FeedPart = {
    phases: parts,
    total,
    perBird: quantity(
      'Feed per bird leaving',
      endBirds === 0 ? 0 : sum / endBirds,
      'kg',
      plainFormulas.perBird,
      [
        fromQuantity(total),
        input(isLaying ? 'Hens that come to lay' : 'Birds that leave', endBirds, 'count'),
      ],
    ),
    peakWater: water.part,
    mixDays: isMedicated(batch) ? 0 : context.tables.judgements.birds.feedMixDays.value,
    wasteShare: life.wasteShare,
    ...usedOf(context),
    ...(shortLast ? { shortLast } : {}),
    flockFeedKg,
  };
  return found(
    part,
    joined([
      lay,
      { series },
      water,
      { issues: usedFeedIssues(context) },
      { issues: shortFeedIssue(context, shortLast, parts.at(-1)!.bags.value) },
      { issues: storeTooSmall(context, Math.max(...parts.map(({ bagKg }) => bagKg))) },
      isLaying || batch.medicatedWithdrawalDays !== undefined ? { cautions: ['medicated'] } : {},
      isLaying && !doTheyLay(context) ? { cautions: ['calcium'] } : {},
    ]),
  );
}

/** Whether hens are past their first egg: nobody can give them layer feed too early any more. */
const doTheyLay = ({ life, batch, today }: PlanContext): boolean =>
  life.firstEggAgeDays !== undefined &&
  life.firstEggAgeDays - life.arrivalAgeDays <= daysBetween(batch.arrivalDate, today);

/** Row of the egg weights, which carry a mark of their own beside their curve's sources. */
export const eggWeightRows = ({ layCurve }: Pick<Life, 'layCurve'>): Sourced[] =>
  layCurve ? [{ sources: layCurve.sources, mark: layCurve.eggWeightMark }] : [];

/** Day after the last on which any is fed: birds split among days are gone before their age says. */
function lastFed(values: Float64Array, from: number, to: number): number {
  let end = to;
  while (from < end && values[end - 1] === 0) end--;
  return end === from ? to : end;
}

function sumOf(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += values[i]!;
  return sum;
}

/** Said where a feed is bought for a few days, and not left out. */
function shortFeedIssue(
  { say, tables }: PlanContext,
  short: ShortLastFeed | undefined,
  bags: number,
): PlanIssue[] {
  if (!short || short.isLeftOut) return [];
  const { name, before, days } = short;
  return [
    issue(
      'note',
      'feed-few-days',
      `${name} would be fed for ${say(days, 'day')} only, ${say(bags, 'bags')} of it. Staying on ${before.toLowerCase()} to the end saves a trip and does the birds no harm: it has more protein and costs a little more. Choose it under Feed.`,
      [tables.judgements.birds.fewFeedDays],
    ),
  ];
}
