import { addDays } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { DailyWeather } from '../../weather/climate.js';
import type { WorkPlan } from '../work/planned-work.js';
import { yearPlan, type YearPlan } from '../year/year-plan.js';
import { goneSince, type AnimalPlans } from './animal-plans.js';
import { workOfFarm } from './work-of-farm.js';

/**
 * The year of a farm on one strip, out of the plans there are of it, with birds that went into the freezer.
 *
 * @param plans its animals, its work, and its daily record in date order, which may be empty
 */
export const yearOfFarm = (
  picture: FarmPicture,
  tables: Tables,
  plans: {
    readonly animals: AnimalPlans;
    readonly work: WorkPlan;
    readonly history: readonly DailyWeather[];
  },
): YearPlan => {
  const { animals } = plans;
  const { inFreezerDays } = tables.judgements.birds;
  const gone = goneSince(picture, tables, addDays(picture.today, -inFreezerDays.value));
  return yearPlan(picture, tables, {
    ...plans,
    animals: { ...animals, batches: [...animals.batches, ...gone] },
    request: workOfFarm(picture, tables, animals),
  });
};
