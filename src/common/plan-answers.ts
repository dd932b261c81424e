import { named } from './answers.js';

// Plans are trees of quantities that explain themselves; the document names them and no more.
export const BATCH_PLAN = named('BatchPlan', 'Everything worked out for one batch of birds.');
export const BATCH_COST = named(
  'BatchCost',
  'What a batch must bring, and when it has had enough feed.',
);
export const BATCH_COMPARISON = named(
  'BatchComparison',
  'Ways to raise a batch side by side, each a whole plan.',
);
export const BATCH_ENDS = named(
  'BatchEnds',
  'The last processing day or the day of the first egg of each batch, by its id.',
);
export const ARRIVAL_WEEK = named('ArrivalWeek', 'One week of arrival, its grade and its reasons.');
export const EXPLANATION = named(
  'Explanation',
  'A number opened to its formula, inputs and sources.',
);
export const PASTURE_PLAN = named('PasturePlan', 'Moves, grass and hay of a grazing season.');
export const WORK_PLAN = named('WorkPlan', 'The household’s work, fitted into hours and days.');
export const WORK_CHANCES = named(
  'WorkChances',
  'Chances of every job over many years of weather, and what would raise them.',
);
export const WORK_CHANCES_PROGRESS = named(
  'WorkChancesProgress',
  'The share of the years that is played so far.',
);
export const WORK_COMPARISON = named('WorkComparison', 'What another date would free or break.');
export const YEAR_PLAN = named('YearPlan', 'Thirteen months of a farm on one strip.');
export const RATION = named('Ration', 'A mixing sheet with what it holds, or why there is none.');
export const FEED_YEAR = named(
  'FeedYear',
  'What feeds a farm through the year: what to buy on which trip, and for how much.',
);
export const FEED_SPENT = named(
  'FeedSpent',
  'Where the feed money of the last year went, as told, and how it could have been less.',
);
export const TABLES = named('Tables', 'Every published table with its sources and marks.');
export const CHECK = named(
  'Check',
  'A value from outside, and what the program computes beside it.',
);
export const FORMULA = named('Formula', 'A formula in words and symbols, with its sources.');
export const READY_BY = named(
  'ReadyBy',
  'When chicks must come to be ready by a day, how many at most, and what stops it.',
);
export const HOLIDAY_COUNTRY = named('HolidayCountry', 'A country, with its regions.');
export const FARM_PICTURE = named('FarmPicture', 'All that plans of a farm are made from.');
export const TOLD_FACT = named('ToldFact', 'What happened, to what, when, and who said so.');
export const TOLD_PAGE = named('ToldPage', 'Told facts, the newest first, and how many there are.');
export const CALENDAR_ADDRESS = named('CalendarAddress', 'Where a farm’s calendar is found.');
export const TRUST = named('Trust', 'The household’s authority, as a phone shows it.');
export const HOW_IT_WENT = named(
  'HowItWent',
  'A batch as it was planned, beside what was told of it.',
);
export const BREED_SUM = named(
  'BreedSum',
  'Batches of a breed that are over, added up: of one year, or of all of them.',
);
export const CHANGED_BY_FACT = named(
  'ChangedByFact',
  'What a told fact changed in the plan of its batch, in words.',
);
export const YEAR_COUNTS = named('YearCounts', 'What was told of a calendar year, counted.');
export const LEARNED = named(
  'LearnedFromBatches',
  'Figures of a batch by the farm’s own record, and why, a sentence each.',
);
export const NEXT_YEAR = named(
  'NextYear',
  'Batches, jobs, cattle and days of paddocks of a year as they would come again in the next; nothing is saved.',
);
export const BEGUN_YEAR = named(
  'BegunYear',
  'Batches, jobs, herds and paddocks that a new year was begun with.',
);
export const YEAR_TAKEN_OUT = named(
  'YearTakenOut',
  'Names of what stays of a year that was taken out, because it was changed since.',
);
export const PADDOCK_YEAR = named(
  'PaddockYear',
  'Animal days, grass and hay of a paddock in a calendar year.',
);
export const PADDOCKS_OF_YEAR = named(
  'PaddocksOfYear',
  'What the paddocks carried in a calendar year, some of several.',
);
export const TODAY = named('Today', 'All that a household asks on the day it is.');
