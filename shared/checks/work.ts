import { workOutlookOf, type WorkOutlook } from '../plan/work/work-outlook.js';
import type { Tables } from '../tables/tables.js';
import { climateFromMonthlyMeans } from '../weather/climate.js';
import { EXAMPLE_FARM } from './example-farm.js';
import type { Given, Topic } from './given.js';

/** Central Illinois, monthly averages from memory: lows and highs, °C; rain, mm. */
const MIN_C = [-9, -7, -1, 5, 11, 16, 18, 17, 12, 6, 0, -6];
const MAX_C = [0, 2, 9, 17, 23, 28, 30, 29, 25, 18, 10, 2];
const RAIN_MM = [45, 45, 70, 95, 110, 95, 95, 85, 85, 75, 75, 60];
const YEARS = 300;
/** Fortnights from 14 April on stand for the 41 days from 10 April to 20 May. */
const FROM = '2027-04-14';
const BEFORE = '2027-05-13';
const DAYS = 41;
const FORTNIGHTS_DAYS = 42;

/** Many springs of a garden on silt loam; rows of one run share it. */
const kept = new WeakMap<Tables, WorkOutlook>();

function outlookOf(tables: Tables): WorkOutlook {
  let outlook = kept.get(tables);
  if (!outlook) {
    outlook = workOutlookOf(
      {
        farm: { ...EXAMPLE_FARM, latitudeDeg: 40.5, gardenSoilId: 'silt-loam' },
        climate: climateFromMonthlyMeans(MIN_C, MAX_C, 6, RAIN_MM),
        tables,
        today: '2027-03-31',
        people: [{ id: 'a', name: 'Adult', away: [] }],
        work: [],
        unplanned: [],
        ownJobs: [],
        progress: [],
        groundChecks: [],
        handovers: [],
        seed: 1,
        history: [],
      },
      YEARS,
    );
    kept.set(tables, outlook);
  }
  return outlook;
}

function fieldDays({ tables, text }: Given): number {
  const share = text('share') as 'tenth' | 'half' | 'ninetieth';
  const spring = outlookOf(tables).workable.filter(({ from }) => FROM <= from && from < BEFORE);
  return spring.reduce((sum, span) => sum + span[share], 0) * (DAYS / FORTNIGHTS_DAYS);
}

/** Days on which work can be done. */
export const workChecks: Topic = { title: 'Days fit for work', by: { 'field-days': fieldDays } };
