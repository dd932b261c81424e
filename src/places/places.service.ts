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
import { countryName, regionName, waysToSay } from './regions.js';
import { TownTable, type NearTown, type Town } from './town-table.js';

/** Where places lie: by the table that came with the program, or by the weather service. */
@Injectable()
export class PlacesService {
  /** Read when a place is first looked up, which most runs of the program never do. */
  private table: TownTable | undefined;

  constructor(private readonly client: OpenWeatherClient) {}

  /**
   * Places by their name, the likeliest first. A state, a region or a country may stand behind it,
   * by name or letters, with a comma or without.
   *
   * @param isOnline whether the name may be sent to the weather service, which knows villages
   * @param homeCountry two letters: of places of one name, those of this country come first
   */
  async find(name: string, isOnline: boolean, homeCountry?: string): Promise<PlacesFound> {
    if (!isOnline) return { places: this.findHere(name, homeCountry), from: 'here' };
    try {
      return { places: await this.findOnline(name), from: 'online' };
    } catch (error) {
      if (!(error instanceof WeatherServiceError)) throw error;
      const note = `${error.message} Looked up in the list that came with the program.`;
      return { places: this.findHere(name, homeCountry), from: 'here', note };
    }
  }

  /**
   * What follows from where a spot lies. Country and region are left out where a town of another
   * country is near too, or none at all: which it is can only be asked. Its height is known only to the weather service. */
  async at(spot: Spot, isOnline: boolean): Promise<Point> {
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

  private findHere(given: string, homeCountry: string | undefined): Place[] {
    for (const { name, where } of askedPlaces(given)) {
      const found = this.towns().byName(name, (town) => isIn(town, where), homeCountry);
      if (found.length > 0) return found.map(placeOf);
    }
    return [];
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

  private towns(): TownTable {
    return (this.table ??= TownTable.read());
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
  ...ofCountry(town, town.country, town.division),
});

/** Whether a town lies in a state, region or country, however that is written. */
const isIn = ({ country, division }: Town, where: string): boolean =>
  where === '' || isSaid(where, waysToSay(country, [division, regionName(country, division)]));

function placeOf(town: Town): Place {
  const { name, country, division, latitudeDeg, longitudeDeg, population } = town;
  const called = countryName(country);
  // Postal letters of a state are how its people write it; other codes say nothing.
  const within = country === 'US' ? division : regionName(country, division);
  return {
    name,
    ...(within === undefined ? {} : { within }),
    ...(called === undefined ? {} : { countryName: called }),
    ...{ latitudeDeg, longitudeDeg, population },
    ...ofCountry(town, country, division),
  };
}
