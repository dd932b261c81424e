import { useQuery } from '@tanstack/react-query';
import type { EstimateAnswer } from '../../../shared/farm/estimated-climate.js';
import type { PlacesFound, Point } from '../../../shared/farm/place.js';
import type { Start, StartUsual } from '../../../shared/farm/start.js';
import { getJson, postJson } from './client.js';
import { useChange, type SavedFarm } from './queries.js';

interface Spot {
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
}

const queryOf = (asked: object): string =>
  new URLSearchParams(
    Object.entries(asked).map(([name, value]): [string, string] => [name, String(value)]),
  ).toString();

const yesNo = (isAllowed: boolean): string => (isAllowed ? 'yes' : 'no');

/** Places by name, those of this device's country first; online only where the household agrees. */
export function findPlaces(name: string, isOnline: boolean): Promise<PlacesFound> {
  const country = new Intl.Locale(navigator.language).region;
  return getJson<PlacesFound>(
    `/places?${queryOf({
      name,
      online: yesNo(isOnline),
      ...(country !== undefined && /^[A-Z]{2}$/.test(country) ? { homeCountry: country } : {}),
    })}`,
  );
}

/** What follows from where a spot lies. */
export const findPoint = (spot: Spot, isOnline: boolean): Promise<Point> =>
  getJson<Point>(`/places/at?${queryOf({ ...spot, online: yesNo(isOnline) })}`);

/** The climate of a place as the service estimates it; not asked while the place is not known. */
export const useEstimate = (place: (Spot & { readonly elevationM: number }) | undefined) =>
  useQuery({
    queryKey: ['climate-estimate', place],
    queryFn: () => getJson<EstimateAnswer>(`/climate-estimate?${queryOf(place!)}`),
    enabled: place !== undefined,
    staleTime: Infinity,
  });

/** What a start takes where nobody says it. */
export const useStartUsual = () =>
  useQuery({
    queryKey: ['start-usual'],
    queryFn: () => getJson<StartUsual>('/start-usual'),
    staleTime: Infinity,
  });

export const useStartFarm = () =>
  useChange((start: Start) => postJson<SavedFarm>('/farms/start', start));
