import type { Formula } from '../explain/formula.js';
import { from, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { costMinor } from '../money/money.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { BirdsPart } from './birds.js';
import type { PlanContext } from './context.js';
import type { FeedPart } from './feed.js';
import { found, type Found } from './found.js';
import type { HatchingPart } from './hatching.js';
import type { HeatPart } from './heat.js';
import type { LayingPart } from './laying.js';
import type { LeavingPart } from './leaving.js';
import type { SpacePart } from './space.js';

export const billFormulas = {
  line: {
    id: 'bill-line',
    title: 'Line of the bill',
    words: 'Amount times your price for one, rounded once to the smallest coin.',
    symbols: 'C = n·price',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  total: {
    id: 'bill-total',
    title: 'The bill',
    words: 'Sum of the lines that have a price. Your own hours are not in it.',
    symbols: 'C = Σ C_line',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  unit: {
    id: 'bill-unit',
    title: 'Cost of one',
    words: 'The bill divided by what it bought.',
    symbols: 'c = C ÷ n',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface BillLine {
  readonly label: string;
  readonly amount: NumberQuantity;
  /** Decimal text as typed, or undefined when no price is known. */
  readonly price?: string;
  readonly cost?: NumberQuantity;
}

export interface BillPart {
  readonly currency: string;
  readonly lines: readonly BillLine[];
  readonly total: NumberQuantity;
  readonly complete: boolean;
  /** Of processing at home; not in the total. */
  readonly ownHours?: NumberQuantity;
  readonly perBird: NumberQuantity;
  readonly perKgLive?: NumberQuantity;
  readonly perKgDressed?: NumberQuantity;
  readonly perDozen?: NumberQuantity;
}

export function planBill(
  context: PlanContext,
  parts: {
    hatching: HatchingPart | undefined;
    birds: BirdsPart;
    feed: FeedPart;
    heat: HeatPart | undefined;
    space: SpacePart;
    leaving: LeavingPart | undefined;
    laying: LayingPart | undefined;
  },
): Found<BillPart> {
  const { batch, farm, life } = context;
  const prices = batch.prices ?? {};
  const line = (label: string, amount: NumberQuantity, price: string | undefined): BillLine => ({
    label,
    amount,
    ...(price === undefined
      ? {}
      : {
          price,
          cost: quantity(
            label,
            costMinor(price, amount.value, farm.currency),
            'money',
            billFormulas.line,
            [from(amount, 'n'), input('Price of one', `${price} ${farm.currency}`, 'text')],
          ),
        }),
  });
  const lines: BillLine[] = [
    parts.hatching
      ? line('Hatching eggs', parts.hatching.eggs, prices.perEgg)
      : line('Birds', parts.birds.chicksPlaced, prices.perBird),
    ...parts.feed.phases.map((phase) =>
      line(`${phase.name} feed`, phase.bags, prices.feedPerBag?.[phase.phaseId]),
    ),
    ...(parts.space.litter ? [line('Bedding', parts.space.litter.bags, prices.beddingPerBag)] : []),
    ...(parts.heat
      ? [
          {
            label: 'Heat',
            amount: parts.heat.energyTotal,
            price: parts.heat.gasLiters ? farm.gasPricePerL : farm.electricityPricePerKWh,
            cost: parts.heat.cost,
          },
        ]
      : []),
    ...processingLine(parts),
  ];
  const missing = lines.filter((l) => l.cost === undefined).map((l) => l.label.toLowerCase());
  const totalMinor = lines.reduce((sum, l) => sum + (l.cost?.value ?? 0), 0);
  const endBirds = parts.leaving?.birdsToProcess ?? parts.birds.atEnd.value;
  const total = quantity(
    'The bill',
    totalMinor,
    'money',
    billFormulas.total,
    lines.flatMap((l) => (l.cost ? [from(l.cost, undefined, l.label)] : [])),
  );
  const unit = (
    label: string,
    n: number,
    what: NumberQuantity | undefined,
    shownAs: 'money' | 'moneyPerKg' = 'money',
  ): NumberQuantity =>
    quantity(label, n === 0 ? 0 : totalMinor / n, shownAs, billFormulas.unit, [
      from(total, 'C'),
      what
        ? { ...from(what, 'n'), value: n }
        : { ...from(parts.birds.atEnd, 'n', 'Birds at the end'), value: n },
    ]);
  const part: BillPart = {
    currency: farm.currency,
    lines,
    complete: missing.length === 0,
    total,
    ...(parts.leaving?.dayHours ? { ownHours: parts.leaving.dayHours } : {}),
    perBird: unit(
      life.layCurve ? 'Cost per hen, to the end of the laying year' : 'Cost per bird',
      endBirds,
      undefined,
    ),
    ...(parts.leaving
      ? {
          perKgLive: unit(
            'Cost of live weight',
            parts.leaving.liveAll.value,
            parts.leaving.liveAll,
            'moneyPerKg',
          ),
          perKgDressed: unit(
            'Cost of dressed weight',
            parts.leaving.dressedAll.value,
            parts.leaving.dressedAll,
            'moneyPerKg',
          ),
        }
      : {}),
    ...(parts.laying
      ? {
          perDozen: unit('Cost per dozen eggs', parts.laying.eggsInYear.value / 12, {
            ...parts.laying.eggsInYear,
            label: 'Dozens in the first laying year',
            unit: 'count',
          }),
        }
      : {}),
  };
  return found(part, { issues: withoutPrice(missing) });

  function processingLine({ leaving, birds }: typeof parts): BillLine[] {
    if (leaving) {
      const amount = quantity(
        'Birds processed',
        leaving.birdsToProcess,
        'count',
        billFormulas.line,
        [from(birds.atEnd)],
      );
      const fee = line('Processing', amount, prices.processingPerBird);
      if (batch.processing === 'hired') return [fee];
      const { iceBags, freezerBags, scaldGas } = leaving;
      return [
        ...(prices.processingPerBird === undefined ? [] : [fee]),
        line('Ice', iceBags, prices.iceBag),
        ...(freezerBags ? [line('Freezer bags', freezerBags, prices.freezerBag)] : []),
        ...(scaldGas ? [line('Propane to scald', scaldGas, farm.gasPricePerL)] : []),
      ];
    }
    return birds.cockerelsLeave && prices.processingPerBird !== undefined
      ? [line('Processing of cockerels', birds.cockerelsLeave.birds, prices.processingPerBird)]
      : [];
  }
}

const withoutPrice = (lines: readonly string[]): PlanIssue[] =>
  lines.length === 0
    ? []
    : [
        issue(
          'note',
          'price-missing',
          `The bill leaves out ${lines.join(', ')}: no price is given.`,
        ),
      ];
