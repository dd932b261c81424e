import type { Formula } from '../explain/formula.js';
import {
  datedFact,
  from,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { costMinor } from '../money/money.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { dayEnergyKWh, heatSeries, type DayHeat } from './heat-days.js';

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

export function energyOf(
  context: PlanContext,
  brooder: Brooder,
  days: readonly DayHeat[],
  { need, neededCount }: { need: NumberQuantity; neededCount: number },
): Found<HeatEnergy> {
  const { farm } = context;
  const { heat } = brooder;
  const energyKWh = days.map((day) => dayEnergyKWh(day, heat, Math.max(heat.count, neededCount)));
  const heatDays = days.findLastIndex((day) => 0 < day.need.mid) + 1;
  const perDay = (total: number): number => (heatDays === 0 ? 0 : total / heatDays);
  const daysWithHeat = input('Days with heat', heatDays, 'day');
  const energyTotal = quantity(
    'Energy in all',
    energyKWh.reduce((a, b) => a + b, 0),
    'kWh',
    heatFormulas.energyTotal,
    [
      daysWithHeat,
      input('Thermostat', heat.thermostat ? 'yes' : 'no: what is on burns day and night', 'text'),
    ],
    { mark: need.mark },
  );
  const gas = heat.kind === 'gas' ? gasOf(context, energyTotal) : undefined;
  const price = gas ? farm.gasPricePerL : farm.electricityPricePerKWh;
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
      [
        from(used, gas ? 'V' : 'E'),
        input(gas ? 'Price of a liter' : 'Price of a kWh', `${price} ${farm.currency}`, 'text'),
      ],
    ),
  };
  return found(part, { series: heatSeries(context, brooder, days, energyKWh) });
}

function gasOf({ tables }: PlanContext, energy: NumberQuantity): NumberQuantity {
  const { MJPerL, low, high } = tables.heat.propane;
  const liters = (perL: number): number => (energy.value * MJ_PER_KWH) / perL;
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
        low: liters(high),
        high: liters(low),
        because: 'three conventions for the heat in propane differ by 9 %',
      },
    },
  );
}

const MJ_PER_KWH = 3.6;
