import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { bittenStand, growOn, massOf } from '../../pasture/sward.js';
import { autumnDay, autumnShutDay } from './autumn.js';
import type { PastureContext } from './pasture-context.js';

export const stockpileFormulas = {
  stockpile: {
    id: 'stockpile-shut',
    title: 'Closed for fall grass',
    words:
      'End of growth less ten to eleven weeks: graze it down, then keep everything off. Where grass still grows on the last day of the plan, the first fall frost stands for the end of growth.',
    symbols: 'D = end of growth − 75',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
  stockpileMass: {
    id: 'stockpile-standing',
    title: 'Grass on hand when growth ends',
    words:
      'The first paddock named, grazed down to its residual and grown on day by day while it is closed.',
    symbols: 'W = W_res + Σ(grown − died off)',
    sources: ['JOUVEN_2006'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Grass that is to stand into fall: from when on it is left alone, where, and what it comes to. */
export interface StockpilePart {
  readonly shutFrom: Quantity;
  /** Those the household keeps, else those that suit it best. */
  readonly paddockIds: readonly string[];
  /** The moves of this plan leave them alone. */
  readonly isKept: boolean;
  readonly forageOnHand: NumberQuantity;
}

/**
 * Fall grass of a plan; undefined where no paddock suits it or its time has begun already.
 *
 * @param end day of the plan on which growth ends
 */
export function planStockpile(context: PastureContext, end: number): StockpilePart | undefined {
  const { span, grass, dateOf, tables, paddocks } = context;
  const { stockpile } = tables.pasture;
  const days = stockpile.daysBeforeGrowthEnds;
  const { growsKgPerHa, autumnShare } = tables.judgements.grass;
  const shut = autumnShutDay(context, span, end);
  const before = autumnDay(context, span, end);
  const cool = grass.swards
    .map((s, p) => ({ s, p }))
    .filter(({ s }) => s.forage.habit === 'cool-season')
    .sort((a, b) => b.s.forage.heights.readyHeightCm - a.s.forage.heights.readyHeightCm);
  const kept = context.choices.keepForAutumnIds ?? [];
  const picked =
    0 < kept.length
      ? paddocks.flatMap(({ id }, p) => (kept.includes(id) ? [{ p }] : []))
      : cool.slice(0, Math.max(1, Math.round(paddocks.length * autumnShare.value)));
  if (picked.length === 0 || shut <= span.from || end <= shut) return undefined;
  return {
    shutFrom: datedFact(
      'To keep grass for fall, closed from',
      dateOf(shut),
      stockpileFormulas.stockpile,
      [
        ...(before === end
          ? [input('Growth ends about', dateOf(end), 'date'), fromJudgement(growsKgPerHa)]
          : [input('First fall frost', dateOf(before), 'date')]),
        fromTable(stockpile, 'Days closed', days, 'day'),
        fromTable(stockpile, 'At least', stockpile.low, 'day'),
        fromTable(stockpile, 'At most', stockpile.high, 'day'),
        ...(0 < kept.length ? [] : [fromJudgement(autumnShare)]),
      ],
      { rows: [context.growth] },
    ),
    isKept: 0 < kept.length,
    paddockIds: picked.map(({ p }) => paddocks[p]!.id),
    forageOnHand: stockpiled(context, picked[0]!.p, shut, end),
  };
}

function stockpiled(
  { grass, dateOf, growth }: PastureContext,
  paddock: number,
  from: number,
  to: number,
): NumberQuantity {
  const { sward, paddock: own } = grass.swards[paddock]!;
  const state = bittenStand(sward.residualKgPerHa);
  for (let day = from; day < to; day++) growOn(sward, state, day);
  return quantity(
    'Grass on hand when growth ends',
    massOf(state),
    'kgPerHa',
    stockpileFormulas.stockpileMass,
    [
      input('Paddock', own.name, 'text'),
      input('Closed from', dateOf(from), 'date'),
      input('Growth ends about', dateOf(to), 'date'),
      input('Residual', sward.residualKgPerHa, 'kgPerHa', 'W_res'),
    ],
    { rows: [growth] },
  );
}
