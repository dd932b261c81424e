import { weakestMark, type Formula, type Sourced } from '../../explain/formula.js';
import {
  from,
  fromFarm,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import { graze } from '../../pasture/grazier.js';
import type { GrazingProblem } from '../../pasture/grazing-problem.js';
import { hayFormulas } from '../../pasture/hay.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { grazingProblem, type PastureContext } from './pasture-context.js';

export const surplusFormulas = {
  bales: {
    id: 'bales',
    title: 'Bales',
    words:
      'The hay named below (H), with what is lost in store and at feeding where it is to be fed, divided by the weight of one bale: what is needed rounded up to whole bales, what is made to the nearest.',
    symbols: 'n = ⌈H ÷ m_bale⌉ needed, ⌊H ÷ m_bale + ½⌋ made',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Grass that outruns the herds, and when to mow it. */
export interface Surplus {
  readonly paddockId: string;
  readonly shutFrom: string;
  /** First day of the days that its work has: the plan of the work lays the dry one. */
  readonly mowFrom: string;
  /** Day on which the plan of the grass counts it as mown: the first that it is ready, or today. */
  readonly cutOn: string;
  readonly hay: NumberQuantity;
  readonly bales: NumberQuantity;
}

/** The season as it is grazed. */
export interface Chosen {
  readonly problem: GrazingProblem;
  readonly books: SeasonBooks;
}

/** Walks through the season of a farm. */
export function chooseMoves(context: PastureContext): Chosen {
  const problem = grazingProblem(context);
  return {
    problem,
    books: graze(problem, context.choices.makesHay === false ? 'tops' : 'looks-ahead'),
  };
}

/** Every cut of the plan as hay and bales. */
export function surplusOf(context: PastureContext, { books }: Chosen): Surplus[] {
  const { hay } = context.tables.pasture;
  const { grazing } = context.tables.judgements;
  return books.cuts
    .filter((cut) => 0 < cut.kg)
    .map(({ paddock, shutFrom, goFrom, day, kg }): Surplus => {
      const { paddock: own, kgPerHaCm, sward } = context.grass.swards[paddock]!;
      const amount = quantity(
        `Hay from ${own.name}`,
        (kg * hay.harvestShare) / hay.dryMatterShare,
        'kg',
        hayFormulas.cut,
        [
          fromFarm('Area', own.areaM2, 'ha', 'A'),
          input('Grass on hand', kg / sward.areaHa + sward.stubbleKgPerHa, 'kgPerHa', 'W'),
          fromTable(hay, 'Cutting height', sward.stubbleKgPerHa / kgPerHaCm, 'cm'),
          fromTable(hay, 'Brought home', hay.harvestShare, 'share', 's'),
          fromTable(hay, 'Dry share of hay', hay.dryMatterShare, 'share', 'dm'),
          fromJudgement(grazing.lookAheadDays),
          fromJudgement(grazing.leastCutKgPerHa),
          fromJudgement(grazing.hayGrowsDays),
          fromJudgement(grazing.rankHayShare),
        ],
        { rows: [context.order] },
      );
      return {
        paddockId: own.id,
        shutFrom: context.dateOf(shutFrom),
        mowFrom: context.dateOf(goFrom),
        cutOn: context.dateOf(day),
        hay: amount,
        bales: balesMade(context, amount, `Bales from ${own.name}`),
      };
    });
}

/** A row that was chosen; where nobody chose, that it is this one is assumed. */
export const chosenOr = (chosenId: string | undefined, { sources, mark }: Sourced): Sourced => ({
  sources,
  mark: chosenId === undefined ? weakestMark(mark, 'assumed') : mark,
});

/** Bales of the household's kind that an amount of hay is needed in: a part of one is a whole one to buy. */
export const balesOf = (
  context: PastureContext,
  hay: NumberQuantity,
  label: string,
): NumberQuantity => baled(context, hay, label, (bales) => Math.ceil(bales - 1e-9));

/** And that an amount is made into: eight paddocks that give two and a bit give no eight bales more. */
export const balesMade = (
  context: PastureContext,
  hay: NumberQuantity,
  label: string,
): NumberQuantity => baled(context, hay, label, Math.round);

/** The kind of bale that the household makes and buys. */
export const baleOf = ({ tables, choices }: PastureContext): Bale => {
  const { bales } = tables.pasture.hay;
  return rowById(bales, choices.baleId ?? bales.at(-1)!.id);
};
type Bale = Tables['pasture']['hay']['bales'][number];

function baled(
  context: PastureContext,
  hay: NumberQuantity,
  label: string,
  whole: (bales: number) => number,
): NumberQuantity {
  const { tables, choices } = context;
  const bale = baleOf(context);
  return quantity(label, whole(hay.value / bale.kg), 'bales', surplusFormulas.bales, [
    from(hay, 'H'),
    fromTable(
      chosenOr(choices.baleId, tables.pasture.hay),
      ...([`One bale, ${bale.name}`, bale.kg, 'kg', 'm_bale'] as const),
    ),
  ]);
}
