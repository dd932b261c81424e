import {
  from,
  fromFarm,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import { mustBringMinor } from '../../money/break-even.js';
import { costMinor } from '../../money/money.js';
import { formatPrice } from '../../units/format.js';
import type { BatchPlan } from '../batch-plan.js';
import type { PlanContext } from '../context.js';
import { eggsPlanned } from '../laying.js';
import { lastLayYear } from '../laying-years.js';
import { costFormulas } from './cost-formulas.js';
import type { Fetching } from './fetching.js';
import { besideBill, hourRate, meatPrices, ownHours, type OwnCost } from './own-costs.js';

/** What a kilogram or a dozen must bring, once without the household's hours and once with them. */
export interface MustBring {
  readonly label: string;
  readonly withoutHours: NumberQuantity;
  /** Left out where the household reckons nothing for its hours. */
  readonly withHours?: NumberQuantity;
}

export interface BreakEven {
  /** Costs beside the bill, as far as the household said them. */
  readonly beside: readonly OwnCost[];
  readonly ownHours?: OwnCost;
  readonly hours: NumberQuantity;
  readonly withoutHours: NumberQuantity;
  readonly withHours?: NumberQuantity;
  /** None where something that the batch is made of has no price. */
  readonly mustBring: readonly MustBring[];
  /** The price that the household gave, where it did, and what it leaves. */
  readonly priceWanted?: NumberQuantity;
  readonly brings?: NumberQuantity;
  readonly left?: NumberQuantity;
  readonly hourBrings?: NumberQuantity;
  readonly said: readonly string[];
}

/**
 * What a batch must bring to pay for itself, beside the price that the household gave.
 *
 * @param fetching what the farm's trips cost; left out, the batch is taken to be fetched for by itself
 */
export function breakEvenOf(context: PlanContext, plan: BatchPlan, fetching?: Fetching): BreakEven {
  const { bill, leaving, laying } = plan;
  const beside = besideBill(context, plan, fetching);
  const own = ownHours(context, plan);
  const hours = plan.tasks.hoursInAll;
  const sum = (label: string, costs: readonly OwnCost[]): NumberQuantity =>
    quantity(
      [label, ...bill.leftOut].join(', '),
      costs.reduce((all, { cost }) => all + cost.value, bill.total.value),
      'money',
      costFormulas.all,
      [from(bill.total), ...costs.map(({ cost, label: as }) => from(cost, undefined, as))],
    );
  const withoutHours = sum(
    own ? 'All costs, your own hours aside' : 'All costs, your own hours at nothing',
    beside,
  );
  const withHours = own && sum('All costs, your own hours with them', [...beside, own]);
  const each = (
    label: string,
    amount: number,
    of: QuantityInput,
    unit: 'money' | 'moneyPerKg',
  ): MustBring => {
    const one = (all: NumberQuantity, words: string): NumberQuantity =>
      quantity(
        `${label}, ${words}`,
        mustBringMinor([all.value], amount),
        unit,
        costFormulas.breakEven,
        [from(all, 'C'), { ...of, symbol: 'n' }],
      );
    return {
      label,
      withoutHours: one(withoutHours, own ? 'your hours aside' : 'your hours at nothing'),
      ...(withHours ? { withHours: one(withHours, 'with your hours') } : {}),
    };
  };
  const isKnown = bill.perBird !== undefined;
  const eggs = laying && eggsPlanned(laying);
  const dozens = eggs && eggs.value / 12;
  const mustBring = !isKnown
    ? []
    : [
        ...(leaving
          ? [
              each('Live weight', leaving.liveAll.value, from(leaving.liveAll), 'moneyPerKg'),
              each(
                'Dressed weight',
                leaving.dressedAll.value,
                from(leaving.dressedAll),
                'moneyPerKg',
              ),
            ]
          : []),
        ...(eggs && dozens !== undefined
          ? [
              each(
                `A dozen eggs, to the end of ${lastLayYear(context.life)}`,
                dozens,
                { ...from(eggs), label: 'Dozens', unit: 'count', value: dozens },
                'money',
              ),
            ]
          : []),
      ];
  const worth = isKnown ? worthOf(context, plan) : undefined;
  const paid = worth && worthLeft(worth, { withoutHours, withHours, hours });
  return {
    beside,
    ...(own ? { ownHours: own } : {}),
    hours,
    withoutHours,
    ...(withHours ? { withHours } : {}),
    mustBring,
    ...(worth ? { priceWanted: worth.price, brings: worth.brings } : {}),
    ...paid,
    said: saidOf(context, { mustBring, worth, ...paid }),
  };
}

interface Worth {
  readonly price: NumberQuantity;
  readonly brings: NumberQuantity;
  readonly one: string;
}

/** What the batch brings at the price that the household gave. */
function worthOf(context: PlanContext, { leaving, laying }: BatchPlan): Worth | undefined {
  const { batch, farm, say } = context;
  const inAll = (amount: QuantityInput, minor: number, price: NumberQuantity): NumberQuantity =>
    quantity('Brings at that price', Math.round(minor), 'money', costFormulas.leftOver, [
      { ...amount, symbol: 'n' },
      from(price, 'p'),
    ]);
  if (leaving) {
    const minor = meatPrices(context)(leaving.dressedEach.value);
    if (minor === undefined) return undefined;
    const price = quantity('Price you gave', minor, 'moneyPerKg', costFormulas.priceWanted, [
      fromFarm('For birds dressed to', leaving.dressedEach.value, 'kg'),
    ]);
    return {
      price,
      brings: inAll(from(leaving.dressedAll), minor * leaving.dressedAll.value, price),
      one: say(minor, 'moneyPerKg'),
    };
  }
  const dozen = batch.prices?.eggDozen;
  if (!laying || dozen === undefined) return undefined;
  const price = quantity(
    'Price you gave',
    costMinor(dozen, 1, farm.currency),
    'money',
    costFormulas.priceWanted,
    [fromFarm('A dozen eggs', formatPrice(dozen, farm.currency), 'text')],
  );
  const eggs = eggsPlanned(laying);
  const dozens = eggs.value / 12;
  return {
    price,
    brings: inAll(
      { ...from(eggs), label: 'Dozens', unit: 'count', value: dozens },
      costMinor(dozen, dozens, farm.currency),
      price,
    ),
    one: `${formatPrice(dozen, farm.currency)} a dozen`,
  };
}

function worthLeft(
  { brings }: Worth,
  {
    withoutHours,
    withHours,
    hours,
  }: Pick<BreakEven, 'withoutHours' | 'hours'> & { withHours: NumberQuantity | undefined },
): Pick<BreakEven, 'left' | 'hourBrings'> {
  const all = withHours ?? withoutHours;
  return {
    left: quantity(
      withHours ? 'Left over, your hours paid' : 'Left over for your hours',
      brings.value - all.value,
      'money',
      costFormulas.leftOver,
      [from(brings), from(all, 'C')],
    ),
    ...(0 < hours.value
      ? {
          hourBrings: quantity(
            'An hour of yours brings',
            (brings.value - withoutHours.value) / hours.value,
            'money',
            costFormulas.hourBrings,
            [from(brings), from(withoutHours, 'C_without'), from(hours, 'h')],
          ),
        }
      : {}),
  };
}

function saidOf(
  context: PlanContext,
  {
    mustBring,
    worth,
    left,
    hourBrings,
  }: Pick<BreakEven, 'mustBring' | 'left' | 'hourBrings'> & { worth: Worth | undefined },
): readonly string[] {
  const { say, batch } = context;
  const main = mustBring.at(-1);
  if (!main) return [];
  const must = say(main.withoutHours.value, main.withoutHours.unit);
  const one = batch.purpose === 'meat' ? `${must}, dressed,` : `${must} a dozen`;
  const lines = [
    main.withHours
      ? `${one} pays for what you buy; ${say(main.withHours.value, main.withHours.unit)} pays your hours too.`
      : `${one} pays for what you buy. Your own hours are counted at nothing.`,
  ];
  if (worth && left) {
    const much = say(Math.abs(left.value), 'money');
    lines.push(
      left.value < 0
        ? `At ${worth.one} it costs ${much} more than it brings.`
        : `At ${worth.one} it leaves ${much}${hourRate(context) === undefined && hourBrings ? `, ${say(hourBrings.value, 'money')} for each hour of yours` : ', your hours paid'}.`,
    );
  }
  return lines;
}
