import { whole } from '../../shared/farm/bounds.js';
import { choice, number, row, text, yesNo, type RowOf } from '../../shared/farm/field.js';

const DAYS = whole(0, 1e6, 'day', 'Days that are kept.');

/** What weather a farm has, and which of it plans use. */
export const weatherViewFields = row('WeatherView', {
  inUse: choice('In use', ['fetched', 'csv', 'monthly-means']),
  label: text('Where the numbers come from', 200),
  fetchAllowed: yesNo('Weather may be fetched'),
  fetchedDays: number('Days fetched', DAYS),
  csvDays: number('Days imported', DAYS),
  forecastDays: number('Days of forecast', DAYS),
});
export type WeatherView = RowOf<typeof weatherViewFields>;
