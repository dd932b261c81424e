import { M_PER_FT } from './convert.js';
import { formatDate, type DateReader } from './dates.js';
import { labelAfter, SHOWN, toShown, type Unit } from './unit.js';

export interface Reader extends DateReader {
  readonly currency: string;
}

/** One number or date as a person of this farm reads it, unit included. */
export function formatValue(value: number | string, unit: Unit, reader: Reader): string {
  if (typeof value === 'string') return unit === 'date' ? formatDate(value, reader) : value;
  if (unit === 'money') return formatMoney(value, reader.currency);
  if (unit === 'moneyPerKg' || unit === 'moneyPerL') {
    return `${formatMoney(toShown(value, unit, reader.units), reader.currency)} ${SHOWN[unit][reader.units].label}`;
  }
  if (unit === 'h') return formatHours(value);
  if (unit === 'chance') return formatChance(value);
  // Nobody measures a third of a foot.
  if (unit === 'm' && reader.units === 'us' && 0 < value && value < M_PER_FT)
    return formatValue(value * 100, 'cm', reader);
  const { label, digits } = SHOWN[unit][reader.units];
  const shown = toShown(value, unit, reader.units);
  const text = groupedNumber(shown, COARSE.has(unit) ? digitsFor(shown, digits) : digits);
  return withLabel(text, label);
}

/** Said in words, in coins, in minutes or in whole inches; and degrees, of which nothing is not none. */
const OF_OWN_KIND: ReadonlySet<Unit> = new Set([
  'money',
  'moneyPerKg',
  'moneyPerL',
  'h',
  'chance',
  'm',
  'degC',
  'K',
]);
/** What is smaller is what rounding left of nothing. */
const NOTHING = 1e-5;

/** What a formula was given: of less than one two digits stand, so that it is never read as nothing. */
export function formatInput(value: number | string, unit: Unit, reader: Reader): string {
  const isOwn = typeof value === 'string' || OF_OWN_KIND.has(unit);
  const shown = isOwn ? 0 : Math.abs(toShown(value, unit, reader.units));
  if (isOwn || shown < NOTHING || 1 <= shown) return formatValue(value, unit, reader);
  const { label } = SHOWN[unit][reader.units];
  return withLabel(
    groupedNumber(Number(toShown(value, unit, reader.units).toPrecision(2)), 7),
    label,
  );
}

/**
 * A number that nobody knows to the last digit, as a person says it: two digits of an amount
 * (660 ft, 63 lb), whole degrees, whole hours from ten on and half ones from two.
 */
export function formatAbout(value: number, unit: Unit, reader: Reader): string {
  if (unit === 'h') return formatHours(toStep(value, hoursStep(Math.abs(value))));
  const { label } = SHOWN[unit][reader.units];
  const shown = toShown(value, unit, reader.units);
  const isDegrees = unit === 'degC' || unit === 'K';
  const rounded = isDegrees ? Math.round(shown) : Number(shown.toPrecision(2));
  return withLabel(groupedNumber(rounded, 2), label);
}

const toStep = (value: number, step: number): number => Math.round(value / step) * step;

function hoursStep(hours: number): number {
  if (hours < 2) return 1 / 12;
  return hours < 10 ? 0.5 : 1;
}

/** A chance as it is said: so many years of ten. */
export function formatChance(share: number): string {
  const years = Math.round(10 * share);
  if (years === 0) return 'hardly ever';
  return years === 10
    ? 'nearly every year'
    : `about ${years} ${years === 1 ? 'year' : 'years'} in 10`;
}

/** A share of years in the smallest whole numbers that say it, from "of 10" on: "9 in 10". */
export function formatYears(share: number, between = 'in'): string {
  const all = [10, 20, 100].find((n) => Math.abs(n * share - Math.round(n * share)) < 1e-6) ?? 100;
  return `${Math.round(share * all)} ${between} ${all}`;
}

/** A number as it was typed: float noise is taken off, and nothing else. */
export function formatTyped(value: number, unit: Unit, { units }: Reader): string {
  if (unit === 'h' && isWholeMinutes(value)) return formatHours(value);
  const shown = toShown(value, unit, units);
  const { label } = SHOWN[unit][units];
  const text = groupedNumber(Number(shown.toPrecision(6)), unit === 'degC' ? 1 : 4);
  return withLabel(text, label);
}

/** What somebody read off a stick: to a tenth however much it is, so that 12.5 cm stay 12.5 cm. */
export function formatMeasured(value: number, unit: Unit, { units }: Reader): string {
  return withLabel(groupedNumber(toShown(value, unit, units), 1), SHOWN[unit][units].label);
}

