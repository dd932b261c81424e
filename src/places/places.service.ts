import { Injectable } from '@nestjs/common';
import type { Place, PlacesFound, Point } from '../../shared/farm/place.js';
import type { Spot } from '../../shared/weather/climate-estimate.js';
import { OpenWeatherClient, WeatherServiceError } from '../weather/open-weather.client.js';
import { countryName, ofCountry } from './of-country.js';
import { fold, TownTable, type Town } from './town-table.js';

/** Where places lie: by the table that came with the program, or by the weather service. */
@Injectable()
export class PlacesService {
  /** Read when a place is first looked up, which most runs of the program never do. */
  private table: TownTable | undefined;

  constructor(private readonly client: OpenWeatherClient) {}

  /**
   * Places by their name, the likeliest first. After a comma stands a state or a country.
   *
   * @param isOnline whether the name may be sent to the weather service, which knows villages
   */
  async find(name: string, isOnline: boolean): Promise<PlacesFound> {
    if (!isOnline) return { places: this.findHere(name), from: 'here' };
    try {
      return { places: await this.findOnline(name), from: 'online' };
    } catch (error) {
      if (!(error instanceof WeatherServiceError)) throw error;
      const note = `${error.message} Looked up in the list that came with the program.`;
      return { places: this.findHere(name), from: 'here', note };
    }
  }

  /** What follows from where a spot lies. Its height is known only to the weather service. */
  async at(spot: Spot, isOnline: boolean): Promise<Point> {
    const { town, km } = this.towns().nearest(spot);
    const height = isOnline ? await this.heightOf(spot) : {};
    return {
      near: town.name,
      nearKm: Math.round(km * 10) / 10,
      ...height,
      ...ofCountry(spot, town.country, town.division),
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

  private findHere(given: string): Place[] {
    const [name = '', ...rest] = given.split(',');
    const where = fold(rest.join(','));
    return this.towns()
      .byName(name, (town) => where === '' || isIn(town, where))
      .map((town) => {
        const country = countryName(town.country);
        const { latitudeDeg, longitudeDeg, population } = town;
        return {
          name: town.name,
          ...(/[A-Z]/.test(town.division) ? { within: town.division } : {}),
          ...(country === undefined ? {} : { countryName: country }),
          ...{ latitudeDeg, longitudeDeg, population },
          ...ofCountry(town, town.country, town.division),
        };
      });
  }

  private async findOnline(name: string): Promise<Place[]> {
    const found = await this.client.places(name);
    return found.map(({ country, timeZone, ...place }) => {
      const called = country === undefined ? undefined : countryName(country);
      // The service writes a state out; its letters are those of the nearest town.
      const { town } = this.towns().nearest(place);
      return {
        ...place,
        ...(called === undefined ? {} : { countryName: called }),
        ...ofCountry(place, country, town.country === country ? town.division : '', timeZone),
      };
    });
  }

  private towns(): TownTable {
    return (this.table ??= TownTable.read());
  }
}

/** Whether a town lies in a state or country, by its letters or the beginning of its name. */
const isIn = ({ country, division }: Town, where: string): boolean =>
  fold(division) === where ||
  fold(country) === where ||
  fold(countryName(country) ?? '').startsWith(where);
