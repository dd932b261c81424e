import { named } from '../common/answers.js';

// Plans are trees of quantities that explain themselves; the document names them and no more.
export const BATCH_PLAN = named('BatchPlan', 'Everything worked out for one batch of birds.');
export const ARRIVAL_WEEK = named('ArrivalWeek', 'One week of arrival, its grade and its reasons.');
export const EXPLANATION = named(
  'Explanation',
  'A number opened to its formula, inputs and sources.',
);
export const PASTURE_PLAN = named('PasturePlan', 'Moves, grass and hay of a grazing season.');
export const PASTURE_ON_FARM = named(
  'PastureOnFarm',
  'Everything a pasture is planned from, but for the published tables.',
);
export const WORK_PLAN = named('WorkPlan', 'The household’s work, fitted into hours and days.');
export const WORK_CHANCES = named(
  'WorkChances',
  'Chances of every job over many years of weather.',
);
export const WORK_COMPARISON = named('WorkComparison', 'What another date would free or break.');
export const CLIMATE = named('Climate', 'What to expect on each day of the year.');
export const TABLES = named('Tables', 'Every published table with its sources and marks.');
export const FORMULA = named('Formula', 'A formula in words and symbols, with its sources.');
