import { Injectable } from '@nestjs/common';
import type { Place, PlacesFound, Point, PossibleCountry } from '../../shared/farm/place.js';
import type { Spot } from '../../shared/weather/climate-estimate.js';
import { startDefaults } from '../reference/start-defaults.js';
import {
  OpenWeatherClient,
  WeatherServiceError,
  type FoundPlace,
} from '../weather/open-weather.client.js';
import { askedPlaces, isSaid } from './asked-place.js';
import { ofCountry } from './of-country.js';
import { fold } from './fold.js';
import { PostTowns, type PostTown } from './post-towns.js';
import { countryName, countyName, regionName, waysToSay } from './regions.js';
import { townsByOtherName, TownTable, type NearTown, type Town } from './town-table.js';

const ALIKE = 'No place is called just so; these names are nearly that.';

/** As many as an answer may hold. */
const MOST_PLACES = 20;

/** Where places lie: by the table that came with the program, or by the weather service. */
@Injectable()
export class PlacesService {
  /** Read when a place is first looked up, which most runs of the program never do. */
  private table: TownTable | undefined;
  private reading: Promise<TownTable> | undefined;
  private post: PostTowns | undefined;

  constructor(private readonly client: OpenWeatherClient) {}

  /**
   * Places by their name, the likeliest first. A state, a region or a country may stand behind it,
   * by name or letters, with a comma or without.
   *
   * @param isOnline whether the name may be sent to the weather service, which knows villages
   * @param homeCountry two letters: of places of one name, those of this country come first
   */
  async find(name: string, isOnline: boolean, homeCountry?: string): Promise<PlacesFound> {
    await this.ready();
    if (!isOnline) return this.findOrAlike(name, homeCountry);
    try {
      return { places: await this.findOnline(name), from: 'online' };
    } catch (error) {
      if (!(error instanceof WeatherServiceError)) throw error;
      const note = `${error.message} Looked up in the list that came with the program.`;
      return { note, ...(await this.findOrAlike(name, homeCountry)) };
    }
  }

  private async findOrAlike(given: string, homeCountry: string | undefined): Promise<PlacesFound> {
    const places = await this.findHere(given, homeCountry);
    if (places.length > 0) return { places, from: 'here' };
    for (const { name, where } of askedPlaces(given)) {
      // Of the whole world too many names are nearly that one.
      if (where === '') continue;
      const alike = this.towns().alike(name, (town) => isIn(town, where));
      if (alike.length > 0)
        return { places: alike.map((town) => placeOf(town, alike)), from: 'here', note: ALIKE };
    }
    return { places: [], from: 'here' };
  }

  /**
   * What follows from where a spot lies. Country and region are left out where a town of another
   * country is near too, or none at all: which it is can only be asked. Its height is known only to
   * the weather service; here it is about that of the nearest town.
   */
  async at(spot: Spot, isOnline: boolean): Promise<Point> {
    await this.ready();
    const [nearest, ...others] = this.towns().nearestByCountry(spot);
    const { town, km } = nearest!;
    const height = isOnline ? await this.heightOf(spot) : {};
    const { farthestKm, otherTimesAsFar } = startDefaults().nearestTown;
    const isNear = km <= farthestKm;
    const near = isNear ? others.filter((each) => each.km <= otherTimesAsFar * km) : [];
    const { country, region, ...rest } = ofCountry(spot, town.country, town.division);
    const isSure = isNear && near.length === 0;
    return {
      ...nearOf({ town, km }),
      ...(isNear ? townHeight(town) : {}),
      ...height,
      ...rest,
      ...(isSure && country !== undefined ? { country } : {}),
      ...(isSure && region !== undefined ? { region } : {}),
      ...(near.length === 0 ? {} : { countries: [nearest!, ...near].map(asCountry) }),
    };
  }

  private async heightOf(spot: Spot): Promise<Pick<Point, 'elevationM' | 'note'>> {
    try {
      return { elevationM: await this.client.elevationM(spot) };
    } catch (error) {
      if (!(error instanceof WeatherServiceError)) throw error;
      return { note: error.message };
    }
  }

  private async findHere(given: string, homeCountry: string | undefined): Promise<Place[]> {
    const zip = this.postTowns().ofZip(given);
    if (zip) return [this.postPlace(zip)];
    const asked = askedPlaces(given).map(({ name, where }) => {
      const listed = this.towns().byName(name, (town) => isIn(town, where), homeCountry);
      const just = listed.filter((town) => fold(town.name) === fold(name));
      return { name, where, listed, just, post: this.postPlaces(name, where, just) };
    });
    const best = asked.find(({ just, post }) => just.length + post.length > 0);
    if (best) {
      const { listed, just, post } = best;
      const longer = listed.filter((town) => !just.includes(town));
      return [
        ...just.map((town) => placeOf(town, just)),
        ...post,
        ...longer.map((town) => placeOf(town, longer)),
      ].slice(0, MOST_PLACES);
    }
    const other = await townsByOtherName(
      asked.map(({ name }) => name),
      (town, called) =>
        asked.some(({ name, where }) => fold(called) === fold(name) && isIn(town, where)),
    );
    const { listed = [] } = asked.find((each) => each.listed.length > 0) ?? {};
    return [...other, ...listed].map((town) => placeOf(town, listed)).slice(0, MOST_PLACES);
  }

