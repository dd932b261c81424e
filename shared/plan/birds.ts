import { dailySeries, type DailySeries } from '../explain/daily-series.js';
import {
  datedFact,
  from,
  fromFarm,
  fromTable,
  givenOrTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { growthFormulas } from '../poultry/growth.js';
import { lossFormulas } from '../poultry/losses.js';
import { processingFormulas } from '../poultry/processing.js';
import { formatChance, formatYears } from '../units/format.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { rowById } from '../tables/tables.js';
import { capital } from './bird-words.js';
import { countedIssues, countedPart, type CountedPart } from './counted.js';
import { cockerelsLeaving } from './cockerels.js';
import { isPastTable, outsideFromDay, type PlanContext } from './context.js';
import { found, type Found } from './found.js';
import type { HatchingPart } from './hatching.js';
import { cockerelsInFreezer } from './leaving-freezer.js';
import { withoutThoseGone } from './still-here.js';
import {
  livingInputs,
  speedInputs,
  toWeigh,
  weighedIssues,
  weighedPart,
  type WeighedPart,
} from './weighed.js';

export interface BirdsPart {
  readonly toOrder: NumberQuantity;
  /** How many to order to be more or less sure of the number wanted, the fewest first. */
  readonly orderSizes: readonly NumberQuantity[];
  readonly enough: NumberQuantity;
  readonly chicksPlaced: NumberQuantity;
  readonly atEnd: NumberQuantity;
  readonly growthTable: string;
  /** Birds to put on the scale to know the average within a twentieth. */
  readonly toWeigh: NumberQuantity;
  /** What the household's weighings say; left out without any. */
  readonly weighed?: WeighedPart;
  /** How many there are by what was told; left out while nothing says it. */
  readonly counted?: CountedPart;
  readonly lostFirstWeek: NumberQuantity;
  readonly cockerelsLeave?: {
    readonly on: Quantity;
    readonly birds: NumberQuantity;
    readonly freezerNeed?: NumberQuantity;
  };
}

export function planBirds(
  context: PlanContext,
  hatching: HatchingPart | undefined,
): Found<BirdsPart> {
  const { batch, life, words } = context;
  const lossRows = { rows: [life.losses] };
  const rateInputs = [
    ...(life.isStarted
      ? [input('Age when they come', life.arrivalAgeDays, 'day')]
      : [
          givenOrTable(
            batch.firstWeekLossPercent !== undefined,
            life.losses,
            ...(['Loss in the first week', life.rates.firstWeekShare, 'share', 'l₁'] as const),
          ),
        ]),
    givenOrTable(
      batch.laterLossPercent !== undefined,
      life.losses,
      ...(['Loss later', life.rates.laterShare, 'share', 'l₂'] as const),
    ),
  ];
  const endDay = (life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays;
  const endCount =
    batch.purpose === 'layers'
      ? life.alive.female[endDay]! * (batch.sex === 'pullets' ? life.odds.sexShare : 1)
      : life.aliveAll[endDay]!;

  const { orders } = context.tables;
  const isSexed = batch.purpose === 'layers' && batch.sex === 'pullets' && !life.isStarted;
  const orderRows = {
    rows: [life.losses, orders.togetherness, orders.surety, ...(isSexed ? [orders.sexing] : [])],
  };
  const orderInputs = [
    input('Birds wanted', batch.wantedBirds, 'count', 'N_wanted'),
    ...rateInputs,
    input('Lives to the end, on average', life.odds.survivingShare, 'share', 'm'),
    fromTable(orders.togetherness, 'Losses come together', life.odds.togetherness, 'ratio', 'ρ'),
    input('Of the sex wanted', life.odds.sexShare, 'share', 's'),
  ];
  const orderFor = (share: number, k: number): NumberQuantity =>
    quantity(
      `To have enough ${formatYears(share, 'times in')}`,
      life.orderSizes[k]!,
      'count',
      lossFormulas.order,
      [...orderInputs, fromTable(orders.surety, 'How sure', share, 'share', 'p')],
      orderRows,
    );
  const sizes = orders.surety.shares.map(orderFor);
  const toOrder = quantity(
    hatching ? `${capital(words.young)} to hatch` : 'Birds to order',
    life.orderForWanted,
    'count',
    lossFormulas.order,
    [...orderInputs, fromTable(orders.surety, 'How sure', orders.surety.usual, 'share', 'p')],
    {
      ...orderRows,
      spread: {
        low: Math.min(life.orderForWanted, ...sizes.map(({ value }) => value)),
        high: Math.max(life.orderForWanted, ...sizes.map(({ value }) => value)),
        because: 'it depends on how sure you want to be of the number',
      },
    },
  );
  const placed = quantity(
    `${capital(words.young)} placed`,
    life.placed,
    'count',
    lossFormulas.order,
    [
      batch.orderedBirds !== undefined
        ? fromFarm(
            life.told?.came !== undefined ? 'Came alive' : hatching ? 'Hatched' : 'Birds ordered',
            batch.orderedBirds,
            'count',
          )
        : hatching
          ? from(hatching.chicksExpected)
          : from(toOrder, undefined, 'Birds ordered'),
    ],
    { sources: ['ARITHMETIC'] },
  );
  const counted = countedPart(context);
  const aliveInputs = [
    ...(counted ? [from(counted.now, 'N'), from(counted.died)] : []),
    from(placed, 'N₀'),
    ...rateInputs,
  ];
  const atEnd = quantity(
    batch.purpose === 'layers' ? 'Hens at the first egg' : 'Birds to process',
    // Of grown birds hardly one is lost before the first egg: half a bird is no bird less.
    Math.max(1, life.isStarted ? Math.round(endCount) : Math.floor(endCount + 1e-9)),
    'count',
    lossFormulas.alive,
    [...aliveInputs, input('Days after arrival', endDay, 'day', 't')],
    lossRows,
  );
  const lostFirstWeek = quantity(
    'Losses to expect in the first week',
    life.placed - life.aliveAll[Math.min(7, life.days - 1)]!,
    'count',
    lossFormulas.alive,
    aliveInputs,
    lossRows,
  );
  const enough =
    hatching && batch.orderedBirds === undefined
      ? hatching.enough
      : quantity(
          'Chance of ending with the number wanted',
          life.enough,
          'chance',
          lossFormulas.enough,
          counted ? [from(counted.now, 'N'), ...orderInputs] : [from(placed, 'N₀'), ...orderInputs],
          orderRows,
        );
  const leaving = cockerelsLeaving(context);
  const freezer = cockerelsInFreezer(context);
  const part: BirdsPart = {
    toOrder,
    orderSizes: sizes,
    enough,
    chicksPlaced: placed,
    atEnd,
    ...(counted ? { counted } : {}),
    lostFirstWeek,
    growthTable: life.growthTable.name,
    toWeigh: toWeigh(context),
    ...(life.own ? { weighed: weighedPart(context, life.own) } : {}),
    ...(leaving === undefined
      ? {}
      : {
          cockerelsLeave: {
            ...(freezer.part ? { freezerNeed: freezer.part } : {}),
            on: datedFact('Cockerels leave', leaving.date, processingFormulas.leaveDate, [
              fromTable(life.strain.leave, 'Age at leaving', life.cockerelsLeaveAgeDays!, 'day'),
            ]),
            birds: quantity(
              'Cockerels to process',
              leaving.birds,
              'count',
              lossFormulas.alive,
              aliveInputs,
              lossRows,
            ),
          },
        }),
  };
  return found(part, {
    issues: [
      ...freezer.issues,
      ...tooFew(context, atEnd.value, enough.value),
      ...outsideTable(context),
      ...weighedIssues(context),
      ...countedIssues(context),
    ],
    series: seriesOf(context, aliveInputs),
  });
}

function seriesOf(context: PlanContext, aliveInputs: readonly QuantityInput[]): DailySeries[] {
  const { life, batch } = context;
  const table = life.growthTable;
  const { male, female } = rowById(context.tables.hatching.species, life.strain.species);
  const options = { rows: life.weightRows, outside: outsideFromDay(context) };
  const inputs = [
    input('Growth table', table.name, 'text'),
    input('Factor on weight', life.weightFactor, 'ratio', 'f'),
    ...livingInputs(context),
    ...speedInputs(life),
    ...(table.sexRatio ? [input('Sexes', table.sexRatio.note, 'text')] : []),
  ];
  const weight = (id: string, label: string, values: Float64Array) =>
    dailySeries(id, label, 'kg', growthFormulas.weight, values, inputs, options);
  return [
    dailySeries(
      'alive',
      'Birds alive',
      'count',
      lossFormulas.alive,
      withoutThoseGone(context, context.life.aliveAll),
      aliveInputs,
      {
        rows: [life.losses],
      },
    ),
    weight('weight-mean', 'Live weight, average', life.meanWeightKg),
    ...(batch.sex === 'pullets'
      ? []
      : [weight('weight-male', `Live weight, ${male}`, life.weightKg.male)]),
    ...(batch.sex === 'cockerels'
      ? []
      : [weight('weight-female', `Live weight, ${female}`, life.weightKg.female)]),
  ];
}

/** Said when the number wanted is less likely than not. */
function tooFew({ batch, life, words }: PlanContext, atEnd: number, enough: number): PlanIssue[] {
  if (life.now && life.now.there < 1) return [];
  if (life.told?.isCounted && enough < 0.5)
    return [
      issue(
        'note',
        'fewer-than-wanted',
        `${life.now!.there} ${life.now!.there === 1 ? 'bird is' : 'birds are'} left, and ${batch.wantedBirds} were wanted: enough ${formatChance(enough)}. Feed, room and the last day go by those there are.`,
      ),
    ];
  return enough < 0.5
    ? [
        issue(
          'act',
          'too-few-birds',
          `${life.placed} ${words.young} placed leave about ${atEnd}, and ${batch.wantedBirds} are wanted: enough ${formatChance(enough)}. ${life.eggs ? `Set ${life.eggs.toSet} eggs` : `Order ${life.orderForWanted}`}.`,
        ),
      ]
    : [];
}

function outsideTable(context: PlanContext): PlanIssue[] {
  const { life, batch, say } = context;
  const issues: PlanIssue[] = [];
  if (isPastTable(context)) {
    issues.push(
      issue(
        'note',
        'outside-table',
        `The growth table ends at ${life.lastTableAgeDays} days of age; from there to ${life.lastAgeDays} days the growth curve through it carries on. Weights and feed of those days, and all that rests on them, are outside the table's range.`,
      ),
    );
  }
  if (
    batch.targetLiveKg !== undefined &&
    batch.purpose === 'meat' &&
    life.targetReachedAgeDays === undefined
  ) {
    issues.push(
      issue(
        'act',
        'target-not-reached',
        `An average of ${say(batch.targetLiveKg, 'kg')} is never reached by these birds; the plan uses ${life.lastAgeDays} days of age instead. Lower the target or choose a heavier strain.`,
      ),
    );
  }
  return issues;
}
