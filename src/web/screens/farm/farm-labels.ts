import type { Farm } from '../../../../shared/farm/farm.js';
import { labelsFrom } from '../../fields/field-words.js';
import type { FormWords } from '../../../../shared/problems/field-problem.js';

export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

export const LABELS = {
  name: 'Name',
  units: 'Units',
  latitudeDeg: 'Latitude, such as 42.9 N',
  longitudeDeg: 'Longitude, such as 75.3 W',
  elevationM: 'Elevation',
  timeZone: 'Time zone',
  currency: 'Currency',
  electricityPricePerKWh: 'Electricity, one kWh',
  gasPricePerL: 'Propane',
  monthlyMinC: 'Monthly lows',
  monthlyMaxC: 'Monthly highs',
  monthlyRainMm: 'Monthly rain',
  lastFrost: 'Usual last spring frost, month-day',
  firstFrost: 'Usual first autumn frost, month-day',
  noDeliveryDates: 'Holidays without post',
  gardenSoilId: 'Soil of the garden',
} as const;

/** The words of the form: its labels, and the months of the table. */
export const wordsOf = (farm: Partial<Farm>): FormWords => {
  const labelOf = labelsFrom({
    ...LABELS,
    latitudeDeg: 'Latitude',
    longitudeDeg: 'Longitude',
    ...Object.fromEntries(
      MONTHS.flatMap((month, i) => [
        [`monthlyMinC.${i}`, `${month} low`],
        [`monthlyMaxC.${i}`, `${month} high`],
        [`monthlyRainMm.${i}`, `${month} rain`],
      ]),
    ),
  });
  return { labelOf, reader: { units: farm.units ?? 'metric', currency: farm.currency ?? 'USD' } };
};