/** A bound, rounded inward, so that the number that is read may also be typed. */
export function formatBound(value: number, unit: Unit, reader: Reader, end: 'min' | 'max'): string {
  const round = end === 'min' ? Math.ceil : Math.floor;
  // The tolerance keeps 60.00000001 from becoming 61.
  const tolerance = end === 'min' ? -1e-6 : 1e-6;
  if (unit === 'h') return formatHours(round(60 * value + tolerance) / 60);
  const shown = toShown(value, unit, reader.units);
  const { label, digits } = SHOWN[unit][reader.units];
  const scale = 10 ** digitsFor(shown, Math.max(1, digits));
  const text = groupedNumber(round(shown * scale + tolerance) / scale, 4);
  return withLabel(text, label);
}

/** Units of amounts, where a hundred kilograms need no decimals. Temperatures keep theirs. */
const COARSE: ReadonlySet<Unit> = new Set([
  'kg',
  'g',
  'm2',
  'm',
  'cm',
  'L',
  'freezerL',
  'm3',
  'm3PerH',
  'kWh',
  'MJ',
  'percent',
]);

const digitsFor = (value: number, most: number): number =>
  Math.max(0, most - Math.max(0, Math.floor(Math.log10(Math.abs(value) || 1))));

const withLabel = (number: string, label: string): string =>
  label === '' ? number : `${number} ${labelAfter(number, label)}`;

const isWholeMinutes = (hours: number): boolean =>
  Math.abs(60 * hours - Math.round(60 * hours)) < 1e-6;

/** Minor units (cents, pence) → text with the currency's own sign and decimals. */
export function formatMoney(minor: number, currency: string): string {
  const format = moneyFormat(currency);
  return format.format(minor / 10 ** minorDigits(currency));
}

/** Decimals that a price may have beyond those of its currency. */
const MOST_PRICE_DIGITS = 6;
const priceFormats = new Map<string, Intl.NumberFormat>();

/** A price of decimal text with the sign of its currency and all the digits it was typed with: $0.175. */
export function formatPrice(price: string, currency: string): string {
  let format = priceFormats.get(currency);
  if (!format) {
    const maximumFractionDigits = Math.max(minorDigits(currency), MOST_PRICE_DIGITS);
    format = new Intl.NumberFormat('en', { style: 'currency', currency, maximumFractionDigits });
    priceFormats.set(currency, format);
  }
  return format.format(Number(price));
}

const digitsOfCurrencies = new Map<string, number>();

/** Decimals of a currency's minor unit (ISO 4217 as the runtime knows it): 2 for USD, 0 for JPY. */
export function minorDigits(currency: string): number {
  let digits = digitsOfCurrencies.get(currency);
  if (digits === undefined) {
    digits = moneyFormat(currency).resolvedOptions().maximumFractionDigits ?? 2;
    digitsOfCurrencies.set(currency, digits);
  }
  return digits;
}

/** Hours as people say them: 45 min, 2 h, 2 h 30 min. */
export function formatHours(hours: number): string {
  const minutes = Math.round(hours * 60);
  if (minutes < 0) return `-${formatHours(-hours)}`;
  const rest = minutes % 60;
  const whole = Math.floor(minutes / 60);
  if (whole === 0) return `${rest} min`;
  return rest === 0 ? `${whole} h` : `${whole} h ${rest} min`;
}

const moneyFormats = new Map<string, Intl.NumberFormat>();
function moneyFormat(currency: string): Intl.NumberFormat {
  let format = moneyFormats.get(currency);
  if (!format) {
    format = new Intl.NumberFormat('en', { style: 'currency', currency });
    moneyFormats.set(currency, format);
  }
  return format;
}

/** Below it nothing is grouped, and a number is written as it is: a browser's writer is long in the making. */
const GROUPED_FROM = 1000;
/** A number as small as this would be written with an exponent. */
const WRITTEN_OUT_FROM = 1e-6;

const numberFormats = new Map<number, Intl.NumberFormat>();
function groupedNumber(value: number, digits: number): string {
  // Adding 0 turns -0 into 0, which would print as "-0".
  const rounded = Number(value.toFixed(digits)) + 0;
  const size = Math.abs(rounded);
  if (size === 0 || (WRITTEN_OUT_FROM <= size && size < GROUPED_FROM)) return String(rounded);
  let format = numberFormats.get(digits);
  if (!format) {
    format = new Intl.NumberFormat('en', { maximumFractionDigits: digits });
    numberFormats.set(digits, format);
  }
  return format.format(rounded);
}
