import { addDays } from '../../shared/calendar/plain-date.js';
import { compare, type Check } from '../../shared/checks/compare.js';
import type { Batch } from '../../shared/farm/batch.js';
import type { Weighing } from '../../shared/farm/weighing.js';
import { growingOf, speedRange } from '../../shared/plan/how-they-grow.js';
import { rowById, type Tables } from '../../shared/tables/tables.js';
import type { ReadRows } from './read-rows.js';

const TOPIC = 'Growth by weighings, of chicks that were weighed one by one';
const WEIGHTS_FILE = 'datasets/chickweight.csv';
const FITS_FILE = 'poultry-2/growth_fits2.csv';
const STRAIN = 'brown-layer';
/** Tables that were not made from these chicks, of birds of their time and size. */
const TABLES_OF_THEIRS = ['heritage-1957', 'brown-pullet-1994'];
/** One of eight lies beyond; nineteen in twenty is what is said of all weights. */
const DISAGREEMENTS: Readonly<Record<string, string>> = {
  'chicks-diet-4-brown-pullet-1994':
    'These chicks nearly stood still from their 18th day on, which the curve of no breed does; weighed again then they are seen to.',
};
const HATCHED = '2027-05-05';
/** Days on which all chicks of a diet were weighed, as a household would by then. */
const WEIGHED_DAYS = [8, 10, 12, 14];
const FORECAST_DAY = 21;
const DIETS = ['1', '2', '3', '4'];

/** What weighings of the second week say of the third, beside the curve that was fitted to all of it. */
export function weighingChecks(read: ReadRows, tables: Tables): readonly Check[] {
  const rows = read(WEIGHTS_FILE);
  const fits = read(FITS_FILE);
  return DIETS.flatMap((diet) => {
    const weighings = WEIGHED_DAYS.map((day): Weighing => {
      const kgs = rows
        .filter((row) => row['diet'] === diet && Number(row['day']) === day)
        .map((row) => Number(row['weight_g']) / 1000);
      return {
        ...{ batchId: 'chicks', date: addDays(HATCHED, day), birds: kgs.length },
        averageKg: kgs.reduce((sum, kg) => sum + kg, 0) / kgs.length,
      };
    });
    const fit = fits.find(({ birds }) => birds === `ChickWeight diet ${diet}`)!;
    return TABLES_OF_THEIRS.map((tableId) => {
      const forecast = forecastOf(weighings, tableId, tables);
      const id = `chicks-diet-${diet}-${tableId}`;
      const disagreement = DISAGREEMENTS[id];
      const compared = {
        ...{ id, source: 'CHICK_WEIGHTS_1990' },
        ...(disagreement === undefined ? {} : { disagreement }),
        what: `Chicks on diet ${diet} weighed on days ${WEIGHED_DAYS.join(', ')}: their weight on day ${FORECAST_DAY}, by ${rowById(tables.growthTables, tableId).name}`,
        where: `${WEIGHTS_FILE}; curve of ${FITS_FILE}`,
        theirs: fittedKg(fit, FORECAST_DAY),
        unit: 'kg',
        mark: 'computed',
        allowedAmount: forecast.offKg,
        why: 'As far as the plan itself says that the weight may lie off, nineteen times in twenty.',
      } as const;
      return compare(TOPIC, compared, forecast.kg);
    });
  });
}

/** Gompertz, as fitted: W = A · exp(−exp(−k · (t − t*))). */
function fittedKg(fit: Readonly<Record<string, string>>, day: number): number {
  const [grams, rate, inflection] = ['asymptote_g', 'rate_per_day', 'inflection_age_days'].map(
    (name) => Number(fit[name]),
  ) as [number, number, number];
  return (grams / 1000) * Math.exp(-Math.exp(-rate * (day - inflection)));
}

/** Their weight by the weighings, and how far it may lie off by what the plan says. */
function forecastOf(
  weighings: readonly Weighing[],
  tableId: string,
  tables: Tables,
): { readonly kg: number; readonly offKg: number } {
  const batch: Batch = {
    ...{ name: 'Chicks', purpose: 'layers', strainId: STRAIN, sex: 'straight-run' },
    ...{ wantedBirds: 20, orderedBirds: 20, arrivalDate: HATCHED, hatchToArrivalDays: 0 },
    keptAs: 'trial-house',
  };
  const strain = rowById(tables.strains, STRAIN);
  const table = rowById(tables.growthTables, tableId);
  const growing = growingOf(batch, { strain, table, tables }, { weighings });
  const kgAt = (speed: number): number => growing.meanWeightsTo(FORECAST_DAY, speed)[FORECAST_DAY]!;
  const { speed } = growing.own!;
  const [low, high] = speedRange(speed!).map(kgAt);
  return { kg: kgAt(speed!.value), offKg: (high! - low!) / 2 };
}
