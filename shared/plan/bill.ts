import type { Formula } from '../explain/formula.js';
import { from, quantity, type NumberQuantity } from '../explain/quantity.js';
import { costMinor } from '../money/money.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { BirdsPart } from './birds.js';
import { capital } from './bird-words.js';
import { listed } from '../units/listed.js';
import type { PlanContext } from './context.js';
import type { FeedPart } from './feed.js';
import { found, type Found } from './found.js';
import type { HatchingPart } from './hatching.js';
import type { HeatPart } from './heat.js';
import { eggsPlanned, type LayingPart } from './laying.js';
import type { LeavingPart } from './leaving.js';
import { heatPriceInput } from './heat-price.js';
import type { OutdoorsPart } from './outdoors.js';
import {
  bagOf,
  beddingBag,
  chickPrice,
  goodPrice,
  priceInput,
  processingPrice,
  settingEggPrice,
  type PriceOfOne,
} from './prices.js';
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
    words:
      'Sum of the lines that have a price. What has none is named beside it and is not counted. Your own hours are not in it.',
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
  /** Decimal text, of one unit in which the amount is stored; undefined when none is known. */
  readonly price?: string;
  /** The product of the place that the price is of; left out when the batch has one of its own. */
  readonly product?: string;
  readonly cost?: NumberQuantity;
}

