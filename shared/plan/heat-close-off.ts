import type { Formula } from '../explain/formula.js';
import { fromRow, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import type { Brooder } from '../farm/facility.js';
import { costMinor } from '../money/money.js';
import type { PlanContext } from './context.js';
import { daysOfHeat, type BroodingHeat } from './heat-days.js';
import { energyByDay, lastHeatDayOf } from './heat-energy.js';
import { heatPriceInput, heatPriceOf } from './heat-price.js';
import { heatWeeks } from './heat-weeks.js';

export const closeOffFormulas = {
  saved: {
    id: 'close-off-saves',
    title: 'Heat saved by closing a part off',
    words:
      'Energy of a usual brooding time in the whole brooder less that with the part closed off in the weeks that need no more floor. Where as many heaters burn either way it is nothing, and the birds only stay nearer to heat, feed and water.',
    symbols: 'ΔE = E_whole − E_part',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  floor: {
    id: 'close-off-floor',
    title: 'Floor to leave open',
    words:
      'The smallest handy part of the floor that holds the birds of that week by the chosen standard, and still has a cool end on the coldest night.',
    symbols: 'A = s·L·W, s of ¼, ⅓, ½, ⅔, ¾',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** What a board across a brooder would do, or does. */
export interface CloseOff {
  /** Whether the household does it: then heat and energy are of the part. */
  readonly done: boolean;
  readonly energySaved: NumberQuantity;
  readonly moneySaved: NumberQuantity;
  readonly weeks: readonly {
    readonly from: string;
    readonly to: string;
    readonly floor: NumberQuantity;
    readonly length: NumberQuantity;
  }[];
}

interface ClosingOff {
  /** Of the length that the birds need, by day. */
  readonly shares: readonly number[];
  readonly headroomM: (day: number) => number;
  /** Energy of the plan as the household does it. */
  readonly plannedKWh: number;
}

/**
 * @returns undefined when they need all of it from the first day
 */
export function closeOffOf(
  context: PlanContext,
  brooder: Brooder,
  heat: BroodingHeat,
  { shares, headroomM, plannedKWh }: ClosingOff,
): CloseOff | undefined {
  const { farm, dateOf, tables } = context;
  const closed = spansOf(shares).filter(({ share }) => share < 1);
  if (closed.length === 0) return undefined;
  const done = brooder.closesOff === true;
  const other = energyWith(heat, done ? shares.map(() => 1) : shares, headroomM);
  const [whole, ofPart] = done ? [other, plannedKWh] : [plannedKWh, other];
  const savedKWh = Math.max(0, whole - ofPart);
  const isGas = heat.rig.heat.kind === 'gas';
  const perKWh = isGas ? 3.6 / tables.heat.propane.MJPerL : 1;
  const price = heatPriceOf(farm, heat.rig.heat.kind);
  const energySaved = quantity(
    'Closing a part off saves',
    savedKWh,
    'kWh',
    closeOffFormulas.saved,
    [
      input('In the whole brooder', whole, 'kWh', 'E_whole'),
      input('With the part', whole - savedKWh, 'kWh', 'E_part'),
    ],
    { rows: [heat.rig.table.floor] },
  );
  return {
    done,
    energySaved,
    moneySaved: quantity(
      'Closing a part off saves',
      costMinor(price, savedKWh * perKWh, farm.currency),
      'money',
      closeOffFormulas.saved,
      [
        { ...input('Energy', savedKWh, 'kWh'), mark: energySaved.mark },
        heatPriceInput(farm, heat.rig.heat.kind),
      ],
    ),
    weeks: closed.map(({ first, last, share }) => ({
      from: dateOf(first),
      to: dateOf(last),
      floor: quantity(
        'Floor left open',
        share * brooder.lengthM * brooder.widthM,
        'm2',
        closeOffFormulas.floor,
        [
          fromRow(brooder, 'lengthM', 'Length', brooder.lengthM, 'm', 'L'),
          fromRow(brooder, 'widthM', 'Width', brooder.widthM, 'm', 'W'),
        ],
        { rows: [context.life.losses] },
      ),
      length: quantity('Board at', share * brooder.lengthM, 'm', closeOffFormulas.floor, [
        fromRow(brooder, 'lengthM', 'Length', brooder.lengthM, 'm', 'L'),
        input('Part of it', share, 'share', 's'),
      ]),
    })),
  };
}

function energyWith(
  heat: BroodingHeat,
  shares: readonly number[],
  headroomM: (day: number) => number,
): number {
  const days = daysOfHeat(heat, shares);
  const weeks = heatWeeks(heat, days, lastHeatDayOf(days), headroomM);
  return energyByDay(heat, days, weeks).reduce((a, b) => a + b, 0);
}

function spansOf(shares: readonly number[]): { first: number; last: number; share: number }[] {
  const spans: { first: number; last: number; share: number }[] = [];
  shares.forEach((share, i) => {
    const open = spans.at(-1);
    if (open?.share === share) spans[spans.length - 1] = { ...open, last: i };
    else spans.push({ first: i, last: i, share });
  });
  return spans;
}
