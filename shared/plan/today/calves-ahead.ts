import type { FarmPicture } from '../../farm/picture.js';
import { calvingSeasons, type CalvingSeason } from '../../pasture/calving-season.js';
import { withNamedCows } from '../../pasture/named-cows.js';
import type { Tables } from '../../tables/tables.js';
import { listed } from '../../units/listed.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import type { ComingDate } from './coming-date.js';

type Calving = PasturePlan['keyDates']['herds'][number]['calvings'][number];

/** A calving of the plan, with what was told of it. */
interface Ahead {
  readonly herdId: string;
  readonly name: string;
  readonly calving: Calving;
  readonly season: CalvingSeason | undefined;
}

/** The calvings of all herds: the plan of the pasture knows nothing of births. */
export function calvesAhead(
  { herds, cows, calvings: told = [], today }: FarmPicture,
  tables: Tables,
  pasture: PasturePlan | undefined,
): Ahead[] {
  return (pasture?.keyDates.herds ?? []).flatMap(({ herdId, calvings }) => {
    const herd = herds.find(({ id }) => id === herdId);
    if (!herd) return [];
    const seasons = calvingSeasons(withNamedCows(herd, cows), told, today, tables);
    return calvings.map((calving) => ({
      ...{ herdId, name: herd.name, calving },
      season: seasons.find(
        ({ number, cow }) => number === calving.number && cow?.id === calving.cow?.id,
      ),
    }));
  });
}

/** Key dates of calvings of which nothing is to come any more. */
export const bornAlready = (ahead: readonly Ahead[]): ReadonlySet<string> =>
  new Set(
    ahead
      .filter(({ season }) => season && season.head <= season.calved)
      .map(
        ({ herdId, calving: { cow, number } }) =>
          `event/${herdId}/calving-${cow ? `cow-${cow.id}` : number}`,
      ),
  );

/** Calves that are weaned, each herd's of one day in one line. */
export function weanings(ahead: readonly Ahead[]): ComingDate[] {
  const days = ahead
    .filter(({ season }) => !season || !isWithoutCalf(season))
    .flatMap(({ herdId, name, calving: { weaned, cow } }) =>
      weaned ? [{ herdId, name, on: String(weaned.value), cow: cow?.name }] : [],
    );
  const keyOf = ({ herdId, on }: (typeof days)[number]): string => `weaned/${herdId}/${on}`;
  return [...new Set(days.map(keyOf))].map((key) => {
    const own = days.filter((day) => keyOf(day) === key);
    const { name, on } = own[0]!;
    const named = own.flatMap(({ cow }) => cow ?? []);
    const isNamed = named.length === own.length;
    const whose = `${isNamed && named.length === 1 ? 'calf' : 'calves'}${isNamed ? ` of ${listed(named)}` : ''}`;
    return { key, on, text: `${name}: ${whose} weaned about then`, place: { kind: 'pasture' } };
  });
}

/** None is in calf, or all have calved and no calf lived. */
const isWithoutCalf = ({ head, calved, told }: CalvingSeason): boolean =>
  head <= calved && told.every(({ calves }) => calves === 0);
