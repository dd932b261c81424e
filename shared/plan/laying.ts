import { addDays, type PlainDate } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  fromFarm,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { EggCount } from '../farm/egg-count.js';
import { eggWeightG, layFormulas } from '../poultry/lay.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { eggWeightRows, type FeedPart } from './feed.js';
import { found, joined, type Found } from './found.js';
import type { LayDays } from './lay-days.js';
import { lightSteps, type LightStep } from './lay-lamp.js';
import { eggsOver, layMonths, rowsOn, type LayMonths } from './lay-months.js';
import { curveInputs, laySeries } from './lay-series.js';
import { endOfFirstYear, lastLayYear, LAY_YEAR_DAYS } from './laying-years.js';
import { layYears, perDozenKg, type LayYears } from './lay-years.js';
import { hensFeedInputs } from './used-feed.js';
import { raisingPullets, type RaisingPart } from './raising-pullets.js';

export const layingFormulas = {
  firstEgg: {
    id: 'first-egg-date',
    title: 'First eggs',
    words:
      'Hatch date plus the age at which about one hen in twenty of the strain lays. Short days can delay it by weeks.',
    symbols: 'D = hatch + 7·d',
    sources: ['COMPARTMENTAL_LAY'],
    mark: 'computed',
  },
  own: {
    id: 'own-lay',
    title: 'Your hens against the table',
    words:
      'What you typed for a year over what the table gives; then what you counted over what was expected on those days, drawn toward it the more the more days you counted.',
    symbols: 'f_own = f_typed·(1 + n ÷ (n + n₀)·(E_counted ÷ E_expected − 1))',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface LayWeek {
  readonly from: PlainDate;
  readonly ageWeeks: number;
  readonly eggs: NumberQuantity;
  readonly feed: NumberQuantity;
}

export interface LayingPart extends LayMonths, LayYears, RaisingPart {
  readonly firstEgg: Quantity;
  readonly ageAtFirstEgg: NumberQuantity;
  readonly howTheyLay: string;
  readonly peak: NumberQuantity;
  /** Hours of light the lamp of the coop makes up; left out when it has none. */
  readonly lampH?: number;
  /** What a lamp would be set to, or is. */
  readonly litToH: number;
  /** Left out when the household told nothing of its own lay. */
  readonly own?: NumberQuantity;
  /** Eggs that were counted, the oldest first; left out when none were. */
  readonly counts?: readonly EggCount[];
  readonly weeks: readonly LayWeek[];
  readonly eggsInYear: NumberQuantity;
  /** To the end of the laying year they are in; left out in the first. */
  readonly eggsInAll?: NumberQuantity;
  readonly eggsPerHen: NumberQuantity;
  readonly feedPerDozen: NumberQuantity;
  readonly light: readonly LightStep[];
}

/** Eggs by day, week, month and year, the lamp, and what raising the hens takes. */
export function planLaying(context: PlanContext, feed: FeedPart): Found<LayingPart | undefined> {
  const { lay, eggCounts = [] } = context;
  if (!lay) return found(undefined);
  const months = layMonths(context, lay);
  const raising = raisingPullets(context, lay, feed);
  const own = ownLay(context, lay);
  const part: LayingPart = {
    ...firstEggs(context, lay),
    howTheyLay: lay.curve.name,
    ...(lay.isLit ? { lampH: lay.lampH } : {}),
    litToH: lay.lampH,
    ...(own ? { own } : {}),
    ...(0 < eggCounts.length ? { counts: eggCounts } : {}),
    weeks: weeksOf(context, lay, feed),
    ...firstYear(context, lay, feed),
    ...months.part,
    ...layYears(context, lay),
    ...raising.part,
    light: lightSteps(context),
  };
  return found(
    part,
    joined([{ series: laySeries(context, lay) }, months, raising, { issues: uncounted(context) }]),
  );
}

function firstEggs(
  { life, batch, dateOf, tables }: PlanContext,
  { curve, firstDay }: LayDays,
): Pick<LayingPart, 'firstEgg' | 'ageAtFirstEgg'> {
  const age = firstDay + life.arrivalAgeDays;
  const { firstEggMovedDays, firstEggSettledDays: settled } = life;
  const byCounts = firstEggMovedDays - settled;
  const moved = [
    ...(settled === 0 ? [] : [fromJudgement(tables.judgements.birds.settleDays, 'n')]),
    ...(byCounts === 0 ? [] : [fromFarm('Moved by the eggs you counted', byCounts, 'day')]),
  ];
  return {
    firstEgg: datedFact(
      'First eggs',
      dateOf(firstDay),
      layingFormulas.firstEgg,
      [
        input('Hatch', addDays(batch.arrivalDate, -life.arrivalAgeDays), 'date'),
        input('Age', age, 'day'),
        ...moved,
      ],
      { rows: [curve] },
    ),
    ageAtFirstEgg: quantity(
      'Age at first egg',
      age,
      'day',
      layingFormulas.firstEgg,
      [input('First eggs of the strain, weeks', curve.firstEggWeek, 'ratio', 'd'), ...moved],
      {
        rows: [curve],
        ...(0 < moved.length
          ? {}
          : {
              spread: {
                low: 7 * curve.firstEggWeekLow,
                high: 7 * curve.firstEggWeekHigh,
                because: `published ages run from ${curve.firstEggWeekLow} to ${curve.firstEggWeekHigh} weeks`,
              },
            }),
      },
    ),
  };
}

function firstYear(
  context: PlanContext,
  lay: LayDays,
  feed: FeedPart,
): Pick<LayingPart, 'peak' | 'eggsInYear' | 'eggsInAll' | 'eggsPerHen' | 'feedPerDozen'> {
  const { life } = context;
  const { firstDay, planned, curve } = lay;
  const end = endOfFirstYear(life);
  const rows = rowsOn(lay, { from: firstDay, to: end });
  const flock = { rows: [...rows, life.losses] };
  const eggs = eggsOver(planned, lay, { from: firstDay, to: end });
  const hens = lay.hens[firstDay]!;
  const fedKg = sum(feed.flockFeedKg, firstDay, end);
  const { low = 1, high = 1, value, because = 'flocks differ' } = curve.flock;
  // A flock that is all gone before its first egg has no hen to share by.
  const eachEggs = hens === 0 ? 0 : eggs / hens;
  return {
    peak: quantity(
      'Peak lay',
      Math.max(...planned.subarray(0, life.days)),
      'share',
      layFormulas.henDay,
      curveInputs(lay),
      { rows },
    ),
    eggsInYear: quantity(
      'Eggs in the first laying year',
      eggs,
      'eggs',
      layFormulas.eggs,
      [input('Hens at the first egg', hens, 'count'), input('Days of lay', end - firstDay, 'day')],
      flock,
    ),
    ...(end === life.days ? {} : { eggsInAll: eggsInAll(context, lay) }),
    eggsPerHen: quantity(
      'Eggs per hen housed',
      eachEggs,
      'eggs',
      layFormulas.eggs,
      [input('Eggs in the year', eggs, 'eggs'), input('Hens at the first egg', hens, 'count')],
      {
        ...flock,
        spread: {
          low: (eachEggs / value) * low,
          high: (eachEggs / value) * high,
          because,
        },
      },
    ),
    feedPerDozen: quantity(
      'Feed per dozen eggs',
      perDozenKg(fedKg, eggs),
      'kg',
      layFormulas.feedPerDozen,
      [
        input('Feed of the laying year', fedKg, 'kg', 'F'),
        ...hensFeedInputs(life),
        input('Eggs', eggs, 'eggs', 'E'),
      ],
      {
        rows: [...life.feedRows, ...flock.rows, ...eggWeightRows(life), layFormulas.layerEnergy],
      },
    ),
  };
}

/** What the hens lay by the end of their plan, which their bill goes to as well. */
export const eggsPlanned = ({ eggsInAll, eggsInYear }: LayingPart): NumberQuantity =>
  eggsInAll ?? eggsInYear;

function eggsInAll({ life }: PlanContext, lay: LayDays): NumberQuantity {
  const span = { from: lay.firstDay, to: life.days };
  return quantity(
    `Eggs to the end of ${lastLayYear(life)}`,
    eggsOver(lay.planned, lay, span),
    'eggs',
    layFormulas.eggs,
    [
      input('Hens at the first egg', lay.hens[lay.firstDay]!, 'count'),
      input('Days of lay', span.to - span.from, 'day'),
    ],
    { rows: [...rowsOn(lay, span), life.losses] },
  );
}

/** The weeks of the laying year that they are in. */
function weeksOf(context: PlanContext, lay: LayDays, feed: FeedPart): LayWeek[] {
  const { life, dateOf } = context;
  const { planned, hens, curve, firstDay } = lay;
  const weeks: LayWeek[] = [];
  const from = firstDay + (life.layYears - 1) * LAY_YEAR_DAYS;
  for (let i = from; i + 7 <= life.days; i += 7) {
    const rows = [...rowsOn(lay, { from: i, to: i + 7 }), life.losses];
    const eggG = eggWeightG(curve, (life.arrivalAgeDays + i + 3) / 7);
    let eggs = 0;
    for (let day = i; day < i + 7; day++) eggs += planned[day]! * hens[day]!;
    const share = planned[i + 3]!;
    weeks.push({
      from: dateOf(i),
      ageWeeks: Math.floor((life.arrivalAgeDays + i) / 7),
      eggs: quantity(
        'Eggs in the week',
        eggs,
        'eggs',
        layFormulas.eggs,
        [
          input('Hens', hens[i]!, 'count', 'N'),
          input('Eggs per hen and day, mid-week', share, 'share', 'y'),
          input('Egg weight', eggG, 'g'),
        ],
        { rows },
      ),
      feed: quantity(
        'Feed in the week',
        sum(feed.flockFeedKg, i, i + 7),
        'kg',
        layFormulas.layerEnergy,
        [
          input('Hens', hens[i]!, 'count', 'N'),
          input('Weight of a hen', life.weightKg.female[i]!, 'kg', 'W'),
          input('Egg mass a day, mid-week', share * eggG, 'g', 'EE'),
          input('Energy of the feed', life.program.phases.at(-1)!.energyKcalPerKg, 'ratio'),
          input('Waste', life.wasteShare, 'share'),
          ...hensFeedInputs(life),
        ],
        { rows: [...life.feedRows, ...rows, ...eggWeightRows(life), life.program] },
      ),
    });
  }
  return weeks;
}

/** What the household told of its own lay, as a factor on the table's. */
function ownLay({ batch, tables }: PlanContext, lay: LayDays): NumberQuantity | undefined {
  const { ownEggsPerHen } = batch;
  const { own } = lay;
  if (ownEggsPerHen === undefined && own.countedDays === 0) return undefined;
  const prior = tables.laying.ownCounts;
  const isCounted = 0 < own.countedDays;
  return quantity(
    'Your hens against the table',
    own.factor,
    'ratio',
    layingFormulas.own,
    [
      ...(ownEggsPerHen === undefined
        ? []
        : [fromFarm('Eggs a hen in her first year', ownEggsPerHen, 'eggs')]),
      input('By that', own.typedFactor, 'ratio', 'f_typed'),
      ...(isCounted
        ? [
            fromFarm('Days counted', own.countedDays, 'day', 'n'),
            input('Counted over expected', own.countedRatio, 'ratio'),
          ]
        : []),
      input('Days that weigh as much as the table', prior.days, 'day', 'n₀'),
    ],
    isCounted && own.countedDays < prior.days ? { rows: [prior, ...lay.rows] } : {},
  );
}

/** Counts that lie outside the laying years correct nothing, and that is said. */
function uncounted({ eggCounts = [], lay }: PlanContext): PlanIssue[] {
  const counted = eggCounts.reduce((days, count) => days + count.days, 0);
  return counted === lay!.own.countedDays
    ? []
    : [
        issue(
          'note',
          'eggs-not-expected',
          'Some counts of eggs lie before the first egg or after the last laying year; they correct nothing. Check their dates.',
        ),
      ];
}

function sum(values: ArrayLike<number>, from: number, to: number): number {
  let total = 0;
  for (let i = from; i < to; i++) total += values[i]!;
  return total;
}
