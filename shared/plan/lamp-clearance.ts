import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  fromRow,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { LitterTable } from '../tables/bird-tables.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import type { HeatWeek } from './heat-weeks.js';

export const clearanceFormulas = {
  litter: {
    id: 'litter-depth',
    title: 'Depth of the bedding',
    words:
      'As it is laid, and a quarter more with every weekly top-up. Droppings and caking are not counted: measure.',
    symbols: 'd = d₀·(1 + 0.25·⌊t ÷ 7⌋)',
    sources: ['LITTER_EXT'],
    mark: 'estimate',
  },
  least: {
    id: 'lamp-clearance',
    title: 'Least distance from a lamp to the bedding',
    words:
      '46 cm (18 in), or what the lamp’s maker asks for when that is more; 0.9 m (3 ft) to anything else that burns.',
    symbols: 'h_least = max(46 cm, h_maker)',
    sources: ['LAMP_CLEARANCE'],
    mark: 'published',
  },
  tooClose: {
    id: 'lamp-too-close',
    title: 'Day on which a lamp comes too close',
    words:
      'First day on which a top-up has raised the bedding so far that a lamp left where it was hung for that week is nearer to it than the least distance. Raise the lamps by as much as you add, every time.',
    symbols: 'min{t: h₀ − (d(t) − d₀) < h_least}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Bedding under the lamps, and how near they come to it. */
export interface LampClearance {
  readonly least: NumberQuantity;
  /** Left out when they never do: they hang high enough from the start. */
  readonly tooCloseOn?: Quantity;
}

/** Depth of the bedding some days after arrival, m, with the weekly top-ups. */
export const litterDepthM = (litter: LitterTable, day: number): number =>
  litter.depthM * (1 + litter.topUpShare * Math.floor(day / litter.topUpEveryDays));

/** First day on which bedding added since the lamps were set for the week brings them too close. */
function firstTooClose(
  weeks: readonly HeatWeek[],
  depthCm: readonly number[],
  clearanceM: number,
): { day: number; hungM: number; roseM: number } | undefined {
  for (const { first, last, night } of weeks) {
    if (night.on === 0) continue;
    const hungM = night.heightM;
    for (let day = first; day <= last; day++) {
      const roseM = (depthCm[day]! - depthCm[first]!) / 100;
      if (hungM - roseM < clearanceM - 1e-9) return { day, hungM, roseM };
    }
  }
  return undefined;
}

export function lampClearance(
  context: PlanContext,
  brooder: Brooder,
  weeks: readonly HeatWeek[],
  clearanceM: number,
): Found<LampClearance | undefined> {
  if (brooder.heat.kind !== 'lamp' || weeks.length === 0) return found(undefined);
  const { tables, dateOf, say } = context;
  const { litter } = tables;
  const lastDay = weeks.at(-1)!.last;
  const topUps = { ...litter, mark: litter.topUpMark };
  const depthCm = Array.from({ length: lastDay + 1 }, (_, i) => 100 * litterDepthM(litter, i));
  const close = firstTooClose(weeks, depthCm, clearanceM);
  const { lampClearanceCm } = brooder;
  const row = tables.heat.clearance;
  const least = quantity(
    'Lamp to bedding, at least',
    clearanceM * 100,
    'cm',
    clearanceFormulas.least,
    lampClearanceCm === undefined
      ? [fromTable(row, 'Fire officials', row.valueM * 100, 'cm')]
      : [
          fromTable(row, 'Fire officials', row.valueM * 100, 'cm'),
          fromRow(brooder, 'lampClearanceCm', 'The lamp’s maker', lampClearanceCm, 'cm', 'h_maker'),
        ],
  );
  const part: LampClearance = {
    least,
    ...(close === undefined
      ? {}
      : {
          tooCloseOn: datedFact(
            'Lamps too close, unless raised, from',
            dateOf(close.day),
            clearanceFormulas.tooClose,
            [
              input('Hung at', close.hungM * 100, 'cm', 'h₀'),
              fromTable(litter, 'Bedding as laid', depthCm[0]!, 'cm', 'd₀'),
              fromTable(topUps, 'Bedding added since', close.roseM * 100, 'cm'),
              input('At least', clearanceM * 100, 'cm', 'h_least'),
            ],
            { rows: [row] },
          ),
        }),
  };
  const room = brooder.heightM - litterDepthM(litter, 0);
  const overLampsM = room - clearanceM;
  const issues: PlanIssue[] =
    brooder.roof && 0 <= overLampsM && overLampsM < row.toBurnableM
      ? [
          issue(
            'act',
            'lamp-under-lid',
            `The lid of ${brooder.name} is ${say(overLampsM * 100, 'cm')} above its lamps, and fire officials ask for ${say(row.toBurnableM, 'm')} to anything that burns. Cut it away over the lamps with metal around, cover only the end that has none, or use a heat plate.`,
            [row],
          ),
        ]
      : brooder.roof && room < clearanceM
        ? [
            issue(
              'act',
              'lamp-no-headroom',
              `${brooder.name} is ${say(brooder.heightM, 'm')} high: over the bedding there is no room for a lamp at ${say(clearanceM * 100, 'cm')}. Hang the lamps from above through an opening in the lid, with wire or metal around it, never nearer to the bedding.`,
              [row, litter],
            ),
          ]
        : [];
  const series: DailySeries = dailySeries(
    'litter-depth',
    'Depth of the bedding',
    'cm',
    clearanceFormulas.litter,
    depthCm,
    [
      fromTable(litter, 'Laid', litter.depthM * 100, 'cm', 'd₀'),
      fromTable(topUps, 'Each top-up', litter.topUpShare, 'share'),
      fromTable(topUps, 'Days between', litter.topUpEveryDays, 'day'),
    ],
  );
  return found(part, { issues, series: [series] });
}
