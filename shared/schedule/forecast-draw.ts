import { drawIndex, type Random } from './random.js';

/**
 * Of each year the year whose weather is forecast for each of its days: its own where the forecast
 * holds, else any year’s, which may happen to be alike. A forecast is made on the first day, for as
 * many days as there are shares, and again when those are over.
 *
 * Range: up to 32,767 years.
 *
 * @param rightShares share of forecasts that hold, by days ahead, the day they are made on first
 */
export const drawForecasts = (
  years: number,
  days: number,
  rightShares: readonly number[],
  random: Random,
): Int16Array[] =>
  Array.from({ length: years }, (_, year) =>
    Int16Array.from({ length: days }, (__, day) =>
      random() < rightShares[day % rightShares.length]! ? year : drawIndex(random, years),
    ),
  );
