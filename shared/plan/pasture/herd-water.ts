import {
  from,
  fromFarm,
  fromJudgement,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import type { Sourced } from '../../explain/formula.js';
import { beyondCharts, cattleWaterFormulas, tankL } from '../../pasture/cattle-water.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { rowById } from '../../tables/tables.js';
import { hotDayFormulas } from '../../weather/hot-day.js';
import { found, type Found } from '../found.js';
import type { PastureContext } from './pasture-context.js';
import { waterRows } from './pasture-support.js';

/** Water of one herd on the hot day it is to be provided for, and what has to hold and bring it. */
export interface HerdWater {
  /** High of that day. */
  readonly hotDay: NumberQuantity;
  readonly water: NumberQuantity;
  readonly tank: NumberQuantity;
  readonly troughEdge: NumberQuantity;
  /** Hours in which the supply brings the water of that day, where it is known. */
  readonly refill?: NumberQuantity;
  /** How long the tank lasts without it. */
  readonly lasts: NumberQuantity;
}

const HOURS = 24;

/**
 * What a herd drinks on the day of one year in ten on which it drinks most, while it is on the farm;
 * the tank and trough for that, and how the tank and supply that are there do.
 */
export function herdWater(context: PastureContext, h: number): Found<HerdWater> {
  const { tables, span, choices } = context;
  const { cattleWater } = tables;
  const herd = context.herds[h]!;
  const days = context.herdDays[h]!;
  let at = span.from;
  for (let i = span.from; i < span.to; i++) if (days.hotWaterL[at]! < days.hotWaterL[i]!) at = i;
  const head = days.head[at]!;
  const hotDay = hotDayOf(context, at);
  const water = waterOf(context, h, at, hotDay);
  const supply =
    herd.supplyLPerH === undefined ? undefined : fromFarm('Supply', herd.supplyLPerH, 'LPerH', 'q');
  const refill =
    supply &&
    quantity(
      'A hot day’s water takes',
      water.value / herd.supplyLPerH!,
      'h',
      cattleWaterFormulas.refill,
      [from(water, 'V'), supply],
    );
  const refillH = refill?.value ?? choices.refillH ?? cattleWater.refill.hours;
  const tank = quantity(
    'Smallest tank',
    tankL(cattleWater, { head, litersPerDay: water.value, refillH }),
    'L',
    cattleWaterFormulas.tank,
    [
      from(water, 'V'),
      refill
        ? from(refill, 't')
        : givenOrTable(
            choices.refillH !== undefined,
            cattleWater.refill,
            ...(['Refill for a day’s water', refillH, 'h'] as const),
          ),
    ],
    { rows: [cattleWater.tank] },
  );
  const isThere = herd.tankL !== undefined;
  const lasts = quantity(
    isThere ? 'Without supply your tank lasts' : 'Without supply the smallest tank lasts',
    water.value === 0 ? 0 : (HOURS * (herd.tankL ?? tank.value)) / water.value,
    'h',
    cattleWaterFormulas.lasts,
    [
      isThere ? fromFarm('Tank that is there', herd.tankL!, 'L', 'V_tank') : from(tank, 'V_tank'),
      from(water, 'V'),
    ],
  );
  const per15 = cattleWater.troughEdgeM;
  const troughEdge = quantity(
    'Trough length',
    (head / per15.per) * per15.m,
    'm',
    cattleWaterFormulas.edge,
    [
      input('Head', head, 'count'),
      fromTable(per15, 'Head that share it', per15.per, 'count'),
      fromTable(per15, 'For that many', per15.m, 'm'),
    ],
  );
  const part = { hotDay, water, tank, troughEdge, ...(refill ? { refill } : {}), lasts };
  return found(part, { issues: issuesOf(context, h, part) });
}

function hotDayOf(
  { tables, weather, climate, dateOf }: PastureContext,
  at: number,
): NumberQuantity {
  const { hotDayDeviations, highsSpreadK } = tables.judgements.grass;
  return quantity('High of that hot day', weather.hotC[at]!, 'degC', hotDayFormulas.hotDay, [
    input('On', dateOf(at), 'date'),
    input('Mean high', climate.meanMaxC[weather.dayOfYear[at]! - 1]!, 'degC', 'T_max'),
    fromJudgement(hotDayDeviations, 'z'),
    ...(climate.way === 'monthly-means'
      ? [fromJudgement(highsSpreadK, 's')]
      : [
          input(
            'Highs that one day in ten passes',
            climate.hotMaxC[weather.dayOfYear[at]! - 1]!,
            'degC',
          ),
        ]),
  ]);
}

function waterOf(
  { tables, span, herds, herdDays, dateOf }: PastureContext,
  h: number,
  at: number,
  hotDay: NumberQuantity,
): NumberQuantity {
  const { cattleWater, cattle } = tables;
  const days = herdDays[h]!;
  const herd = herds[h]!;
  const growing = herd.groups.map(({ classId }, g) =>
    rowById(cattle.classes, classId).water === 'growing' ? days.groups[g]!.weightKg[at]! : 0,
  );
  const most = days.mostHotWaterL[at]!;
  const isMilk = days.hotWaterL[at]! < most;
  const rows: Sourced[] = [
    ...waterRows(tables, herd),
    cattleWater.hot,
    ...(isMilk ? [cattleWater.milkCowInHeat] : []),
  ];
  return quantity(
    'Water on the hottest day of one year in ten',
    days.hotWaterL[at]!,
    'L',
    cattleWaterFormulas.hotDay,
    [
      input('Head', days.head[at]!, 'count'),
      from(hotDay, 'T_max'),
      input('On', dateOf(at), 'date'),
      input('On the hottest usual day of the plan', usualMost(days.waterL, span), 'L'),
    ],
    {
      rows,
      spread: {
        low: days.leastHotWaterL[at]!,
        high: most,
        because: isMilk
          ? cattleWater.milkCowInHeat.because
          : 'the lower chart, its temperature read as the mean of the day',
      },
      outside: beyondCharts(cattleWater, {
        maxC: hotDay.value,
        growingKg: Math.max(...growing),
      }),
    },
  );
}

function usualMost(waterL: Float64Array, { from: first, to }: PastureContext['span']): number {
  let most = 0;
  for (let i = first; i < to; i++) most = Math.max(most, waterL[i]!);
  return most;
}

/** A supply that does not bring the day's water, and a tank that is too small for the supply. */
function issuesOf(
  { herds, say, tables }: PastureContext,
  h: number,
  { water, tank, refill }: HerdWater,
): PlanIssue[] {
  const { name, tankL: ownL, supplyLPerH } = herds[h]!;
  const rows = [tables.cattleWater.tank];
  if (refill && HOURS < refill.value) {
    const short = water.value - HOURS * supplyLPerH!;
    return [
      issue(
        'act',
        'water-supply-short',
        `${name}: ${say(water.value, 'L')} on the hottest day of one year in ten, of which the supply brings ${say(HOURS * supplyLPerH!, 'L')}. ${say(short, 'L')} are to be carried, or to stand ready in a tank of ${say(tank.value, 'L')}.`,
        rows,
      ),
    ];
  }
  if (ownL === undefined || tank.value <= ownL) return [];
  return [
    issue(
      'act',
      'water-tank-small',
      `${name}: the tank holds ${say(ownL, 'L')}, and with that supply it takes ${say(tank.value, 'L')} on the hottest day of one year in ten. Set a second one, or bring the water faster.`,
      rows,
    ),
  ];
}
