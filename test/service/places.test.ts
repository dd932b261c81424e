import { afterAll, beforeAll, beforeEach, describe, expect, it } from '@jest/globals';
import type { PlacesFound, Point } from '../../shared/farm/place.js';
import { openApp, type TestApp } from '../support/app.js';
import { anyDatabase } from '../support/databases.js';
import { sendJson, startWeatherStub, type WeatherStub } from '../support/weather-stub.js';

// Nothing of it is kept, so one database is enough.
describe('places', () => {
  let app: TestApp;
  let stub: WeatherStub;
  beforeAll(async () => {
    stub = await startWeatherStub(4000);
    app = await openApp(anyDatabase(), stub.settings);
  }, 60_000);
  afterAll(async () => {
    await app.close();
    await stub.close();
  });
  beforeEach(() => {
    stub.calls.length = 0;
    stub.misbehave = {};
    stub.places = [];
  });

  const find = async (name: string, online = 'no'): Promise<PlacesFound> =>
    (await app.api.get('/api/places').query({ name, online }).expect(200)).body as PlacesFound;
  const at = async (latitudeDeg: number, longitudeDeg: number, online = 'no'): Promise<Point> =>
    (await app.api.get('/api/places/at').query({ latitudeDeg, longitudeDeg, online }).expect(200))
      .body as Point;

  it('are found here by name, without telling anybody, with all that follows from the country', async () => {
    const { places, from } = await find('montpelier, vt');
    expect(from).toBe('here');
    expect(places[0]).toMatchObject({
      name: 'Montpelier',
      within: 'VT',
      countryName: 'United States',
      country: 'US',
      region: 'VT',
      timeZone: 'America/New_York',
      units: 'us',
      currency: 'USD',
    });
    expect(places[0]!.latitudeDeg).toBeCloseTo(44.26, 1);
    expect(places[0]!.longitudeDeg).toBeCloseTo(-72.58, 1);
    const [cork] = (await find('cork')).places;
    expect(cork).toMatchObject({ units: 'metric', currency: 'EUR', timeZone: 'Europe/Dublin' });
    expect(stub.calls).toEqual([]);
  });

  it('of one name are told apart by state and country, the largest first', async () => {
    const all = (await find('springfield')).places;
    expect(all.length).toBeGreaterThan(5);
    const people = all.filter(({ name }) => name === 'Springfield').map((p) => p.population!);
    expect(people).toEqual([...people].sort((a, b) => b - a));
    expect(new Set(all.map((place) => `${place.within} ${place.country}`)).size).toBe(all.length);
    const [illinois, ...others] = (await find('springfield, il')).places;
    expect(illinois).toMatchObject({ name: 'Springfield', within: 'IL' });
    expect(others.map(({ name }) => name)).not.toContain('Springfield');
    expect((await find('KØBENHAVN')).places).toEqual((await find('københavn')).places);
  });

  it('are found however their state, region or country is written', async () => {
    const asked = [
      ...['Walton, NY', 'Walton, New York', 'walton new york', 'Walton NY', 'WALTON, N.Y.'],
      ...['Walton, Delaware County, NY 13856', 'Walton NY 13856', 'Walton, NY, USA'],
    ];
    for (const name of asked) {
      const { places } = await find(name);
      // Behind it stands Walton Park, which begins with the name.
      expect([name, places[0]?.name, places[0]?.within]).toEqual([name, 'Walton', 'NY']);
      expect(new Set(places.map(({ within }) => within))).toEqual(new Set(['NY']));
    }
    const first = async (name: string) => {
      const { name: town, within, country, region } = (await find(name)).places[0]!;
      return [town, within, country, region];
    };
    expect(await first('Delhi NY')).toEqual(['Delhi', 'NY', 'US', 'NY']);
    expect(await first('Delhi, N.Y.')).toEqual(['Delhi', 'NY', 'US', 'NY']);
    expect(await first('Delhi India')).toMatchObject(['Delhi', expect.anything(), 'IN', 'DL']);
    expect(await first('London Ontario')).toEqual(['London', 'Ontario', 'CA', 'ON']);
    expect(await first('Leeds, UK')).toEqual(['Leeds', 'England', 'GB', 'ENG']);
    expect(await first('sao paulo brazil')).toEqual(['São Paulo', 'São Paulo', 'BR', 'SP']);
  });

  it('of the United States are found by a village that has but a post office, and by zip code', async () => {
    // Unity in Waldo County, 44.61 N 69.34 W, about 180 ft above the sea (maps of the USGS).
    for (const name of ['Unity, Maine', 'unity me', '04988', '04988-1234']) {
      const [unity] = (await find(name)).places;
      expect([name, unity]).toMatchObject([name, { name: 'Unity', within: 'ME', region: 'ME' }]);
      expect(unity!.latitudeDeg).toBeCloseTo(44.61, 1);
      expect(unity!.longitudeDeg).toBeCloseTo(-69.34, 1);
      expect(unity!.townElevationM).toBeLessThan(120);
    }
    expect((await find('00000')).places).toEqual([]);
  });

  it('have the height of the town, which is not taken for the farm’s own', async () => {
    // Denver is the mile-high city: 1,609 m. Waterville lies on the river.
    const height = async (name: string) => (await find(name)).places[0]!.townElevationM!;
    expect(Math.abs((await height('Denver, Colorado')) - 1609)).toBeLessThan(50);
    expect(await height('Waterville, Maine')).toBeLessThan(60);
    expect((await find('Denver, Colorado')).places[0]).not.toHaveProperty('elevationM');
    expect(Math.abs((await at(39.74, -104.98)).townElevationM! - 1609)).toBeLessThan(50);
    expect(await at(40, -40)).not.toHaveProperty('townElevationM');
  });

  it('are found by what another language calls them, and by a name that is nearly theirs', async () => {
    expect((await find('München')).places[0]).toMatchObject({ name: 'Munich', country: 'DE' });
    const { places, note } = await find('Watervile, Maine');
    expect(places[0]).toMatchObject({ name: 'Waterville', within: 'ME' });
    expect(note).toMatch(/nearly/);
  });

  it('of one name are those of the household’s own country first', async () => {
    const delhi = async (homeCountry: string): Promise<string[]> => {
      const query = { name: 'Delhi', homeCountry };
      const { places } = (await app.api.get('/api/places').query(query).expect(200))
        .body as PlacesFound;
      return places.map(({ country }) => country!);
    };
    expect((await delhi('US'))[0]).toBe('US');
    expect(await delhi('US')).toContain('IN');
    expect((await delhi('IN'))[0]).toBe('IN');
  });

  it('are looked up online only when that is allowed, and then with their height', async () => {
    const village = {
      ...{ name: 'Gurteen', admin1: 'Connacht', country_code: 'IE', timezone: 'Europe/Dublin' },
      ...{ latitude: 53.99, longitude: -8.53, elevation: 86, population: 300 },
    };
    stub.places = [village, { ...village, latitude: 'north' }, { ...village, name: '' }];
    expect(await find('Gurteen', 'yes')).toEqual({
      from: 'online',
      places: [
        {
          ...{ name: 'Gurteen', within: 'Connacht', countryName: 'Ireland', country: 'IE' },
          ...{ latitudeDeg: 53.99, longitudeDeg: -8.53, elevationM: 86, population: 300 },
          ...{ timeZone: 'Europe/Dublin', units: 'metric', currency: 'EUR' },
        },
      ],
    });
    expect(stub.calls).toMatchObject([{ which: 'places', query: { name: 'Gurteen' } }]);
    expect((await find('Gurteen, Connacht', 'yes')).places).toHaveLength(1);
    expect((await find('Gurteen Ireland', 'yes')).places).toHaveLength(1);
    expect((await find('Gurteen, VT', 'yes')).places).toHaveLength(0);
  });

  it('are looked up here when the service does not answer, and it says so', async () => {
    stub.misbehave = { places: (response) => sendJson(response, 503, {}) };
    const { places, from, note } = await find('Montpelier', 'yes');
    expect(from).toBe('here');
    expect(note).toMatch(/answered 503.*list that came with the program/);
    expect(places.length).toBeGreaterThan(0);
  });

  it('by coordinates have the zone and country of the nearest town, and a height only online', async () => {
    const here = await at(44.3, -72.5);
    expect(here).toMatchObject({ country: 'US', region: 'VT', timeZone: 'America/New_York' });
    expect(here.nearKm).toBeLessThan(20);
    expect(here).not.toHaveProperty('elevationM');
    expect(stub.calls).toEqual([]);
    expect(await at(44.3, -72.5, 'yes')).toEqual({ ...here, elevationM: 312 });
    stub.misbehave = { height: (response) => sendJson(response, 200, { elevation: ['high'] }) };
    expect((await at(44.3, -72.5, 'yes')).note).toMatch(/documented shape/);
  });

  it('near a border leave the country open and name those it may be', async () => {
    // Quebec and British Columbia, a few kilometers from the border (by the map).
    const names = async (latitudeDeg: number, longitudeDeg: number) => {
      const { country, region, countries = [] } = await at(latitudeDeg, longitudeDeg);
      return [country, region, ...countries.map((each) => [each.countryName, each.country]).sort()];
    };
    const both = [
      ['Canada', 'CA'],
      ['United States', 'US'],
    ];
    expect(await names(45.03, -72.1)).toEqual([undefined, undefined, ...both]);
    expect(await names(49.02, -115.06)).toEqual([undefined, undefined, ...both]);
    // Allschwil, beside the border with France.
    expect(await names(47.55, 7.55)).toEqual([
      undefined,
      undefined,
      ['France', 'FR'],
      ['Switzerland', 'CH'],
    ]);
    // In the middle of the Atlantic no town says anything.
    expect(await names(40, -40)).toEqual([undefined, undefined]);
    const canada = (await at(45.03, -72.1)).countries!.find(({ country }) => country === 'CA');
    expect(canada).toMatchObject({ region: 'QC', units: 'metric', currency: 'CAD' });
    expect(canada!.near).toBe('Rock Island');
  });

  it('need a name that is one, and coordinates on the globe', async () => {
    await app.api.get('/api/places').expect(400);
    await app.api.get('/api/places').query({ name: ' ' }).expect(400);
    await app.api.get('/api/places/at').query({ latitudeDeg: 91, longitudeDeg: 0 }).expect(400);
    expect((await find('Qqxyzzy')).places).toEqual([]);
  });
});
