import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  from,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type Spread,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { costMinor } from '../money/money.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import type { BroodingHeat, DayHeat } from './heat-days.js';
import { fewestByRule } from './heat-heaters.js';
import type { HeatRules } from './heat-rules.js';
import { heatPriceInput, heatPriceOf } from './heat-price.js';
import { heatSeries } from './heat-series.js';
import { usualDayKWh, type HeatWeek } from './heat-weeks.js';

export const heatFormulas = {
  heatOff: {
    id: 'heat-off-date',
    title: 'Last day with heat',
    words:
      'Last day on which a cold night asks for heat: until the move, the end of the schedule, or the day the air around the brooder is warm enough by itself.',
    symbols: 'max{t: Q(t) > 0}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  energyTotal: {
    id: 'heat-energy-total',
    title: 'Energy for the whole brooding time',
    words: 'Energy of every day with heat, summed.',
    symbols: 'E = Σ E_day',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  meanOfDays: {
    id: 'mean-of-heat-days',
    title: 'Average of the days with heat',
    words: 'The sum divided by the days on which there is heat.',
    symbols: 'Ā = A ÷ D',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  gas: {
    id: 'gas-liters',
    title: 'Propane for the whole brooding time',
    words:
      'Energy divided by what a liter of liquid propane holds; all of its heat stays in an unvented house.',
    symbols: 'V = E·3.6 ÷ H',
    sources: ['UCONN_FUELS'],
    mark: 'published',
  },
  cost: {
    id: 'energy-cost',
    title: 'Cost of the heat',
    words: 'Energy times its price on this farm, rounded once to the smallest coin.',
    symbols: 'C = E·price',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Energy from arrival until the heat is off, and what it costs. */
export interface HeatEnergy {
  readonly lastHeatDay: Quantity;
  readonly energyTotal: NumberQuantity;
  readonly energyPerDay: NumberQuantity;
  readonly gasLiters?: NumberQuantity;
  readonly gasPerDay?: NumberQuantity;
  readonly cost: NumberQuantity;
}

/** The days of a brooder with their heat, and how it is set week by week. */
export interface HeatCourse {
  readonly heat: BroodingHeat;
  readonly days: readonly DayHeat[];
  readonly weeks: readonly HeatWeek[];
}

export function energyOf(
  context: PlanContext,
  brooder: Brooder,
  { heat: model, days, weeks }: HeatCourse,
  { need, rules }: { need: NumberQuantity; rules: HeatRules },
): Found<HeatEnergy> {
  const { farm } = context;
  const { heat } = brooder;
  const energyKWh = energyByDay(model, days, weeks);
  const heatDays = lastHeatDayOf(days) + 1;
  const perDay = (total: number): number => (heatDays === 0 ? 0 : total / heatDays);
  const daysWithHeat = input('Days with heat', heatDays, 'day');
  const energyTotal = quantity(
    'Energy in all',
    sum(energyKWh),
    'kWh',
    heatFormulas.energyTotal,
    [
      daysWithHeat,
      input('Heaters there are', heat.count, 'count'),
      input('Thermostat', heat.thermostat ? 'yes' : 'no', 'text'),
    ],
    {
      mark: need.mark,
      spread: energySpread({ heat: model, days, weeks }, sum(energyKWh), fewestByRule(rules)),
    },
  );
  const gas = heat.kind === 'gas' ? gasOf(context, energyTotal) : undefined;
  const price = heatPriceOf(farm, heat.kind);
  const used = gas ?? energyTotal;
  const part: HeatEnergy = {
    lastHeatDay: datedFact(
      'Heat until',
      context.dateOf(Math.max(0, heatDays - 1)),
      heatFormulas.heatOff,
      [input('Last day of the schedule or of the brooder', days.length - 1, 'day')],
      { mark: need.mark },
    ),
    energyTotal,
    energyPerDay: quantity(
      'Energy a day, average',
      perDay(energyTotal.value),
      'kWh',
      heatFormulas.meanOfDays,
      [from(energyTotal, 'A'), daysWithHeat],
    ),
    ...(gas
      ? {
          gasLiters: gas,
          gasPerDay: quantity(
            'Propane a day, average',
            perDay(gas.value),
            'L',
            heatFormulas.meanOfDays,
            [from(gas, 'A'), daysWithHeat],
          ),
        }
      : {}),
    cost: quantity(
      'Cost of the heat',
      costMinor(price, used.value, farm.currency),
      'money',
      heatFormulas.cost,
      [from(used, gas ? 'V' : 'E'), heatPriceInput(farm, heat.kind)],
      {
        spread: used.spread && {
          ...used.spread,
          low: costMinor(price, used.spread.low, farm.currency),
          high: costMinor(price, used.spread.high, farm.currency),
        },
      },
    ),
  };
  return found(part, { series: heatSeries(context, brooder, model, days, energyKWh) });
}

/** Last day on which a cold night asks for heat, -1 when none does. */
export const lastHeatDayOf = (days: readonly DayHeat[]): number =>
  days.findLastIndex((day) => 0 < day.need.mid);

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** Energy of every day, with the lamps at the height of its week. */
export function energyByDay(
  heat: BroodingHeat,
  days: readonly DayHeat[],
  weeks: readonly HeatWeek[],
): number[] {
  return days.map((day, i) => {
    const week = weeks.find(({ last }) => i <= last);
    return week ? usualDayKWh(heat, day, week) : 0;
  });
}

/** From just the heat that is lost, to heaters that burn day and night as the rule has it. */
function energySpread(
  { heat: { rig }, days, weeks }: HeatCourse,
  usualKWh: number,
  byRule: number | undefined,
): Spread {
  const { wattsEach, thermostat } = rig.heat;
  const kWh = (watts: number, days = 1): number => (24 * days * watts) / 1000;
  const lost = sum(days.map((day) => kWh(Math.min(day.asked.working * wattsEach, day.meanNeedW))));
  const heatDays = lastHeatDayOf(days) + 1;
  const ruled = kWh((byRule ?? 0) * wattsEach, heatDays);
  const left = sum(weeks.map(({ first, last, night }) => kWh(night.watts, last - first + 1)));
  return {
    low: Math.min(usualKWh, lost, ...(byRule === undefined ? [] : [ruled])),
    high: Math.max(usualKWh, lost, ruled, left),
    because: thermostat
      ? 'from just the heat that is lost to what the coldest nights ask for, or the heaters of the rule of thumb day and night'
      : 'from just the heat that is lost to the night’s heaters, or those of the rule of thumb, left on day and night',
  };
}

function gasOf({ tables }: PlanContext, energy: NumberQuantity): NumberQuantity {
  const { MJPerL, low, high } = tables.heat.propane;
  const liters = (perL: number, kWh = energy.value): number => (kWh * MJ_PER_KWH) / perL;
  return quantity(
    'Propane in all',
    liters(MJPerL),
    'L',
    heatFormulas.gas,
    [
      from(energy, 'E', 'Energy'),
      fromTable(tables.heat.propane, 'Heat in a liter', MJPerL, 'MJPerL', 'H'),
    ],
    {
      spread: {
        low: liters(high, energy.spread!.low),
        high: liters(low, energy.spread!.high),
        because: `${energy.spread!.because}; and three conventions for the heat in propane differ by 9 %`,
      },
    },
  );
}

const MJ_PER_KWH = 3.6;
