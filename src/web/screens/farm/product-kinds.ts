import type {
  EarlierPrice,
  NutrientTag,
  PriceBreak,
} from '../../../../shared/farm/feed-product.js';
import type { FeedProduct, Product, ProductKind } from '../../../../shared/farm/product.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usualBagKg } from '../../../../shared/tables/usual-bag.js';
import { sayPrice } from '../../../../shared/money/unit-price.js';
import { formatPrice, formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';

/** A product while it is being typed: anything may still be missing. */
export interface ProductDraft {
  readonly id?: string | undefined;
  readonly kind: ProductKind;
  readonly name?: string | undefined;
  readonly phaseIds?: readonly string[] | undefined;
  readonly feedFor?: 'meat' | 'layers' | undefined;
  readonly bagKg?: number | undefined;
  readonly supplierId?: string | undefined;
  readonly form?: FeedProduct['form'] | undefined;
  readonly priceBreaks?: readonly Partial<PriceBreak>[] | undefined;
  readonly earlierPrices?: readonly EarlierPrice[] | undefined;
  readonly mayCost?: Partial<NonNullable<FeedProduct['mayCost']>> | undefined;
  readonly keepsDays?: number | undefined;
  readonly withdrawalDays?: number | undefined;
  readonly tag?: NutrientTag | undefined;
  readonly storeBags?: number | undefined;
  readonly storeOn?: string | undefined;
  readonly eatenGPerDay?: number | undefined;
  readonly strainId?: string | undefined;
  readonly opensToM3?: number | undefined;
  readonly usedFor?: 'meat' | 'layers' | undefined;
  readonly years?: number | undefined;
  readonly batchesAYear?: number | undefined;
  readonly fromDressedKg?: number | undefined;
  readonly price?: string | undefined;
}

export const PRODUCT_KINDS: readonly { readonly kind: ProductKind; readonly name: string }[] = [
  { kind: 'feed', name: 'Feed' },
  { kind: 'chicks', name: 'Chicks' },
  { kind: 'bedding', name: 'Bedding' },
  { kind: 'processing', name: 'Processing for hire' },
  { kind: 'ice', name: 'Ice' },
  { kind: 'freezer-bags', name: 'Freezer bags' },
  { kind: 'trip', name: 'Trips' },
  { kind: 'gear', name: 'Gear that lasts' },
  { kind: 'own-hour', name: 'An hour of your own' },
  { kind: 'meat', name: 'What meat brings' },
  { kind: 'hay', name: 'Hay' },
  { kind: 'minerals', name: 'Minerals and salt' },
];

/** Every feed phase there is, each once, under the name it has first. */
export const feedPhases = ({ feedPrograms }: Tables): { id: string; name: string }[] => [
  ...new Map(
    feedPrograms.flatMap(({ phases }) => phases).map(({ id, name }) => [id, { id, name }]),
  ).values(),
];

/** A new product of a kind; a bag of feed begins with the usual size. */
export const emptyProduct = (
  kind: ProductKind,
  tables: Tables,
  farm: Pick<SavedFarm, 'units'>,
): ProductDraft =>
  kind === 'feed'
    ? { kind, name: '', phaseIds: [], bagKg: usualBagKg(tables, farm) }
    : kind === 'minerals'
      ? { kind, name: '', bagKg: usualBagKg(tables, farm) }
      : { kind, name: '' };

/** What is known of a product in a few words: for what it is, its size and its price. */
export function aboutProduct(product: Product, tables: Tables, farm: SavedFarm): string {
  const price = formatPrice(product.price, farm.currency);
  if (product.kind === 'feed') {
    const phases = feedPhases(tables)
      .filter(({ id }) => product.phaseIds.includes(id))
      .map(({ name }) => name.toLowerCase());
    const birds =
      product.feedFor === undefined ? '' : product.feedFor === 'meat' ? ', meat birds' : ', layers';
    const steps = (product.priceBreaks ?? []).map(
      ({ fromBags, price: each }) => `, ${formatPrice(each, farm.currency)} from ${fromBags}`,
    );
    return `${price} a bag of ${formatValue(product.bagKg, 'kg', farm)}${steps.join('')} · ${phases.join(', ')}${birds}`;
  }
  if (product.kind === 'gear') {
    const batches = product.batchesAYear === 1 ? 'batch' : 'batches';
    return `${price} over ${product.years} years, ${product.batchesAYear} ${batches} a year`;
  }
  if (product.kind === 'meat') {
    const from =
      product.fromDressedKg === undefined
        ? ''
        : ` from ${formatValue(product.fromDressedKg, 'kg', farm)}`;
    return `${sayPrice(product.price, 'kg', farm)}, dressed${from}`;
  }
  if (product.kind === 'hay') return `${price} a bale`;
  if (product.kind === 'minerals') return `${price} for ${formatValue(product.bagKg, 'kg', farm)}`;
  if (product.kind !== 'chicks') return price;
  const strain = tables.strains.find(({ id }) => id === product.strainId)?.name;
  return `${price} · ${strain ?? 'any breed'}`;
}
