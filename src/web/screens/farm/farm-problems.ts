import { isPlainDate } from '../../../../shared/calendar/plain-date.js';
import { problemsOfNumber } from '../../../../shared/farm/bounds.js';
import { farmFields, type Farm } from '../../../../shared/farm/farm.js';
import { MONTHS, type NumberField } from '../../../../shared/farm/field.js';
import { problemsOfMonths } from '../../../../shared/farm/months.js';
import { isPrice } from '../../../../shared/money/money.js';
import type { FieldProblem } from '../../../../shared/problems/field-problem.js';
import { messagesByField } from '../../fields/field-words.js';
import { wordsOf } from './farm-labels.js';

const FIELDS = farmFields.fields;

/** A number that is still to be given is asked for in words of its own. */
const ifGiven = (
  path: string,
  value: number | undefined,
  { bounds }: NumberField,
): FieldProblem[] => (value === undefined ? [] : problemsOfNumber(path, value, bounds));

/** What the form can see for itself; the service checks everything again. */
export function problemsOf(farm: Partial<Farm>): Record<string, string | null> {
  const { monthlyMinC: min = [], monthlyMaxC: max = [] } = farm;
  const gaps = (values: readonly (number | undefined)[]) =>
    MONTHS.filter((_, k) => values[k] === undefined);
  const isMonthDay = (text: string | undefined) =>
    text !== undefined && isPlainDate(`2024-${text}`);
  const missing: Record<string, string | null> = {
    name: farm.name?.trim() ? null : 'Give the farm a name.',
    latitudeDeg: farm.latitudeDeg === undefined ? 'Give the latitude, such as 42.9 N.' : null,
    longitudeDeg: farm.longitudeDeg === undefined ? 'Give the longitude, such as 75.3 W.' : null,
    elevationM: farm.elevationM === undefined ? 'Give the height above sea level.' : null,
    electricityPricePerKWh: isPrice(farm.electricityPricePerKWh)
      ? null
      : 'Give the price of a kWh, such as 0.19.',
    gasPricePerL: isPrice(farm.gasPricePerL) ? null : 'Give the price, or 0.',
    monthlyMinC: gapText('lows', gaps(min)),
    monthlyMaxC: gapText('highs', gaps(max)),
    // All twelve or none: rain of some months only says nothing of the rest.
    monthlyRainMm:
      farm.monthlyRainMm === undefined ? null : gapText('rain', gaps(farm.monthlyRainMm)),
    lastFrost: isMonthDay(farm.lastFrost) ? null : 'Choose the month and the day.',
    firstFrost: isMonthDay(farm.firstFrost) ? null : 'Choose the month and the day.',
    noDeliveryDates: (farm.noDeliveryDates ?? []).every(isPlainDate)
      ? null
      : 'Choose each date, or remove it.',
  };
  return {
    ...missing,
    ...messagesByField(
      [
        ...(['latitudeDeg', 'longitudeDeg', 'elevationM'] as const).flatMap((name) =>
          ifGiven(name, farm[name], FIELDS[name]),
        ),
        ...problemsOfTable(min, max),
        ...(farm.monthlyRainMm ?? []).flatMap((mm, k) =>
          ifGiven(`monthlyRainMm.${k}`, mm, FIELDS.monthlyRainMm.of),
        ),
      ],
      wordsOf(farm),
    ),
  };
}

function gapText(what: string, months: readonly string[]): string | null {
  if (months.length === 0) return null;
  return months.length === MONTHS.length
    ? `Fill in all twelve ${what}.`
    : `Fill in the ${what} of ${months.join(', ')}.`;
}

/** What is wrong with the months that are filled in. */
export const problemsOfTable = (
  min: readonly (number | undefined)[],
  max: readonly (number | undefined)[],
): FieldProblem[] => [
  ...MONTHS.flatMap((_, k) => [
    ...ifGiven(`monthlyMinC.${k}`, min[k], FIELDS.monthlyMinC.of),
    ...ifGiven(`monthlyMaxC.${k}`, max[k], FIELDS.monthlyMaxC.of),
  ]),
  ...problemsOfMonths(min, max),
];
