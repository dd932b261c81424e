import Papa from 'papaparse';
import { FieldError } from '../../shared/problems/field-problem.js';
import {
  ESTIMATED,
  GRADES,
  HARMONICS,
  TERMS,
  type EstimateCenter,
  type EstimateRegion,
  type Term,
} from '../../shared/weather/climate-estimate.js';
import { readSeed } from '../reference/load-tables.js';

type Row = Readonly<Record<string, string>>;

const COEFFICIENTS = 'climate-estimate/coefficients.csv';
const REGIONS = 'climate-estimate/regions.csv';

/**
 * Reads the coefficients of the climate estimate, which lie apart from the other tables because the
 * page need not have them.
 *
 * @throws FieldError naming the file and row of what is no number
 */
export function loadRegions(read = readSeed): EstimateRegion[] {
  const rows = rowsOf(read(COEFFICIENTS));
  return rowsOf(read(REGIONS)).map((region, at) => {
    const own = rows.filter((row) => row['region'] === region['region']);
    const number = (name: string): number => numberIn(REGIONS, at, region, name);
    return {
      id: region['region']!,
      latitude0: number('lat0'),
      longitude0: number('lon0'),
      latitudeScale: number('lat_scale'),
      longitudeScale: number('lon_scale'),
      mostElevationM: number('max_elev_m'),
      reachKm: number('max_centre_km'),
      box: {
        south: number('lat_min'),
        north: number('lat_max'),
        west: number('lon_min'),
        east: number('lon_max'),
      },
      terms: termsOf(region['region']!, own),
      centers: own.filter((row) => row['width_km'] !== '').map(centerOf),
    };
  });
}

const rowsOf = (text: string): Row[] =>
  Papa.parse<Row>(text, { header: true, skipEmptyLines: true }).data;

function termsOf(region: string, rows: readonly Row[]): Readonly<Record<Term, Float64Array>> {
  const entries = TERMS.map((term): [Term, Float64Array] => {
    const at = rows.findIndex((row) => row['term'] === term);
    if (at === -1) throw unreadable(COEFFICIENTS, 0, `${region}.${term}`, undefined);
    return [term, coefficientsOf(rows[at]!, at)];
  });
  return Object.fromEntries(entries) as Record<Term, Float64Array>;
}

function centerOf(row: Row, at: number): EstimateCenter {
  const number = (name: string): number => numberIn(COEFFICIENTS, at, row, name);
  const grade = GRADES.find((each) => each === row['grade']);
  if (grade === undefined) throw unreadable(COEFFICIENTS, at, 'grade', row['grade']);
  return {
    latitudeDeg: number('lat'),
    longitudeDeg: number('lon'),
    widthKm: number('width_km'),
    grade,
    nightErrorC: number('tmin_error_c'),
    rainErrorPercent: number('rain_error_pct'),
    coefficients: coefficientsOf(row, at),
  };
}

/** An empty cell is 0: narrow bumps shape rain alone. */
const coefficientsOf = (row: Row, at: number): Float64Array =>
  Float64Array.from(
    ESTIMATED.flatMap((quantity) =>
      HARMONICS.map((part) => {
        const name = `${quantity}_${part}`;
        return row[name] === '' ? 0 : numberIn(COEFFICIENTS, at, row, name);
      }),
    ),
  );

function numberIn(file: string, at: number, row: Row, name: string): number {
  const text = row[name] ?? '';
  const value = Number(text);
  if (text === '' || !Number.isFinite(value)) throw unreadable(file, at, name, row[name]);
  return value;
}

const unreadable = (file: string, at: number, name: string, given: unknown): FieldError =>
  new FieldError([
    {
      field: `seeds/${file}.row${at + 1}.${name}`,
      code: 'not-a-number',
      given,
      fix: 'Take the file as it came with the program.',
    },
  ]);
