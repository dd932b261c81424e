import { describe, expect, it } from '@jest/globals';
import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import { dayOfYear } from '../../shared/calendar/plain-date.js';
import { estimatedClimate } from '../../shared/farm/estimated-climate.js';
import { MONTHS } from '../../shared/farm/field.js';
import { estimateClimate } from '../../shared/weather/climate-estimate.js';
import { loadRegions } from '../../src/climate-estimate/load-regions.js';
import { readSeed } from '../../src/reference/load-tables.js';
import { tables } from '../support/factories.js';

type Example = Readonly<Record<string, string>>;

const regions = loadRegions();
/** Worked with the reference code of the coefficients, to the digits that are printed. */
const examples = Papa.parse<Example>(
  readFileSync(new URL('./climate-estimate-examples.csv', import.meta.url), 'utf8'),
  { header: true, skipEmptyLines: true },
).data;

const at = (latitudeDeg: number, longitudeDeg: number, elevationM: number) =>
  estimateClimate(regions, { latitudeDeg, longitudeDeg, elevationM });
const ofExample = ({ lat, lon, elevation_m }: Example) =>
  at(Number(lat), Number(lon), Number(elevation_m));
const taken = (latitudeDeg: number, longitudeDeg: number, elevationM: number) =>
  estimatedClimate(at(latitudeDeg, longitudeDeg, elevationM)!, tables.nights.likeness.value);

describe('the climate estimate', () => {
  it.each(examples.filter(({ status }) => status !== 'outside'))(
    'gives the worked example of $place',
    (example) => {
      const found = ofExample(example)!;
      expect(found).toMatchObject({ region: example['region'], grade: example['status'] });
      expect(found.nightErrorC).toBe(Number(example['tmin_error_c']));
      expect(found.rainErrorPercent).toBe(Number(example['rain_error_pct']));
      MONTHS.forEach((_, month) => {
        const printed = (name: string): number =>
          Number(example[`${name}_${String(month + 1).padStart(2, '0')}`]);
        const far = (ours: number, name: string): number => Math.abs(ours - printed(name));
        expect(far(found.maxC[month]!, 'tmax_c')).toBeLessThan(0.01);
        expect(far(found.minC[month]!, 'tmin_c')).toBeLessThan(0.01);
        expect(far(found.sdMinC[month]!, 'sd_tmin_c')).toBeLessThan(0.001);
        expect(far(found.rainMm[month]!, 'rain_mm')).toBeLessThan(0.01);
      });
    },
  );

  it.each(examples.filter(({ status }) => status === 'outside'))(
    'gives none for $place rather than one from its latitude',
    (example) => {
      expect(ofExample(example)).toBeUndefined();
    },
  );

  it('takes a height above the highest stations as theirs, and one below the sea as it is', () => {
    expect(at(39, -106, 2800)).toEqual(at(39, -106, 4000));
    expect(at(36.5, -117, -86)!.minC[6]).toBeGreaterThan(at(36.5, -117, 0)!.minC[6]!);
  });

  // Chain over nights on straight lines between mid-months, worked apart from this program.
  it.each([
    ['central Iowa', 42.1, -93.6, 310, '04-27', '10-07'],
    ['central Oregon', 44.3, -121.2, 930, '05-31', '09-21'],
    ['Cotswolds', 51.75, -1.9, 130, '04-06', '11-13'],
    ['Lower Saxony', 52.9, 9.6, 60, '04-21', '10-27'],
  ])('dates the usual frosts of %s', (_name, latitude, longitude, height, last, first) => {
    const { lastFrost, firstFrost } = taken(latitude, longitude, height);
    const apart = (a: string, b: string): number =>
      Math.abs(dayOfYear(`2024-${a}`) - dayOfYear(`2024-${b}`));
    expect(apart(lastFrost, last)).toBeLessThanOrEqual(3);
    expect(apart(firstFrost, first)).toBeLessThanOrEqual(3);
  });

  it('names what the household should look at, and how far off the rest may be', () => {
    expect(taken(42.1, -93.6, 310)).toMatchObject({ toConfirm: [], frostErrorDays: 4 });
    // The lee of mountains, where the real rain is 213 mm and not 482.
    expect(taken(44.3, -121.2, 930).toConfirm).toEqual(['rain']);
    expect(taken(-37.77, 175.37, 40).toConfirm).toEqual(['nights', 'rain', 'frost']);
    expect(taken(29.8, -82.5, 40)).not.toHaveProperty('frostErrorDays');
    expect(taken(29.8, -82.5, 40).toConfirm).toEqual(['frost']);
    expect(taken(-37.65, 142.23, 221).frostDatesAre).toBe('safe');
  });

  it('gives both frosts the coldest day where it hardly ever freezes', () => {
    const { lastFrost, firstFrost } = taken(-37.77, 175.37, 40);
    expect(lastFrost).toBe(firstFrost);
    expect(lastFrost.slice(0, 2)).toBe('07');
  });

  it('is refused when a coefficient is no number, with file, row and column', () => {
    const spoilt = (file: string): string => {
      const text = readSeed(file);
      return file.endsWith('regions.csv') ? text.replace(',2800,', ',high,') : text;
    };
    expect(() => loadRegions(spoilt)).toThrow(
      /seeds\/climate-estimate\/regions.csv.row1.max_elev_m/,
    );
  });
});
