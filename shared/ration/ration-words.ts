import {
  formatMoney,
  formatPrice,
  formatValue,
  minorDigits,
  type Reader,
} from '../units/format.js';
import { listed } from '../units/listed.js';
import type { Nutrient } from '../tables/ration-tables.js';
import { NONE, type LeastCost } from './least-cost.js';
import type { Missed } from './conflicts.js';
import type { MixFeed } from './mix-feed.js';
import { NUTRIENT_NAMES, unitOf } from './nutrients.js';
import type { NutrientLimit } from './nutrient-limits.js';

/** A figure of the tables as the household reads it: 21 %, 1,320 kcal/lb. */
export const sayNutrient = (nutrient: Nutrient, value: number, reader: Reader): string =>
  formatValue(value, unitOf(nutrient), reader);

/** A price below this part of what it costs now is no price that it comes to. */
const NO_LIKELY_PRICE = 0.25;

const sayBag = (feed: MixFeed, reader: Reader): string =>
  formatValue(feed.bagKg, 'kg', reader).replace(' ', '-');

/** What the price of a feed decides: when it would be used, or what keeps more of it out. */
export function sayPrices(
  feeds: readonly MixFeed[],
  { shares, fallsBy }: LeastCost,
  reader: Reader,
): string[] {
  const { currency } = reader;
  return feeds.flatMap((feed, i) => {
    const share = shares[i]!;
    if (share <= NONE && 0 < fallsBy[i]! && 0 < feed.most) {
      if (feed.what === 'mineral') return [];
      const minor = Math.floor((feed.minorPerKg - fallsBy[i]!) * feed.bagKg);
      const now = formatPrice(feed.price, currency);
      return minor <= NO_LIKELY_PRICE * feed.minorPerKg * feed.bagKg
        ? `No ${lower(feed.name)}: the mix does without, whatever it costs.`
        : `${feed.name} would have to fall to ${formatMoney(minor, currency)} a ${sayBag(feed, reader)} bag to be used (now ${now}).`;
    }
    if (feed.limit && feed.most === 0)
      return `No ${lower(feed.name)}: ${lower(feed.limit.because)}`;
    if (feed.least < feed.most && feed.most - NONE < share && fallsBy[i]! < -NONE) {
      const why = feed.limit ? lower(feed.limit.because) : 'your own limit.';
      return `More ${lower(feed.name)} would make it cheaper, but ${formatValue(feed.most, 'share', reader)} is the most: ${why}`;
    }
    return [];
  });
}

/** Below this a tenth more of something costs nothing to speak of, smallest coins on a batch. */
const SPOKEN_OF = 0.5;

/** What the limits cost that hold the mix: the dearest first. */
export function sayLimits(
  limits: readonly NutrientLimit[],
  { worths }: LeastCost,
  batchKg: number,
  reader: Reader,
): string[] {
  const batch = formatValue(batchKg, 'kg', reader);
  return limits
    .map(({ nutrient, side, value }, k) => ({
      nutrient,
      side,
      minor: Math.abs(worths[k]!) * 0.1 * value * batchKg,
    }))
    .filter(({ minor }) => SPOKEN_OF < minor)
    .sort((a, b) => b.minor - a.minor)
    .map(({ nutrient, side, minor }) => {
      const name = lower(NUTRIENT_NAMES[nutrient]);
      const money = formatMoney(Math.round(minor), reader.currency);
      return side === 'least'
        ? `A tenth more ${name} would cost about ${money} on ${batch}.`
        : `A tenth more ${name} allowed would save about ${money} on ${batch}.`;
    });
}

/** What a mix of these cannot do, and by how much. */
export function sayMissed(missed: readonly Missed[], reader: Reader): string[] {
  return missed.map(({ nutrient, side, asked, held }) => {
    const name = NUTRIENT_NAMES[nutrient];
    const [need, has] = [asked, held].map((value) => sayNutrient(nutrient, value, reader));
    return side === 'least'
      ? `${name}: it should hold ${need}, and comes to ${has}.`
      : `${name}: it may hold ${need} at most, and comes to ${has}.`;
  });
}

/** Why what there is cannot fill a mix. */
export function sayRoom(feeds: readonly MixFeed[], reader: Reader): string {
  const share = (value: number): string => formatValue(value, 'share', reader);
  const fixed = feeds.reduce((sum, { least }) => sum + least, 0);
  if (1 < fixed) return `What labels tell to put in comes to ${share(fixed)} of the mix.`;
  const held = feeds
    .filter(({ most }) => most < 1)
    .map(({ name, most }) => `${lower(name)} ${share(most)}`);
  const all = feeds.reduce((sum, { most }) => sum + most, 0);
  return `All you have may make up ${share(all)} of a mix: at most ${listed(held)}.`;
}

/** The name within a sentence: what begins with a letter of its own (DL-methionine) stays. */
const lower = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name[0]!.toLowerCase() + name.slice(1) : name;

export const lowerName = lower;

/** Smallest coins of a price of decimal text, with decimals. */
export const minorOf = (price: string, currency: string): number =>
  Number(price) * 10 ** minorDigits(currency);
