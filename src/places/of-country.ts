import zoneAt from '@photostructure/tz-lookup';
import currencies from 'country-to-currency';
import type { Place } from '../../shared/farm/place.js';
import type { Spot } from '../../shared/weather/climate-estimate.js';
import { holidayCountries, type HolidayCountry } from '../holidays/holidays.js';

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
  const region = found?.regions.find(({ id }) => id === division)?.id;
  return {
    timeZone: zone ?? zoneAt(spot.latitudeDeg, spot.longitudeDeg),
    units: US_UNITS.includes(country ?? '') ? 'us' : 'metric',
    currency: (currencies as Readonly<Record<string, string>>)[country ?? ''] ?? 'USD',
    ...(found === undefined ? {} : { country: found.id }),
    ...(region === undefined ? {} : { region }),
  };
}

const names = new Intl.DisplayNames('en', { type: 'region', fallback: 'none' });

export function countryName(country: string): string | undefined {
  try {
    return names.of(country);
  } catch {
    return undefined;
  }
}
