import { FieldError } from '../../shared/problems/field-problem.js';
import { fToC } from '../../shared/units/convert.js';
import type { Column } from './csv-cells.js';

type Quantity = 'low' | 'high' | 'rain';

const asGiven = (value: number): number => value;
const CELSIUS = { unit: /°\s*c|_c$|\(c\)|\bc$|celsius/, suffix: 'c', toSi: asGiven };
const FAHRENHEIT = { unit: /°\s*f|_f$|\(f\)|\bf$|fahrenheit/, suffix: 'f', toSi: fToC };
const MILLIMETERS = { unit: /mm|millim/, suffix: 'mm', toSi: asGiven };
const INCHES = { unit: /inch|_in$|\(in\)|\bin$/, suffix: 'in', toSi: (v: number) => v * 25.4 };

/** How weather services call the columns of a daily file, and the units that their names carry. */
const NAMES = {
  low: {
    name: 'tmin',
    means: /^tn|t_?min|min.*temp|temp.*min|low/,
    units: [CELSIUS, FAHRENHEIT],
  },
  high: {
    name: 'tmax',
    means: /^tx|t_?max|max.*temp|temp.*max|high/,
    units: [CELSIUS, FAHRENHEIT],
  },
  rain: { name: 'prcp', means: /prcp|precip|rain/, units: [MILLIMETERS, INCHES] },
} as const;

/** Columns with such a word are of something else, whatever more their name says. */
const OF_OTHER = /dew|wind|gust|hum|press|soil|ground|apparent|feel|hours|prob|snow|flag|attr/;

/** The column of a quantity by its name, which carries the unit: else the file cannot be read. */
export function columnOf(header: readonly string[], of: Quantity): Column {
  const { name, means, units } = NAMES[of];
  const own = header.filter((each) => units.some(({ suffix }) => each === `${name}_${suffix}`));
  const found =
    0 < own.length ? own : header.filter((each) => means.test(each) && !OF_OTHER.test(each));
  const choice = units.map(({ suffix }) => `${name}_${suffix}`).join(' or ');
  if (found.length === 0) throw refused(header, `Name one of the columns ${choice}.`);
  if (1 < found.length) {
    throw refused(header, `Name exactly one column ${choice}, so that it is certain.`);
  }
  const unit = units.find((each) => each.unit.test(found[0]!));
  if (unit) return { name: found[0]!, toSi: unit.toSi };
  throw refused(
    header,
    `The name “${found[0]}” does not say its unit: rename that column to ${choice}.`,
  );
}

/** Whether a file has a column of rain, whatever its unit. */
export const hasRain = (header: readonly string[]): boolean =>
  header.some((each) => NAMES.rain.means.test(each) && !OF_OTHER.test(each));

/** The column of the days. */
export function dateColumnOf(header: readonly string[]): string {
  const found = header.find((name) => ['date', 'time', 'day'].includes(name));
  if (found !== undefined) return found;
  throw refused(header, 'Name one column date, with year-month-day in it.');
}

const refused = (header: readonly string[], fix: string): FieldError =>
  new FieldError([{ field: 'csv.header', code: 'unreadable', given: header.join(', '), fix }]);
