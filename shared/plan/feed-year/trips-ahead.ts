import type { FarmPicture } from '../../farm/picture.js';
import { factsOfBought, type FactOf } from '../../farm/told-fact.js';
import type { Tables } from '../../tables/tables.js';
import { withStillHere } from '../left-untold.js';
import type { FedAnimals } from './feed-animals.js';
import { feedTrips, type FeedTrip } from './feed-trips.js';
import { herdPurchases, type HerdPurchase } from './herd-costs.js';
import { yearBuying, type YearBuying } from './year-buying.js';

/** What is bought for the animals of a farm in the year from today, and on which trips. */
export function boughtInYear(
  picture: FarmPicture,
  tables: Tables,
  plans: FedAnimals,
  bought: readonly FactOf<'bought'>[],
): { year: YearBuying; herds: readonly HerdPurchase[]; trips: readonly FeedTrip[] } {
  // Birds of which nobody told that they left eat what is fetched as well.
  const batches = withStillHere(plans.batches, { ...picture, tables });
  const year = yearBuying(picture, tables, batches, bought);
  const herds = herdPurchases({
    ...{ picture, tables, plan: plans.pasture, bought },
    tripDays: year.plan.trips.map(({ day }) => day),
  });
  return { year, herds, trips: feedTrips(picture, tables, year, herds) };
}

/** The trips alone, by what the picture of a farm knows of what was bought. */
export const tripsAhead = (
  picture: FarmPicture,
  tables: Tables,
  plans: FedAnimals,
): readonly FeedTrip[] =>
  boughtInYear(picture, tables, plans, [
    ...factsOfBought(picture.feedBought ?? []),
    ...(picture.herdFeedBought ?? []),
  ]).trips;
