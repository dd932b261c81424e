import {
  fromFarm,
  fromTable,
  from,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../explain/quantity.js';
import type { FeedProduct, Product } from '../farm/product.js';
import { feedOf } from '../plan/prices.js';
import { rowById, type Tables } from '../tables/tables.js';
import type { BirdsToFeed, NeedStage } from '../tables/ration-tables.js';
import { formatMoney, formatValue, type Reader } from '../units/format.js';
import type { MixFeed } from './mix-feed.js';
import { rationFormulas } from './ration-formulas.js';
import { lowerName, minorOf } from './ration-words.js';

/** The mix beside the feed that the farm buys for the same birds. */
export interface AgainstBought {
  readonly product: string;
  readonly bagKg: number;
  /** What a bag costs. */
  readonly bought: NumberQuantity;
  /** What the mix costs that gives the growth of such a bag. */
  readonly likeBag: NumberQuantity;
  readonly isCheaper: boolean;
  readonly words: string;
}

interface Mixed {
  readonly perKg: NumberQuantity;
  readonly energy: NumberQuantity;
  readonly batchKg: number;
  readonly parts: readonly { readonly feed: MixFeed; readonly share: number }[];
}

/** Whether mixing beats buying, and if not, why; nothing where no feed of that phase has a price. */
export function againstBought(
  mixed: Mixed,
  of: { readonly birds: BirdsToFeed; readonly stage: NeedStage },
  { products, tables, reader }: { products: readonly Product[]; tables: Tables; reader: Reader },
): AgainstBought | undefined {
  const phaseId = of.stage.phaseIds.find((id) => feedOf(products, of.birds.feedFor, id));
  const product = phaseId && feedOf(products, of.birds.feedFor, phaseId);
  if (!phaseId || !product) return undefined;
  const { bagKg } = product;
  const bought = quantity(
    `A bag of ${product.name}`,
    minorOf(product.price, reader.currency),
    'money',
    rationFormulas.bought,
    [fromFarm('One bag', bagKg, 'kg')],
  );
  const energy = energyOf(product, phaseId, of.birds, tables);
  const likeBag = quantity(
    'Your mix, for the growth of a bag',
    (mixed.perKg.value * bagKg * energy.value) / mixed.energy.value,
    'money',
    rationFormulas.likeBag,
    [
      from(mixed.perKg, 'c'),
      fromFarm('One bag', bagKg, 'kg', 'm'),
      from(mixed.energy, 'E'),
      energy.input,
    ],
  );
  const [own, theirs] = [likeBag.value / bagKg, bought.value / bagKg];
  const isCheaper = own < theirs;
  const words = (isCheaper ? saysCheaper : saysDearer)(own, theirs, mixed, reader);
  return { product: product.name, bagKg, bought, likeBag, isCheaper, words };
}

/** Energy of a bought feed: of its tag, else what the table of programs gives for the phase. */
function energyOf(
  { tag }: FeedProduct,
  phaseId: string,
  birds: BirdsToFeed,
  tables: Tables,
): { readonly value: number; readonly input: QuantityInput } {
  const own = tag?.energyKcalPerKg;
  const label = 'Energy of the bought feed';
  if (own !== undefined)
    return { value: own, input: fromFarm(label, own, 'kcalPerKg', 'E_bought') };
  const { feedProgram } = rowById(tables.strains, birds.strainIds[0]!);
  const usual = rowById(tables.feedPrograms, feedProgram[birds.feedFor]!);
  // A feed that is bought can be of another list of feeds than the strain's usual one.
  const row = [usual, ...tables.feedPrograms].find(({ phases }) =>
    phases.some(({ id }) => id === phaseId),
  )!;
  const value = rowById(row.phases, phaseId).energyKcalPerKg;
  return { value, input: fromTable(row, label, value, 'kcalPerKg', 'E_bought') };
}

function saysCheaper(own: number, bought: number, { batchKg }: Mixed, reader: Reader): string {
  const saved = formatMoney(Math.round((bought - own) * batchKg), reader.currency);
  return `Mixing saves about ${saved} on ${formatValue(batchKg, 'kg', reader)}, before your time and grinding.`;
}

function saysDearer(
  own: number,
  bought: number,
  { parts, batchKg }: Mixed,
  reader: Reader,
): string {
  const { currency } = reader;
  const lost = formatMoney(Math.round((own - bought) * batchKg), currency);
  const dearest = parts.reduce((a, b) =>
    a.share * a.feed.minorPerKg < b.share * b.feed.minorPerKg ? b : a,
  );
  const costs = parts.reduce((sum, { feed, share }) => sum + share * feed.minorPerKg, 0);
  const part = formatValue((dearest.share * dearest.feed.minorPerKg) / costs, 'share', reader);
  const evenMinor =
    (dearest.feed.minorPerKg - (costs * (1 - bought / own)) / dearest.share) * dearest.feed.bagKg;
  const even =
    evenMinor <= 0
      ? ''
      : ` It would be even with ${lowerName(dearest.feed.name)} at ${formatMoney(Math.floor(evenMinor), currency)} a bag.`;
  return `Buying is cheaper by about ${lost} on ${formatValue(batchKg, 'kg', reader)}: ${lowerName(dearest.feed.name)} alone is ${part} of what the mix costs.${even}`;
}

/** A batch of so much is the household's own choice. */
export const batchInput = (batchKg: number) => fromFarm('Mixed at once', batchKg, 'kg', 'M');
