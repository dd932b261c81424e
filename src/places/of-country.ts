import zoneAt from '@photostructure/tz-lookup';
import currencies from 'country-to-currency';
import type { Place } from '../../shared/farm/place.js';
import type { Spot } from '../../shared/weather/climate-estimate.js';
import { holidayCountries, type HolidayCountry } from '../holidays/holidays.js';
import { fold } from './fold.js';
import { regionName } from './regions.js';

/** Countries that measure in feet and pounds. */
const US_UNITS = ['US', 'LR', 'MM'];

let known: readonly HolidayCountry[] | undefined;

type OfCountry = Pick<Place, 'country' | 'region' | 'timeZone' | 'units' | 'currency'>;

/** Time zone, units, currency and holidays of a spot, by the country it lies in. */
export function ofCountry(
  spot: Spot,
  country: string | undefined,
  division: string | undefined,
  zone?: string,
): OfCountry {
  known ??= holidayCountries();
  const found = known.find(({ id }) => id === country);
  const region = found && regionOf(found, division ?? '');
  return {
    timeZone: zone ?? zoneAt(spot.latitudeDeg, spot.longitudeDeg),
    units: US_UNITS.includes(country ?? '') ? 'us' : 'metric',
    currency: (currencies as Readonly<Record<string, string>>)[country ?? ''] ?? 'USD',
    ...(found === undefined ? {} : { country: found.id }),
    ...(region === undefined ? {} : { region }),
  };
}

/** The region whose holidays count: by its letters where the list of towns has them, else by name. */
function regionOf({ id: country, regions }: HolidayCountry, division: string): string | undefined {
  const name = fold(regionName(country, division) ?? '');
  return regions.find((region) =>
    /^[A-Z]/.test(division) ? region.id === division : fold(region.name) === name,
  )?.id;
}
