import type { FeedItem, Offer, StockLot } from '../../shared/buying/buying-problem.js';
import { drawIndex, type Random } from '../../shared/schedule/random.js';
import { costOfTiers, type PricedProblem, type Tiers } from './buying-program.js';

export interface FeedsSize {
  readonly days: number;
  readonly suppliers: number;
  readonly items: number;
  /** Offers of one item at most. */
  readonly offers: number;
  readonly handDays: number;
  /** Days that feed keeps at least; up to as many again. */
  readonly keepsDays: number;
  /** A store for so many kilograms; left out, nobody knows. */
  readonly storeKg?: number;
  readonly stock?: boolean;
  /** Prices go by all bags of a trip. */
  readonly countsTogether?: boolean;
}

/** Invented feeds, seasons, prices and suppliers. */
export function randomFeeds(random: Random, size: FeedsSize): PricedProblem {
  const { days, handDays, storeKg = Infinity } = size;
  const suppliers = Array.from({ length: size.suppliers }, () => {
    const lead = drawIndex(random, 3);
    const share = 0.4 + 0.6 * random();
    return {
      ...(size.countsTogether ? { countsTogether: true } : {}),
      tripCost: 200 + 100 * drawIndex(random, 20),
      days: Uint8Array.from({ length: days }, (_, day) =>
        lead <= day && random() < share ? 1 : 0,
      ),
    };
  });
  const tiers: Tiers[][] = [];
  const items = Array.from({ length: size.items }, (): FeedItem => {
    const from = drawIndex(random, Math.ceil(days / 2));
    const to = from + 3 + drawIndex(random, days - from);
    const each = 1 + 6 * random();
    const keepsDays = size.keepsDays + drawIndex(random, size.keepsDays);
    const mine: Tiers[] = [];
    const offers = Array.from({ length: 1 + drawIndex(random, size.offers) }, (): Offer => {
      const price = 2000 + 10 * drawIndex(random, 80);
      const fromBags = 2 + drawIndex(random, 6);
      const steps: Tiers =
        random() < 0.5
          ? [{ fromBags: 0, each: price }]
          : [
              { fromBags: 0, each: price },
              { fromBags, each: price - 20 - 10 * drawIndex(random, 20) },
            ];
      mine.push(steps);
      return {
        supplier: drawIndex(random, size.suppliers),
        bagKg: [10, 20, 25][drawIndex(random, 3)]!,
        keepsDays,
        breaks: steps.slice(1).map((step) => step.fromBags),
        costOf: costOfTiers(steps),
      };
    });
    tiers.push(mine);
    const stock: StockLot[] =
      size.stock && random() < 0.5
        ? [{ kg: 5 + drawIndex(random, 30), untilDay: drawIndex(random, keepsDays) }]
        : [];
    return {
      needKg: Float64Array.from({ length: days }, (_, day) =>
        from <= day && day < to ? Math.round(10 * each * (0.7 + 0.6 * random())) / 10 : 0,
      ),
      stock,
      offers,
    };
  });
  return { problem: { days, suppliers, items, storeKg, handDays }, tiers };
}
