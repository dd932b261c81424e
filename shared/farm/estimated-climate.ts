import type { ClimateEstimate } from '../weather/climate-estimate.js';
import { frostFromMeans } from '../weather/frost-from-means.js';
import { unchanged } from './assumed.js';
import { AIR_C, RAIN_MM, within } from './bounds.js';
import {
  choice,
  list,
  nested,
  number,
  optional,
  row,
  text,
  twelveMonths,
  type RowOf,
} from './field.js';
import { monthDay } from './words.js';

/** What of a farm's climate can be an estimate until the household or a daily record says better. */
export const ESTIMATED_FIELDS = [
  'monthlyMinC',
  'monthlyMaxC',
  'monthlyRainMm',
  'lastFrost',
  'firstFrost',
] as const;
export type EstimatedField = (typeof ESTIMATED_FIELDS)[number];

const ERROR_C = within(0, 20, 'K', 'Give the usual error of a night.');
const PERCENT = within(0, 200, 'ratio', 'Give the usual error in percent.');

/** A place's climate as a farm takes it, with how sure it is. */
export const estimatedClimateFields = row('EstimatedClimate', {
  monthlyMinC: twelveMonths('Monthly lows', 'low', AIR_C),
  monthlyMaxC: twelveMonths('Monthly highs', 'high', AIR_C),
  monthlyRainMm: twelveMonths('Monthly rain', 'rain', RAIN_MM),
  lastFrost: monthDay('Last spring frost'),
  firstFrost: monthDay('First fall frost'),
  frostDatesAre: choice('Frost dates are', ['usual', 'safe']),
  /** Stations, corrected reanalysis, or a downscaled model with regression. */
  restsOn: choice('Rests on', ['observed', 'reanalysis', 'derived']),
  nightErrorC: number('Nights are right to', ERROR_C),
  rainErrorPercent: number('Rain of a year is right to, percent', PERCENT),
  /** Left out where frost is too rare for a date. */
  frostErrorDays: optional(
    number('Frost dates are right to', within(0, 60, 'day', 'Give the usual error in days.')),
  ),
  /** What the household should look at, since the estimate is weak there. */
  toConfirm: list('To confirm', choice('Figure', ['nights', 'rain', 'frost']), 3, 'figures'),
});
export type EstimatedClimate = RowOf<typeof estimatedClimateFields>;

/** The estimate of a place, or why there is none. */
export const estimateAnswerFields = row('EstimateAnswer', {
  estimate: optional(nested('Estimate', estimatedClimateFields)),
  because: optional(text('Why there is none', 200)),
});
export type EstimateAnswer = RowOf<typeof estimateAnswerFields>;

type WithClimate = Partial<Pick<EstimatedClimate, EstimatedField>> & {
  readonly estimated?: readonly EstimatedField[] | undefined;
};

/** A farm that was moved: what of its climate is an estimate, and was not typed anew, is that of its new place. */
export const estimatedThere = <Farm extends WithClimate>(
  before: WithClimate,
  farm: Farm,
  estimate: EstimatedClimate,
): Farm => ({
  ...farm,
  ...Object.fromEntries(
    unchanged(farm.estimated ?? [], before, farm).flatMap((field) => {
      const value = estimate[field as EstimatedField];
      return value === undefined ? [] : [[field, value]];
    }),
  ),
});

export const NO_ESTIMATE =
  'No estimate for this place: please enter the 36 figures or fetch them online.';

/** Regions whose fit was held against few observations, so that frost is known to the month. */
const MONTH_ONLY = ['NZ', 'SAM', 'ZAF'];
/** Where nights may come out too warm, the date that only one year in ten goes past is given. */
const SAFE_DATES = ['AU'];
/** One degree of the nights moves the frost dates by about a week. */
const DAYS_PER_C = 7;
/** With winters that hardly freeze, a frost date is off by more. */
const LOOSE_FROST_DAYS = 11;
/** Behind mountains rain is too uncertain to go by without another look. */
const WEAK_RAIN_PERCENT = 35;

/** An estimate as a farm's own figures: to a tenth of a degree and a millimeter of rain. */
export function estimatedClimate(estimate: ClimateEstimate, likeness: number): EstimatedClimate {
  const { region, grade, nightErrorC, rainErrorPercent } = estimate;
  const isSafe = SAFE_DATES.includes(region);
  const { sureness, ...dates } = frostFromMeans(estimate, { likeness, share: isSafe ? 0.1 : 0.5 });
  const weekly = Math.round(DAYS_PER_C * nightErrorC);
  const isLoose = sureness === 'loose' || MONTH_ONLY.includes(region);
  return {
    monthlyMinC: estimate.minC.map(tenth),
    monthlyMaxC: estimate.maxC.map(tenth),
    monthlyRainMm: estimate.rainMm.map(Math.round),
    ...dates,
    frostDatesAre: isSafe ? 'safe' : 'usual',
    ...{ restsOn: grade, nightErrorC, rainErrorPercent },
    ...(sureness === 'rare'
      ? {}
      : { frostErrorDays: isLoose ? Math.max(LOOSE_FROST_DAYS, weekly) : weekly }),
    toConfirm: [
      ...(grade === 'derived' ? (['nights'] as const) : []),
      ...(WEAK_RAIN_PERCENT <= rainErrorPercent ? (['rain'] as const) : []),
      ...(isLoose || sureness === 'rare' ? (['frost'] as const) : []),
    ],
  };
}

const tenth = (value: number): number => Math.round(value * 10) / 10;
