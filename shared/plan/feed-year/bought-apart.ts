import type { PlainDate } from '../../calendar/plain-date.js';
import type { FeedTrip } from './feed-trips.js';
import type { HerdPurchase } from './herd-costs.js';

/** What is bought for cattle on a day on which nobody goes for feed. */
export interface BoughtApart {
  readonly on: PlainDate;
  readonly name: string;
  readonly kind: HerdPurchase['kind'];
  readonly count: number;
  /** Smallest coins; 0 where it has no price. */
  readonly minor: number;
}

/** What no trip takes along, by day. */
export function boughtApart(
  herds: readonly HerdPurchase[],
  trips: readonly FeedTrip[],
): BoughtApart[] {
  const isTaken = (name: string, on: PlainDate): boolean =>
    trips.some((trip) => trip.on.value === on && trip.along.some((each) => each.name === name));
  return herds
    .flatMap(({ name, kind, paid }) =>
      paid
        .filter(({ on }) => !isTaken(name, on))
        .map(({ on, amount, minor }): BoughtApart => ({ on, name, kind, count: amount, minor })),
    )
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}
