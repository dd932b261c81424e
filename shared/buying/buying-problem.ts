/** Where feed is bought, and on which days somebody can go there or a delivery can come. */
export interface SupplierDays {
  /** Of one trip or delivery, smallest coins, however much is bought on it. */
  readonly tripCost: number;
  /** By day from today, 1 where a trip is possible; days before the lead time is over are 0. */
  readonly days: Uint8Array;
  /** Its prices go by the bags of all feeds of a trip together. */
  readonly countsTogether?: boolean;
}

/** One feed of one supplier that serves an item. */
export interface Offer {
  readonly supplier: number;
  readonly bagKg: number;
  /** Days after the trip on which it is still fed. */
  readonly keepsDays: number;
  /** Bags from which a lower price for all bags holds, rising; empty where there is one price. */
  readonly breaks: readonly number[];
  /**
   * What so many whole bags of one trip cost, smallest coins; at the price of more bags where all of
   * the trip count.
   */
  readonly costOf: (bags: number, pricedAsBags?: number) => number;
}

/** Feed that lies in the store today. */
export interface StockLot {
  readonly kg: number;
  /** Last day from today on which it is fed; below 0 it is stale. */
  readonly untilDay: number;
}

/** One kind of feed: what is fed of it day by day, what there is, and where it is sold. */
export interface FeedItem {
  /** By day from today. */
  readonly needKg: Float64Array;
  readonly stock: readonly StockLot[];
  /**
   * By day, the first from today on which what is fed then is bought, while there is a later trip in time;
   * as early as it keeps if left out.
   */
  readonly notBefore?: Int32Array;
  readonly offers: readonly Offer[];
}

/** Whole bags of one feed that were ordered for a trip: they stand, whatever is needed since. */
export interface Ordered extends Trip {
  readonly item: number;
  readonly offer: number;
  readonly bags: number;
}

/** What is to be bought on which day, so that nothing runs out. Days count from today, day 0. */
export interface BuyingProblem {
  readonly days: number;
  readonly suppliers: readonly SupplierDays[];
  readonly items: readonly FeedItem[];
  /** All feed that the store takes, kg; Infinity where nobody knows. */
  readonly storeKg: number;
  /** Feed is bought so many days before it is needed, where it can be. */
  readonly handDays: number;
  readonly ordered?: readonly Ordered[];
}

export interface Trip {
  readonly supplier: number;
  readonly day: number;
}

/** Whole bags of one feed on one trip. */
export interface Purchase extends Trip {
  readonly item: number;
  readonly offer: number;
  readonly bags: number;
  readonly cost: number;
  /** Bought beyond what can be fed before it is stale, kg: of a last bag, or to reach a lower price. */
  readonly wasteKg: number;
}

/** What a plan of buying costs and does, smallest coins and kg. */
export interface BuyingPlan {
  readonly trips: readonly Trip[];
  readonly purchases: readonly Purchase[];
  readonly feedCost: number;
  readonly tripCost: number;
  readonly cost: number;
  /** Needs that nothing can be bought for in time. */
  readonly short: readonly { readonly item: number; readonly day: number; readonly kg: number }[];
  /** Over what the store takes on the worst day. */
  readonly overKg: number;
}
