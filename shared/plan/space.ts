import { plainFormulas } from '../explain/plain-formulas.js';
import { dailySeries } from '../explain/daily-series.js';
import {
  datedFact,
  from,
  fromRow,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../explain/quantity.js';
import { facilityOf, type Brooder } from '../farm/facility.js';
import { spaceFormulas, spaceRowAt } from '../poultry/space.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import { daysToSpare } from './brooder-spare.js';
import { floorHad, floorHadM2 } from './floor-had.js';
import type { PlanContext } from './context.js';
import { beddingBag } from './prices.js';
import { found, joined, type Found } from './found.js';
import { spaceStandardOf } from './space-standard.js';
import { stockingOf, type Stocking } from './stocking.js';

/** One kind of room the birds need, against what there is. */
export interface SpaceNeed {
  readonly name: string;
  readonly most: NumberQuantity;
  readonly have?: NumberQuantity;
  /** First day on which it is too small, when there is such a day. */
  readonly runsOut?: Quantity;
}

export interface SpacePart {
  readonly standard: string;
  readonly needs: readonly SpaceNeed[];
  /** Birds that fit at the limits gone by, in the brooder and after the move. */
  readonly stocking: readonly Stocking[];
  /** Left out without a brooder or a day of the move. */
  readonly spare?: NumberQuantity;
  readonly litter?: {
    readonly start: NumberQuantity;
    readonly topUp: NumberQuantity;
    readonly total: NumberQuantity;
    readonly bags: NumberQuantity;
    readonly cleanOut: Quantity;
  };
}

export function planSpace(context: PlanContext): Found<SpacePart> {
  const { batch, facilities, life, brooderDays } = context;
  const standard = spaceStandardOf(context);
  // A hen’s chicks and grown birds need no brooder: their room is that outdoors.
  const stocking = stockingOf(context);
  if (!life.hasBrooder) return found({ standard: standard.name, needs: [], stocking });
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  const days = Math.max(1, brooderDays);
  const rows = Array.from({ length: days }, (_, i) =>
    spaceRowAt(standard.rows, life.arrivalAgeDays + i),
  );
  const need = (of: 'floorM2' | 'feederCm' | 'drinkerCm') =>
    Float64Array.from(rows, (row, i) => life.aliveAll[i]! * (row[of] ?? 0));
  const options = { rows: [standard] };
  const alive = { rows: [standard, life.losses] };
  const floor = need('floorM2');
  const floorNeed = dailySeries(
    'floor-need',
    'Brooder floor needed',
    'm2',
    spaceFormulas.floor,
    floor,
    [
      { label: 'Birds alive', symbol: 'N', series: 'alive' },
      input('Standard', standard.name, 'text'),
    ],
    options,
  );
  const part = (
    name: string,
    values: Float64Array,
    unit: 'm2' | 'cm',
    had: QuantityInput | undefined,
  ): Found<SpaceNeed> => {
    const have = had && Number(had.value);
    const last = values.indexOf(Math.max(...values));
    const most = values[last]!;
    const outAt = have === undefined ? -1 : values.findIndex((v) => have + 1e-9 < v);
    const formula = unit === 'm2' ? spaceFormulas.floor : spaceFormulas.edge;
    const issues: PlanIssue[] = [];
    if (0 <= outAt) {
      issues.push(
        issue(
          'act',
          `brooder-${unit === 'm2' ? 'floor' : 'edge'}-short`,
          `${name} is outgrown on ${context.say(context.dateOf(outAt), 'date')}, at ${context.say(life.arrivalAgeDays + outAt, 'day')} of age; the birds are to stay until ${context.say(context.dateOf(days), 'date')}. Add room, split the batch, or move them sooner if the nights allow.`,
        ),
      );
    }
    const needed: SpaceNeed = {
      name,
      most: quantity(
        `${name}, peak need`,
        most,
        unit,
        formula,
        [
          input('Birds alive', life.aliveAll[last]!, 'count', 'N'),
          input('Age', life.arrivalAgeDays + last, 'day'),
          input('Standard', standard.name, 'text'),
        ],
        alive,
      ),
      ...(had === undefined || have === undefined
        ? {}
        : {
            have: quantity(`${name} you have`, have, unit, plainFormulas.measured, [had]),
          }),
      ...(outAt < 0
        ? {}
        : {
            runsOut: datedFact(
              `${name}, outgrown on`,
              context.dateOf(outAt),
              spaceFormulas.runsOut,
              [input('Needed that day', values[outAt]!, unit), had!],
              alive,
            ),
          }),
    };
    return found(needed, { issues });
  };
  const needs = [
    part('Brooder floor', floor, 'm2', brooder && floorHad(brooder, 'Have')),
    part('Feeder length', need('feederCm'), 'cm', edgeHad(brooder, 'feederCm')),
    part('Drinker length', need('drinkerCm'), 'cm', edgeHad(brooder, 'drinkerCm')),
  ];
  const spare = brooder && daysToSpare(context, standard, brooder);
  const space: SpacePart = {
    standard: standard.name,
    needs: needs.map((each) => each.part),
    stocking,
    ...(spare?.part ? { spare: spare.part } : {}),
    ...(brooder ? { litter: litterOf(context, brooder, days) } : {}),
  };
  return found(space, joined([{ series: [floorNeed] }, ...needs, { issues: spare?.issues ?? [] }]));
}

const edgeHad = (
  brooder: Brooder | undefined,
  edge: 'feederCm' | 'drinkerCm',
): QuantityInput | undefined =>
  brooder?.[edge] === undefined ? undefined : fromRow(brooder, edge, 'Have', brooder[edge], 'cm');

function litterOf(
  context: PlanContext,
  brooder: Brooder,
  days: number,
): NonNullable<SpacePart['litter']> {
  const { litter } = context.tables;
  const own = beddingBag(context).opensTo;
  const opensToM3 = own === undefined ? litter.bagLooseM3 : Number(own.value);
  const topUps = Math.max(0, Math.ceil(days / litter.topUpEveryDays) - 1);
  const startM3 = floorHadM2(brooder) * litter.depthM;
  const totalM3 = startM3 * (1 + litter.topUpShare * topUps);
  const inputs = [
    floorHad(brooder, 'Floor', 'A'),
    fromTable(litter, 'Depth', litter.depthM * 100, 'cm', 'd'),
  ];
  const topUpInputs = [
    ...inputs,
    fromTable({ ...litter, mark: litter.topUpMark }, 'Weekly top-ups', topUps, 'count'),
  ];
  const deep = (depthM: number): number => (totalM3 * depthM) / litter.depthM;
  const total = quantity('Bedding in all', totalM3, 'm3', spaceFormulas.litter, topUpInputs, {
    spread: {
      low: deep(litter.low),
      high: deep(litter.high),
      because: 'sources lay 7.6 to 15 cm (3 to 6 in)',
    },
  });
  return {
    start: quantity('Bedding to start with', startM3, 'm3', spaceFormulas.litter, inputs),
    topUp: quantity(
      'Top-up each week',
      topUps === 0 ? 0 : startM3 * litter.topUpShare,
      'm3',
      spaceFormulas.litter,
      topUpInputs,
    ),
    total,
    bags: quantity(
      'Bags of shavings',
      Math.ceil(totalM3 / opensToM3 - 1e-9),
      'bags',
      spaceFormulas.litter,
      [
        from(total),
        ...(own
          ? [own]
          : [
              {
                ...input('One bag opens to', litter.bagLooseM3, 'm3'),
                mark: 'common-practice' as const,
              },
              input('Note', litter.bagNote, 'text'),
            ]),
      ],
    ),
    cleanOut: datedFact('Clean out', context.dateOf(days + 1), spaceFormulas.litter, [
      input('Days in the brooder', days, 'day'),
    ]),
  };
}
