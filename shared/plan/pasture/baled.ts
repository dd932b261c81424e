import type { PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  from,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
} from '../../explain/quantity.js';
import { rowById } from '../../tables/tables.js';
import type { PastureContext } from './pasture-context.js';
import { chosenOr } from './surplus.js';

export const baledFormulas = {
  baled: {
    id: 'hay-baled',
    title: 'Hay baled already',
    words:
      'Bales that were told of mowing, since what lies in store was counted; where nothing was counted, since the season began. They weigh what a bale of your kind does.',
    symbols: 'H_baled = n·bale',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  left: {
    id: 'hay-baled-left',
    title: 'Hay baled, left',
    words:
      'Bales told since the store was counted, less what was fed of them once that store was empty.',
    symbols: 'H_baled − H_fed',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hay of bales that were told since the store was counted. */
export function baledOf(context: PastureContext): NumberQuantity | undefined {
  const { choices, mowings = [], tables } = context;
  const { baleId } = choices;
  const since = countedOn(context);
  if (since === undefined) return undefined;
  const bales = mowings.reduce((sum, each) => sum + (since < each.date ? (each.bales ?? 0) : 0), 0);
  if (bales === 0) return undefined;
  const { bales: kinds } = tables.pasture.hay;
  const bale = rowById(kinds, baleId ?? kinds.at(-1)!.id);
  return quantity('Hay baled already', bales * bale.kg, 'kg', baledFormulas.baled, [
    fromFarm('Bales told', bales, 'bales', 'n'),
    fromTable(
      chosenOr(baleId, tables.pasture.hay),
      ...([`One bale, ${bale.name}`, bale.kg, 'kg', 'bale'] as const),
    ),
  ]);
}

/** What is left of them. */
export const baledLeft = (baled: NumberQuantity, fedKg: number): NumberQuantity | undefined =>
  fedKg <= 0
    ? baled
    : baled.value <= fedKg
      ? undefined
      : quantity('Hay baled, left', baled.value - fedKg, 'kg', baledFormulas.left, [
          from(baled, 'H_baled'),
          input('Fed since the store was empty', fedKg, 'kg', 'H_fed'),
        ]);

/**
 * Day on which the store was counted, of which what came home later is no part: the first of the season
 * where none was counted; undefined where nobody knows when it was, as the bales may be among it.
 */
export const countedOn = ({
  choices: { hayInStoreKg, hayInStoreOn },
  span,
}: PastureContext): PlainDate | undefined =>
  hayInStoreKg === undefined ? span.first : hayInStoreOn;
