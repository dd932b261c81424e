import { createRequire } from 'node:module';
import type { Spot } from '../../shared/weather/climate-estimate.js';
import { fold } from './fold.js';

/** A place of the United States that has a post office, be it too small for the list of towns. */
export interface PostTown extends Spot {
  readonly name: string;
  /** Postal letters of its state. */
  readonly state: string;
  readonly zip: string;
}

/** A zip code as the package lists it. */
interface Listed {
  readonly zip: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly city: string;
  readonly state: string;
}

/** Post towns of the United States, by their name and by zip code. */
export class PostTowns {
  private constructor(
    private readonly byZip: ReadonlyMap<string, PostTown>,
    private readonly byFolded: ReadonlyMap<string, readonly PostTown[]>,
  ) {}

  static read(): PostTowns {
    const byZip = new Map<string, PostTown>();
    const byFolded = new Map<string, PostTown[]>();
    for (const listed of Object.values(readListed())) {
      // Post of the forces abroad has codes without a spot.
      if (listed.latitude === 0 && listed.longitude === 0) continue;
      const town = townOf(listed);
      byZip.set(town.zip, town);
      const known = byFolded.get(fold(town.name)) ?? [];
      // A town has as many entries as it has codes: its first one stands for it.
      if (!known.some(({ state }) => state === town.state))
        byFolded.set(fold(town.name), [...known, town]);
    }
    return new PostTowns(byZip, byFolded);
  }

  /** Post towns of just that name. */
  named(name: string): readonly PostTown[] {
    return this.byFolded.get(fold(name)) ?? [];
  }

  /** The post town of a zip code, with or without the four figures behind it. */
  ofZip(given: string): PostTown | undefined {
    return this.byZip.get(/^(\d{5})(-\d{4})?$/.exec(given.trim())?.[1] ?? '');
  }
}

const townOf = ({ zip, city, state, latitude, longitude }: Listed): PostTown => ({
  ...{ zip, name: city, state, latitudeDeg: latitude, longitudeDeg: longitude },
});

/** The package's list, forgotten by the loader at once. */
function readListed(): Readonly<Record<string, Listed>> {
  const require = createRequire(import.meta.url);
  const { codes } = require('zipcodes/lib/codes.js') as { codes: Readonly<Record<string, Listed>> };
  delete require.cache[require.resolve('zipcodes/lib/codes.js')];
  return codes;
}
