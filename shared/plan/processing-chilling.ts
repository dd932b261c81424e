import type { PlainDate } from '../calendar/plain-date.js';
import { from, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { iceFormulas, icePerCarcass } from '../poultry/ice.js';
import { chillingLimitH, chillingTimeH, processingFormulas } from '../poultry/processing.js';
import type { PlanContext } from './context.js';
import type { DressedWeights } from './leaving-weights.js';
import type { ProcessingDays } from './processing-days.js';

/** Ice for all days, in kilograms and in bags, and how long a carcass lies in it. */
export interface Chilling {
  readonly ice: NumberQuantity;
  readonly iceBags: NumberQuantity;
  /**
   * What of it each day takes, in whole bags. Of two days in a row both are fetched at once, and those of
   * the second lie in the freezer until then: common practice, no source. None to buy where others
   * process, who chill with their own.
   */
  readonly iceDays: readonly {
    readonly on: PlainDate;
    readonly kg: number;
    readonly bags: number;
  }[];
  /** Until a carcass is cold, in ice and water. */
  readonly chillTime: NumberQuantity;
  /** Until when the law wants it cold: a limit. */
  readonly chillLimit: NumberQuantity;
}

export function planChilling(
  context: PlanContext,
  weights: DressedWeights,
  days: ProcessingDays,
): Chilling {
  const { iceBag } = context.tables.processing;
  const water = tapWater(context);
  const iceDays = iceOfDays(context, weights, days, water.value).map(({ on, kg }) => ({
    on,
    kg,
    bags: Math.ceil(kg / iceBag.kg - 1e-9),
  }));
  const sum = (of: (day: (typeof iceDays)[number]) => number): number =>
    iceDays.reduce((all, day) => all + of(day), 0);
  const ice = iceOf(context, weights, days, { kg: sum(({ kg }) => kg), water });
  return {
    ice,
    iceDays: context.batch.processing === 'hired' ? [] : iceDays,
    iceBags: quantity(
      'Bags of ice',
      sum(({ bags }) => bags),
      'bags',
      iceFormulas.bags,
      [from(ice, 'I'), fromTable(iceBag, 'One bag', iceBag.kg, 'kg', 'b')],
    ),
    chillTime: chillTimeOf(context, weights.dressedEach),
    chillLimit: chillLimitOf(context, weights.dressedEach),
  };
}

/** Water of tap or well, by the average air of the year. */
function tapWater({ climate }: PlanContext): NumberQuantity {
  const { meanMinC, meanMaxC } = climate;
  const sum = meanMinC.reduce((all, low, day) => all + (low + meanMaxC[day]!) / 2, 0);
  const meanC = sum / meanMinC.length;
  return quantity('Water from tap or well', Math.max(0, meanC), 'degC', iceFormulas.tapWater, [
    input('Average air of the year', meanC, 'degC'),
  ]);
}

/** Ice of each day, by its birds and its air. */
const iceOfDays = (
  { tables, weather }: PlanContext,
  { dressedEach }: DressedWeights,
  { leaving }: ProcessingDays,
  waterC: number,
): { on: PlainDate; kg: number }[] =>
  leaving.map(({ date, birds, index }) => {
    const perKg = icePerCarcass(tables.processing, { airC: weather.maxC[index]!, waterC });
    return { on: date, kg: birds * dressedEach.value * perKg };
  });

function iceOf(
  { tables, weather }: PlanContext,
  { dressedAll }: DressedWeights,
  { leaving }: ProcessingDays,
  { kg, water }: { readonly kg: number; readonly water: NumberQuantity },
): NumberQuantity {
  const { ice, iceBalance } = tables.processing;
  const hottest = Math.max(...leaving.map(({ index }) => weather.maxC[index]!));
  return quantity(
    'Ice',
    kg,
    'kg',
    iceFormulas.ice,
    [
      from(dressedAll, 'N·W_d', 'Dressed, all birds'),
      fromTable(iceBalance, 'Carcass before the ice', iceBalance.carcassC, 'degC', 'T_b'),
      fromTable(iceBalance, 'Heat of a carcass', iceBalance.carcassKJPerKgK, 'ratio', 'c'),
      fromTable(iceBalance, 'Water over a carcass', iceBalance.waterPerCarcass, 'ratio', 'w'),
      from(water, 'T_w'),
      input('Expected high', hottest, 'degC', 'T_a'),
      fromTable(iceBalance, 'Hours in the ice', iceBalance.hours, 'h', 'h'),
      fromTable(iceBalance, 'Heat that melts ice, kJ/kg', iceBalance.meltKJPerKg, 'ratio', 'L'),
    ],
    {
      spread: {
        low: Math.min(kg, dressedAll.value * ice.low),
        high: Math.max(kg, dressedAll.value * ice.high),
        because: ice.because ?? 'common practice',
      },
      rows: [ice],
    },
  );
}

function chillTimeOf({ tables }: PlanContext, dressedEach: NumberQuantity): NumberQuantity {
  const { iceWater, targetC } = tables.processing.chilling;
  const { usual, low, high } = chillingTimeH(iceWater, dressedEach.value);
  const isMeasured = iceWater.fromKg <= dressedEach.value && dressedEach.value <= iceWater.toKg;
  return quantity(
    'Time in ice water until cold',
    usual,
    'h',
    processingFormulas.chillTime,
    [
      from(dressedEach, 'W_d', 'Carcass'),
      fromTable(iceWater, 'Measured at', (iceWater.fromKg + iceWater.toKg) / 2, 'kg', 'W₀'),
      fromTable(iceWater, 'Measured time', iceWater.minutes / 60, 'h', 't₀'),
      fromTable(tables.processing.chilling, 'Chilled to', targetC, 'degC'),
    ],
    {
      spread: { low, high, because: 'carcasses differed by that much in the trial' },
      ...(isMeasured
        ? {}
        : { outside: 'Measured on lighter birds: look with a thermometer before you trust it.' }),
    },
  );
}

function chillLimitOf({ tables, say }: PlanContext, dressedEach: NumberQuantity): NumberQuantity {
  const { chilling } = tables.processing;
  return quantity(
    `Legal limit to be below ${say(chilling.targetC, 'degC')}`,
    chillingLimitH(chilling.rows, dressedEach.value),
    'h',
    processingFormulas.chillLimit,
    [
      from(dressedEach, 'W_d', 'Carcass'),
      fromTable(chilling, 'Chilled to', chilling.targetC, 'degC'),
    ],
  );
}