export interface BillPart {
  readonly currency: string;
  readonly lines: readonly BillLine[];
  readonly total: NumberQuantity;
  /** What the total leaves out because nothing is known of its price, in words. */
  readonly leftOut: readonly string[];
  /** Of processing at home; not in the total. */
  readonly ownHours?: NumberQuantity;
  /** Costs of one: only where all that the batch is made of has a price. */
  readonly perBird?: NumberQuantity;
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
    outdoors: OutdoorsPart;
    leaving: LeavingPart | undefined;
    laying: LayingPart | undefined;
  },
): Found<BillPart> {
  const { batch, farm, life } = context;
  const line = (label: string, amount: NumberQuantity, of: PriceOfOne | undefined): BillLine => ({
    label,
    amount,
    ...(of === undefined
      ? {}
      : {
          ...of,
          cost: quantity(
            label,
            costMinor(of.price, amount.value, farm.currency),
            'money',
            billFormulas.line,
            [
              from(amount, 'n'),
              amount.unit === 'L' || amount.unit === 'kWh'
                ? heatPriceInput(farm, amount.unit === 'L' ? 'gas' : 'lamp')
                : priceInput(of, farm.currency),
            ],
          ),
        }),
  });
  const youngLabel = capital(context.words.young);
  const lines: BillLine[] = [
    parts.hatching
      ? line('Hatching eggs', parts.hatching.eggs, settingEggPrice(context))
      : line(youngLabel, parts.birds.chicksPlaced, chickPrice(context)),
    ...parts.feed.phases.map((phase) =>
      line(feedLabel(phase.name), phase.bags, bagOf(context, phase.phaseId).price),
    ),
    ...(parts.space.litter
      ? [line('Bedding', parts.space.litter.bags, beddingBag(context).price)]
      : []),
    ...(parts.heat
      ? [
          {
            label: 'Heat',
            amount: parts.heat.gasLiters ?? parts.heat.energyTotal,
            price: parts.heat.gasLiters ? farm.gasPricePerL : farm.electricityPricePerKWh,
            cost: parts.heat.cost,
          },
        ]
      : []),
    ...(parts.outdoors.penHeat
      ? [line('Heat in the pen', parts.outdoors.penHeat, { price: farm.electricityPricePerKWh })]
      : []),
    ...processingLine(parts),
  ];
  const missing = missingOf(lines, parts.feed);
  const areCostsOfOneKnown = !lines.some((each) => each.cost === undefined && isMainLine(each));
  const leftOut = [
    ...(missing.length === 0 ? [] : [`without ${listed(missing)}: no price given`]),
    ...(parts.heat || !life.hasBrooder ? [] : ['without heat and bedding: no brooder chosen']),
  ];
  const named = (label: string): string => [label, ...leftOut].join(', ');
  const totalMinor = lines.reduce((sum, l) => sum + (l.cost?.value ?? 0), 0);
  const endBirds = parts.leaving?.birdsToProcess ?? parts.birds.atEnd.value;
  const total = quantity(
    named('The bill'),
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
    quantity(named(label), n === 0 ? 0 : totalMinor / n, shownAs, billFormulas.unit, [
      from(total, 'C'),
      what
        ? { ...from(what, 'n'), value: n }
        : { ...from(parts.birds.atEnd, 'n', 'Birds at the end'), value: n },
    ]);
  const part: BillPart = {
    currency: farm.currency,
    lines,
    leftOut,
    total,
    ...(parts.leaving?.dayHours ? { ownHours: parts.leaving.dayHours } : {}),
    ...(areCostsOfOneKnown ? costsOfOne() : {}),
  };
  return found(part, { issues: withoutPrice(missing) });

  function costsOfOne(): Pick<BillPart, 'perBird' | 'perKgLive' | 'perKgDressed' | 'perDozen'> {
    const { leaving, laying } = parts;
    return {
      perBird: unit(
        life.layCurve
          ? `Cost per hen, to the end of ${life.layYears < 2 ? 'the laying year' : `laying year ${life.layYears}`}`
          : 'Cost per bird',
        endBirds,
        undefined,
      ),
      ...(leaving
        ? {
            perKgLive: unit(
              'Cost of live weight',
              leaving.liveAll.value,
              leaving.liveAll,
              'moneyPerKg',
            ),
            perKgDressed: unit(
              'Cost of dressed weight',
              leaving.dressedAll.value,
              leaving.dressedAll,
              'moneyPerKg',
            ),
          }
        : {}),
      ...(laying
        ? {
            perDozen: unit('Cost per dozen eggs', eggsPlanned(laying).value / 12, {
              ...eggsPlanned(laying),
              label: eggsPlanned(laying).label.replace(/^Eggs/, 'Dozens'),
              unit: 'count',
            }),
          }
        : {}),
    };
  }

  /** Chicks that are bought, feed, and processing that is hired: without one, a cost of one is none. */
  function isMainLine({ label }: BillLine): boolean {
    return (
      (label === youngLabel && !parts.hatching) ||
      label === PROCESSING ||
      parts.feed.phases.some(({ name }) => label === feedLabel(name))
    );
  }

  function processingLine({ leaving, birds }: typeof parts): BillLine[] {
    const price = processingPrice(context);
    if (leaving) {
      const amount = quantity(
        'Birds processed',
        leaving.birdsToProcess,
        'count',
        billFormulas.line,
        [from(birds.atEnd)],
      );
      if (batch.processing === 'hired') return [line(PROCESSING, amount, price)];
      const { iceBags, freezerBags, scaldGas, processingDays } = leaving;
      return [
        ...(price === undefined ? [] : [line(PROCESSING, amount, price)]),
        // Nobody buys ice for a day that nobody has hands for.
        ...(processingDays.length === 0 ? [] : [line('Ice', iceBags, goodPrice(context, 'ice'))]),
        ...(freezerBags
          ? [line('Freezer bags', freezerBags, goodPrice(context, 'freezer-bags'))]
          : []),
        ...(scaldGas ? [line('Propane to scald', scaldGas, { price: farm.gasPricePerL })] : []),
      ];
    }
    return birds.cockerelsLeave && price
      ? [line('Processing of cockerels', birds.cockerelsLeave.birds, price)]
      : [];
  }
}

/** Lines without a price, in words; the phases of a feed program in one when none has any. */
function missingOf(lines: readonly BillLine[], { phases }: FeedPart): string[] {
  const unpriced = lines.filter(({ cost }) => cost === undefined);
  const isFeed = ({ label }: BillLine): boolean =>
    phases.some(({ name }) => label === feedLabel(name));
  const feeds = unpriced.filter(isFeed);
  if (feeds.length < 2 || feeds.length < phases.length)
    return unpriced.map(({ label }) => label.toLowerCase());
  const [first] = feeds;
  return unpriced
    .filter((line) => line === first || !isFeed(line))
    .map((line) => (line === first ? 'feed' : line.label.toLowerCase()));
}

const PROCESSING = 'Processing';
const feedLabel = (phase: string): string => `${phase} feed`;

const withoutPrice = (lines: readonly string[]): PlanIssue[] =>
  lines.length === 0
    ? []
    : [
        issue(
          'note',
          'price-missing',
          `The bill leaves out ${listed(lines)}: no price is given. Give it once under Prices of your place, or in this batch.`,
        ),
      ];
