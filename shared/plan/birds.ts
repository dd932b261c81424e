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
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { outsideFromDay, type PlanContext } from './context.js';
import { found, type Found } from './found.js';

export interface BirdsPart {
  readonly toOrder: NumberQuantity;
  readonly chicksPlaced: NumberQuantity;
  readonly atEnd: NumberQuantity;
  readonly growthTable: string;
  readonly lostFirstWeek: NumberQuantity;
  readonly cockerelsLeave?: { readonly on: Quantity; readonly birds: NumberQuantity };
}

export function planBirds(context: PlanContext): Found<BirdsPart> {
  const { batch, life } = context;
  const lossRows = { rows: [life.losses] };
  const rateInputs = [
    givenOrTable(
      batch.firstWeekLossPercent !== undefined,
      life.losses,
      ...(['Loss in the first week', life.rates.firstWeekShare, 'share', 'l₁'] as const),
    ),
    givenOrTable(
      batch.laterLossPercent !== undefined,
      life.losses,
      ...(['Loss later', life.rates.laterShare, 'share', 'l₂'] as const),
    ),
  ];
  const endDay = (life.firstEggAgeDays ?? life.lastAgeDays) - life.arrivalAgeDays;
  const endCount = batch.purpose === 'layers' ? life.alive.female[endDay]! : life.aliveAll[endDay]!;

  const toOrder = quantity(
    'Birds to order',
    life.orderForWanted,
    'count',
    lossFormulas.order,
    [
      input('Birds wanted', batch.wantedBirds, 'count', 'N_wanted'),
      ...rateInputs,
      input('Share of the sex wanted', life.wantedSexShare, 'share', 's'),
    ],
    {
      ...lossRows,
      spread: {
        low: life.orderForWanted,
        high: Math.max(life.orderCautious, life.orderForWanted),
        because: `the cautious case loses ${life.losses.cautiousPercent} % of the whole batch`,
      },
    },
  );
  const placed = quantity(
    'Chicks placed',
    life.placed,
    'count',
    lossFormulas.order,
    [
      batch.orderedBirds === undefined
        ? from(toOrder, undefined, 'Birds ordered')
        : fromFarm('Birds ordered', batch.orderedBirds, 'count'),
    ],
    { sources: ['ARITHMETIC'] },
  );
  const aliveInputs = [from(placed, 'N₀'), ...rateInputs];
  const atEnd = quantity(
    batch.purpose === 'layers' ? 'Hens at the first egg' : 'Birds to process',
    Math.max(1, Math.floor(endCount + 1e-9)),
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
  const cockerelDay =
    life.cockerelsLeaveAgeDays === undefined
      ? undefined
      : life.cockerelsLeaveAgeDays - life.arrivalAgeDays;
  const part: BirdsPart = {
    toOrder,
    chicksPlaced: placed,
    atEnd,
    lostFirstWeek,
    growthTable: life.growthTable.name,
    ...(cockerelDay === undefined
      ? {}
      : {
          cockerelsLeave: {
            on: datedFact(
              'Cockerels leave',
              context.dateOf(cockerelDay),
              processingFormulas.leaveDate,
              [fromTable(life.strain.leave, 'Age at leaving', life.cockerelsLeaveAgeDays!, 'day')],
            ),
            birds: quantity(
              'Cockerels to process',
              Math.floor(life.alive.male[cockerelDay - 1]!),
              'count',
              lossFormulas.alive,
              aliveInputs,
              lossRows,
            ),
          },
        }),
  };
  return found(part, {
    issues: [...tooFew(context, atEnd.value), ...outsideTable(context)],
    series: seriesOf(context, aliveInputs),
  });
}

function seriesOf(context: PlanContext, aliveInputs: readonly QuantityInput[]): DailySeries[] {
  const { life, batch } = context;
  const table = life.growthTable;
  const options = { rows: life.weightRows, outside: outsideFromDay(context) };
  const inputs = [
    input('Growth table', table.name, 'text'),
    input('Small-flock factor on weight', life.weightFactor, 'ratio', 'f'),
    ...(table.sexRatio ? [input('Sexes', table.sexRatio.note, 'text')] : []),
  ];
  const weight = (id: string, label: string, values: Float64Array) =>
    dailySeries(id, label, 'kg', growthFormulas.weight, values, inputs, options);
  return [
    dailySeries('alive', 'Birds alive', 'count', lossFormulas.alive, life.aliveAll, aliveInputs, {
      rows: [life.losses],
    }),
    weight('weight-mean', 'Live weight, average', life.meanWeightKg),
    ...(batch.sex === 'pullets'
      ? []
      : [weight('weight-male', 'Live weight, cockerel', life.weightKg.male)]),
    ...(batch.sex === 'cockerels'
      ? []
      : [weight('weight-female', 'Live weight, pullet', life.weightKg.female)]),
  ];
}

function tooFew({ batch, life }: PlanContext, atEnd: number): PlanIssue[] {
  return atEnd < batch.wantedBirds
    ? [
        issue(
          'act',
          'too-few-birds',
          `${life.placed} chicks placed leave about ${atEnd}, but ${batch.wantedBirds} are wanted. Order ${life.orderForWanted}.`,
        ),
      ]
    : [];
}

function outsideTable({ life, batch, say }: PlanContext): PlanIssue[] {
  const issues: PlanIssue[] = [];
  if (batch.purpose === 'meat' && life.lastTableAgeDays < life.lastAgeDays) {
    issues.push(
      issue(
        'note',
        'outside-table',
        `The growth table ends at ${life.lastTableAgeDays} days of age; from there to ${life.lastAgeDays} days the growth curve through it (a Gompertz curve) carries on. Those weights and feed amounts are outside the table's range.`,
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