  /** Post towns of a name that the list of towns does not have where they are looked for. */
  private postPlaces(name: string, where: string, listed: readonly Town[]): Place[] {
    return this.postTowns()
      .named(name)
      .filter(
        ({ state }) =>
          isSaid(where, waysToSay('US', [state, regionName('US', state)])) &&
          !listed.some((town) => town.country === 'US' && town.division === state),
      )
      .map((town) => this.postPlace(town));
  }

  private postPlace({ name, state, latitudeDeg, longitudeDeg }: PostTown): Place {
    const spot = { latitudeDeg, longitudeDeg };
    const called = countryName('US');
    const { town, km } = this.towns().nearest(spot);
    return {
      ...{ name, within: state, ...spot },
      ...(called === undefined ? {} : { countryName: called }),
      ...(km <= startDefaults().nearestTown.farthestKm ? townHeight(town) : {}),
      ...ofCountry(spot, 'US', state, town.country === 'US' ? town.timeZone : undefined),
    };
  }

  /** The service knows names alone: where a place lies is picked from what it answers. */
  private async findOnline(given: string): Promise<Place[]> {
    for (const { name, where } of askedPlaces(given)) {
      const found = (await this.client.places(name)).filter(
        (place) => where === '' || this.isOnlineIn(place, where),
      );
      if (found.length > 0) return found.map((place) => this.onlinePlace(place));
    }
    return [];
  }

  /** The service writes a state out; its letters are those of the nearest town. */
  private isOnlineIn(place: FoundPlace, where: string): boolean {
    const { town } = this.towns().nearest(place);
    return isSaid(where, waysToSay(place.country ?? '', [place.within, town.division]));
  }

  private onlinePlace({ country, timeZone, ...place }: FoundPlace): Place {
    const called = country === undefined ? undefined : countryName(country);
    const { town } = this.towns().nearest(place);
    return {
      ...place,
      ...(called === undefined ? {} : { countryName: called }),
      ...ofCountry(place, country, town.country === country ? town.division : '', timeZone),
    };
  }

  /** Reads the towns before the first who ask, once for all of them. */
  private async ready(): Promise<void> {
    this.table ??= await (this.reading ??= TownTable.read());
  }

  private towns(): TownTable {
    return this.table!;
  }

  private postTowns(): PostTowns {
    return (this.post ??= PostTowns.read());
  }
}

const nearOf = ({ town, km }: NearTown): Pick<Point, 'near' | 'nearKm'> => ({
  near: town.name,
  nearKm: Math.round(km * 10) / 10,
});

/** What follows from a country that a spot may lie in: the zone is that of its nearest town. */
const asCountry = ({ town, km }: NearTown): PossibleCountry => ({
  countryName: countryName(town.country) ?? town.country,
  ...nearOf({ town, km }),
  ...ofCountry(town, town.country, town.division, town.timeZone),
});

/** Whether a town lies in a state, region or country, however that is written. */
const isIn = ({ country, division }: Town, where: string): boolean =>
  where === '' || isSaid(where, waysToSay(country, [division, regionName(country, division)]));

const townHeight = ({ elevationM }: Town): Pick<Place, 'townElevationM'> =>
  elevationM === undefined ? {} : { townElevationM: elevationM };

/** @param beside towns that stand in the same list: of one name and state, the county tells them apart */
function placeOf(town: Town, beside: readonly Town[]): Place {
  const { name, country, division, latitudeDeg, longitudeDeg, population, timeZone } = town;
  const called = countryName(country);
  // Postal letters of a state are how its people write it; other codes say nothing.
  const state = country === 'US' ? division : regionName(country, division);
  const isTwice = beside.some(
    (other) =>
      other !== town &&
      other.name === name &&
      other.country === country &&
      other.division === division,
  );
  const county = isTwice ? countyName(country, division, town.county) : undefined;
  const within = [county, state].filter((part) => part !== undefined).join(', ');
  return {
    name,
    ...(within === '' ? {} : { within }),
    ...(called === undefined ? {} : { countryName: called }),
    ...{ latitudeDeg, longitudeDeg, population },
    ...townHeight(town),
    ...ofCountry(town, country, division, timeZone),
  };
}
