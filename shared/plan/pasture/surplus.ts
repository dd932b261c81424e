import type { PlainDate } from '../../calendar/plain-date.js';
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
import { chooseRotation, quickRotation, type Rotation } from '../../pasture/rotation.js';
import type { Paddock } from '../../farm/paddock.js';
import { hayFormulas } from '../../pasture/hay.js';
import { playSeason, type SeasonBooks } from '../../pasture/season-books.js';
import { swardOf, type Sward } from '../../pasture/sward.js';
import type { Judgements } from '../../tables/judgements.js';
import { rowById } from '../../tables/tables.js';
import { rotationProblem, type PastureContext } from './pasture-context.js';
import { dateAt } from './pasture-span.js';

export const surplusFormulas = {
  bales: {
    id: 'bales',
    title: 'Bales',
    words: 'Hay divided by the weight of one bale, rounded up.',
    symbols: 'n = ⌈H ÷ bale⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Grass that outruns the herds, and when to mow it. */
export interface Surplus {
  readonly paddockId: string;
  readonly shutFrom: string;
  readonly cutOn: string;
  readonly hay: NumberQuantity;
  readonly bales: NumberQuantity;
}

/** The order of stays, with the paddocks that are better mown than grazed rank. */
export interface Chosen {
  readonly rotation: Rotation;
  readonly swards: readonly Sward[];
  readonly books: SeasonBooks;
}

interface Worth {
  readonly score: number;
  /** Feed the herds need besides grass. */
  readonly feedKg: number;
  readonly books: SeasonBooks;
}

const MOST_CUTS = 6;
/** Sums of the same feed in another order differ by no more. */
const ROUNDING_KG = 1;

/**
 * Finds the order of stays, mowing paddocks whose grass would be rank before a herd comes.
 *
 * Each paddock that turns rank is tried in turn, earliest first; a cut stays when the hay it gives
 * is worth more than it costs in grazing.
 */
export function chooseWithCuts(context: PastureContext, width?: number): Chosen {
  let swards: readonly Sward[] = context.grass.swards.map((each) => each.sward);
  const { grazing } = context.tables.judgements;
  const worthOf = (tried: readonly Sward[]): Worth => {
    const problem = rotationProblem(context, { swards: tried });
    const rotation = quickRotation(problem);
    const books = playSeason(problem, rotation.stays);
    const share = context.tables.pasture.hay.harvestShare;
    const hay = books.mown.reduce((sum, cut) => sum + cut.kg * share, 0);
    return { score: rotation.costKg - grazing.hayWorth.value * hay, feedKg: feedOf(books), books };
  };
  let best = worthOf(swards);
  const feedWithoutKg = best.feedKg;
  const refused = new Set<number>();
  for (let cuts = 0; cuts < MOST_CUTS; cuts++) {
    const next = firstRank(context, swards, best.books, refused);
    if (!next) break;
    const tried = swards.map((sward, p) =>
      p === next.paddock ? withCut(sward, next.day, best.books, { paddock: p, grazing }) : sward,
    );
    const found = worthOf(tried);
    // Grass that is mown must not be missed later: hay is no gain that has to be fed back.
    if (found.score < best.score && found.feedKg <= feedWithoutKg + ROUNDING_KG) {
      best = found;
      swards = tried;
    } else {
      refused.add(next.paddock);
    }
  }
  const chosen = chooseFor(context, swards, width);
  const uncut = context.grass.swards.map((each) => each.sward);
  if (chosen.books.mown.length === 0) return chosen;
  // The narrow trials can be wrong: with a full search the cuts must still not be missed.
  const without = chooseFor(context, uncut, width);
  return feedOf(chosen.books) <= feedOf(without.books) + ROUNDING_KG ? chosen : without;
}

function chooseFor(context: PastureContext, swards: readonly Sward[], width?: number): Chosen {
  const problem = rotationProblem(context, { swards });
  const rotation = chooseRotation(problem, width);
  return { rotation, swards, books: playSeason(problem, rotation.stays) };
}

/** Feed the herds need besides grass, kg. */
const feedOf = ({ hayKg }: SeasonBooks): number =>
  hayKg.reduce((sum, days) => sum + days.reduce((a, b) => a + b, 0), 0);

function firstRank(
  { span, paddocks }: PastureContext,
  swards: readonly Sward[],
  books: SeasonBooks,
  refused: ReadonlySet<number>,
): { paddock: number; day: number } | undefined {
  let first: { paddock: number; day: number } | undefined;
  swards.forEach((sward, paddock) => {
    if (refused.has(paddock) || 0 < sward.cutDays.length) return;
    const mass = books.massKgPerHa[paddock]!;
    for (let day = span.from; day < span.to; day++) {
      if (mass[day]! <= sward.rankKgPerHa || isLeftAlone(paddocks[paddock]!, dateAt(span, day)))
        continue;
      if (!first || day < first.day) first = { paddock, day };
      break;
    }
  });
  return first;
}

/** Ground that is shut for something else than hay is not mown; grass kept for fall not at all. */
const isLeftAlone = ({ closedDays: closed }: Paddock, on: PlainDate): boolean =>
  closed.some(
    ({ why, from, to }) => why !== 'hay' && from <= on && (why === 'stockpile' || on <= to),
  );

function withCut(
  sward: Sward,
  day: number,
  books: SeasonBooks,
  { paddock, grazing }: { paddock: number; grazing: Judgements['grazing'] },
): Sward {
  const isClosed = Uint8Array.from(sward.isClosed);
  const left = books.stays.findLast((s) => s.paddock === paddock && s.from + s.days <= day);
  const from = Math.max(left ? left.from + left.days : 0, day - grazing.shutBeforeDays.value);
  for (let i = from; i < Math.min(isClosed.length, day + grazing.dryingDays.value); i++)
    isClosed[i] = 1;
  return swardOf({ ...sward, isClosed, cutDays: [day] });
}

/** Every cut of the plan as hay and bales. */
export function surplusOf(context: PastureContext, { books, swards }: Chosen): Surplus[] {
  const { hay } = context.tables.pasture;
  const { grazing } = context.tables.judgements;
  return books.mown
    .filter((cut) => 0 < cut.kg)
    .sort((a, b) => a.day - b.day)
    .map(({ paddock, day, kg }): Surplus => {
      const { paddock: own, kgPerHaCm } = context.grass.swards[paddock]!;
      const sward = swards[paddock]!;
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
          fromJudgement(grazing.shutBeforeDays),
        ],
        { rows: [context.order] },
      );
      let shut = day;
      while (0 < shut && sward.isClosed[shut - 1] === 1) shut--;
      return {
        paddockId: own.id,
        shutFrom: context.dateOf(shut),
        cutOn: context.dateOf(day),
        hay: amount,
        bales: balesOf(context, amount, `Bales from ${own.name}`),
      };
    });
}

/** A row that was chosen; where nobody chose, that it is this one is assumed. */
export const chosenOr = (chosenId: string | undefined, { sources, mark }: Sourced): Sourced => ({
  sources,
  mark: chosenId === undefined ? weakestMark(mark, 'assumed') : mark,
});

/** Bales of the household's kind in an amount of hay. */
export function balesOf(
  { tables, choices }: PastureContext,
  hay: NumberQuantity,
  label: string,
): NumberQuantity {
  const { bales } = tables.pasture.hay;
  const bale = rowById(bales, choices.baleId ?? bales.at(-1)!.id);
  return quantity(label, Math.ceil(hay.value / bale.kg - 1e-9), 'bales', surplusFormulas.bales, [
    from(hay, 'H'),
    fromTable(
      chosenOr(choices.baleId, tables.pasture.hay),
      ...([`One bale, ${bale.name}`, bale.kg, 'kg'] as const),
    ),
  ]);
}
