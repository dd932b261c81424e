import type { FarmPicture } from '../../farm/picture.js';
import type { Tables } from '../../tables/tables.js';
import type { DailyWeather } from '../../weather/climate.js';
import type { WorkPlan } from '../work/planned-work.js';
import { yearPlan, type YearPlan } from '../year/year-plan.js';
import type { AnimalPlans } from './animal-plans.js';
import { workOfFarm } from './work-of-farm.js';

/**
 * The year of a farm on one strip, out of the plans there are of it. Nothing is planned here.
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
): YearPlan =>
  yearPlan(picture, tables, { ...plans, request: workOfFarm(picture, tables, plans.animals) });
