/**
 * Chances of the ten households' work, told from the first half of a century of daily weather and
 * counted in the other half, which nothing was told of.
 */
import { fToC } from '../../shared/units/convert.js';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { planAnimals } from '../../shared/plan/farm/animal-plans.js';
import { workOutlook } from '../../shared/plan/farm/work-of-farm.js';
import { climateFromDaily, type DailyWeather } from '../../shared/weather/climate.js';
import { recordedFrost } from '../../shared/weather/frost.js';
import { rowsIn } from '../../src/cli/read-rows.js';
import { LATITUDE_DEG, TOWN_FILE } from '../../src/cli/town-checks.js';
import { tables as real } from '../support/factories.js';
import { TEN_HOUSEHOLDS } from '../support/ten-households.js';

type Print = (name: string, value: number, unit: string, jobs: number) => void;

const MM_PER_IN = 25.4;
const HALF = '1950';
const YEARS = 50;
const FAR = 2;

/** @param folder where the files of data lie */
export function benchHeldBackYears(folder: string, print: Print): void {
  const history = rowsIn(folder)(TOWN_FILE).map((day): DailyWeather => ({
    date: day['date']!,
    minC: fToC(Number(day['tmin_f'])),
    maxC: fToC(Number(day['tmax_f'])),
    rainMm: MM_PER_IN * Number(day['prcp_in']),
  }));
  const known = history.filter(({ date }) => date < HALF);
  const unseen = history.filter(({ date }) => HALF <= date);
  for (const [name, picture] of TEN_HOUSEHOLDS) {
    const told = chancesOf(picture, known, known);
    const counted = chancesOf(picture, known, unseen);
    const apart = [...told].map(([key, chance]) => Math.abs(chance - counted.get(key)!));
    print(`held-back years, ${name}: told`, 100 * mean([...told.values()]), '%', told.size);
    print(`held-back years, ${name}: came`, 100 * mean([...counted.values()]), '%', told.size);
    print(`held-back years, ${name}: furthest apart`, 100 * Math.max(...apart), '%', told.size);
    // Fifty years against fifty: of true chances one in twenty lies further apart than that.
    const far = [...told].filter(
      ([key, chance]) =>
        FAR < Math.abs(chance - counted.get(key)!) / ownError(chance, counted.get(key)!),
    );
    print(`held-back years, ${name}: beyond twice their own error`, far.length, 'jobs', told.size);
  }
}

/** The chance of each piece of work, played in some years by who knows the climate of others. */
function chancesOf(
  picture: FarmPicture,
  known: readonly DailyWeather[],
  played: readonly DailyWeather[],
): Map<string, number> {
  const climate = {
    ...climateFromDaily(known, { way: 'csv', label: 'Record' }),
    recordedFrost: recordedFrost(known, LATITUDE_DEG),
  };
  const there = { ...picture, climate, farm: { ...picture.farm, latitudeDeg: LATITUDE_DEG } };
  const tables = structuredClone(real);
  // What would help is not asked: no work is called unlikely.
  Object.assign(tables.judgements.work.likelyShare, { value: 0 });
  const { jobs } = workOutlook(there, tables, planAnimals(there, tables), played, () => undefined);
  return new Map(jobs.map(({ key, chance }) => [key, chance]));
}

/** Standard error of the difference of two shares of fifty years. */
function ownError(told: number, came: number): number {
  const share = Math.min(1 - 1 / YEARS, Math.max(1 / YEARS, (told + came) / 2));
  return Math.sqrt((2 * share * (1 - share)) / YEARS);
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
