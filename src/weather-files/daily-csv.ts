import Papa from 'papaparse';
import { addDays, isPlainDate } from '../../shared/calendar/plain-date.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { checkWholeYear, FEWEST_CLIMATE_DAYS } from '../../shared/weather/climate.js';
import { rainIn, temperatureIn, type Column } from './csv-cells.js';
import { columnOf, dateColumnOf, hasRain } from './csv-columns.js';

export interface ImportedDay {
  readonly date: string;
  readonly minC: number;
  readonly maxC: number;
  readonly rainMm: number | null;
}

const MOST_PROBLEMS = 20;
const MOST_DAYS = 80_000;
/** No line of a daily record is longer, and no file has more that say nothing. */
const MOST_LINE_CHARACTERS = 2000;
const MOST_LINES = 2 * MOST_DAYS;

/**
 * Daily weather from CSV text: a header with `date`, `tmin_c` or `tmin_f`, `tmax_c` or `tmax_f`,
 * and optionally `prcp_mm` or `prcp_in`, or with what weather services call them, a unit in each
 * name. Lines that start with # are skipped.
 *
 * @throws FieldError naming rows and columns; nothing is returned for a file with any bad row
 */
export function parseDailyCsv(text: string, today: string): ImportedDay[] {
  const { days, lowName } = readDays(text, {
    fewest: FEWEST_CLIMATE_DAYS,
    most: MOST_DAYS,
    lastDate: today,
    countFix: 'Give at least three whole years of days; thirty are better.',
    dateFix: 'History cannot lie in the future: check the year.',
  });
  checkUnits(days, lowName);
  checkWholeYear(days);
  return days;
}

/**
 * A forecast from CSV text with the same columns, for days from today on.
 *
 * @throws FieldError naming rows and columns; nothing is returned for a file with any bad row
 */
export function parseForecastCsv(text: string, today: string): ImportedDay[] {
  return readDays(text, {
    fewest: 1,
    most: MOST_FORECAST_DAYS,
    firstDate: today,
    lastDate: addDays(today, MOST_FORECAST_DAYS - 1),
    countFix: 'Give the days that are forecast, a line each.',
    dateFix: `A forecast begins today and goes on for ${MOST_FORECAST_DAYS} days at most.`,
  }).days;
}

export const MOST_FORECAST_DAYS = 30;

interface DayLimits {
  readonly fewest: number;
  readonly most: number;
  readonly firstDate?: string;
  readonly lastDate: string;
  readonly countFix: string;
  readonly dateFix: string;
}

function readDays(text: string, limits: DayLimits): { days: ImportedDay[]; lowName: string } {
  const allLines = linesIn(text);
  const { data, meta, errors } = Papa.parse<Row>(text, {
    header: true,
    skipEmptyLines: 'greedy',
    comments: '#',
    transformHeader: (name) => name.trim().toLowerCase(),
  });
  const quotes = errors.find(({ type }) => type === 'Quotes');
  if (quotes) {
    throw new FieldError([
      {
        field: `csv.row${(quotes.row ?? 0) + 1}`,
        code: 'unreadable',
        given: 'a quotation mark is not closed, or stands within a value',
        fix: 'Close it, or leave quotation marks out.',
      },
    ]);
  }
  const header = meta.fields ?? [];
  const low = columnOf(header, 'low');
  const high = columnOf(header, 'high');
  const rain = hasRain(header) ? columnOf(header, 'rain') : undefined;
  const dates = dateColumnOf(header);
  if (data.length < limits.fewest || limits.most < data.length) {
    throw new FieldError([
      {
        field: 'csv.rows',
        code: 'out-of-bounds',
        given: data.length,
        min: limits.fewest,
        max: limits.most,
        unit: 'days',
        fix: limits.countFix,
      },
    ]);
  }
  const lines = linesOfRows(allLines);
  const problems: FieldProblem[] = [];
  const seen = new Set<string>();
  const days: ImportedDay[] = [];
  data.forEach((row, i) => {
    if (MOST_PROBLEMS <= problems.length) return;
    const found = readRow(
      row,
      { dates, low, high, rain },
      `csv.row${lines[i] ?? i + 2}`,
      limits,
      seen,
    );
    if ('problems' in found) problems.push(...found.problems);
    else days.push(found);
  });
  if (0 < problems.length) throw new FieldError(problems);
  return { days: days.sort((a, b) => (a.date < b.date ? -1 : 1)), lowName: low.name };
}

/** Lines of a file, which are looked at before anything is read of them: no file holds up others. */
function linesIn(text: string): string[] {
  const lines = text.split(/\r\n|\n|\r/, MOST_LINES + 1);
  if (MOST_LINES < lines.length) {
    throw new FieldError([
      {
        field: 'csv.rows',
        code: 'out-of-bounds',
        given: `more than ${MOST_LINES}`,
        max: MOST_LINES,
        unit: 'lines',
        fix: 'Give one line a day, without lines that say nothing.',
      },
    ]);
  }
  const long = lines.findIndex((line) => MOST_LINE_CHARACTERS < line.length);
  if (long === -1) return lines;
  throw new FieldError([
    {
      field: `csv.row${long + 1}`,
      code: 'out-of-bounds',
      given: lines[long]!.length,
      max: MOST_LINE_CHARACTERS,
      unit: 'characters',
      fix: 'That line is longer than any day’s: check that the file is CSV with one line a day.',
    },
  ]);
}

/** Line of the file on which each row stands, counting the header, blank lines and comments. */
const linesOfRows = (lines: readonly string[]): number[] =>
  lines
    .flatMap((line, i) => (/^[,;\t|\s]*$/.test(line) || line.startsWith('#') ? [] : [i + 1]))
    .slice(1);

function readRow(
  row: Row,
  columns: { dates: string; low: Column; high: Column; rain: Column | undefined },
  at: string,
  { firstDate = '', lastDate, dateFix }: DayLimits,
  seen: Set<string>,
): ImportedDay | { problems: FieldProblem[] } {
  const date = row[columns.dates]?.trim();
  if (!isPlainDate(date)) {
    return {
      problems: [
        {
          field: `${at}.date`,
          code: 'not-a-date',
          given: date,
          fix: 'Write year-month-day, such as 1998-04-21.',
        },
      ],
    };
  }
  if (date < firstDate || lastDate < date) {
    return {
      problems: [
        {
          field: `${at}.date`,
          code: 'out-of-bounds',
          given: date,
          ...(firstDate === '' ? {} : { min: firstDate }),
          max: lastDate,
          fix: dateFix,
        },
      ],
    };
  }
  if (seen.has(date)) {
    return {
      problems: [
        {
          field: `${at}.date`,
          code: 'conflict',
          given: date,
          fix: 'This day is in the file twice: remove one.',
        },
      ],
    };
  }
  seen.add(date);
  const extra = (row[EXTRA] ?? []).filter((each) => each.trim() !== '');
  if (0 < extra.length) return { problems: [tooManyValues(at, extra)] };
  const cell = (column: Column): string => row[column.name]?.trim() ?? '';
  const low = temperatureIn(cell(columns.low), columns.low, at);
  const high = temperatureIn(cell(columns.high), columns.high, at);
  const rain = columns.rain ? rainIn(cell(columns.rain), columns.rain, at) : { value: null };
  const problems = [low, high, rain].flatMap((each) => ('problem' in each ? [each.problem] : []));
  if ('problem' in low || 'problem' in high || 'problem' in rain) return { problems };
  const [minC, maxC] = [low.value, high.value];
  if (maxC < minC) {
    return {
      problems: [
        {
          field: `${at}.${columns.low.name}`,
          code: 'out-of-bounds',
          given: row[columns.low.name],
          max: row[columns.high.name] ?? '',
          fix: 'The low of a day cannot be above its high: swap the two columns.',
        },
      ],
    };
  }
  return { date, minC, maxC, rainMm: rain.value };
}

/** Where the parser leaves what stands behind the last column. */
const EXTRA = '__parsed_extra';
type Row = Readonly<Record<string, string | undefined>> & { readonly [EXTRA]?: readonly string[] };

const tooManyValues = (at: string, extra: readonly string[]): FieldProblem => ({
  field: at,
  code: 'unreadable',
  given: `${extra.length} more ${extra.length === 1 ? 'value' : 'values'} than columns`,
  fix: 'A comma in a number looks like one between columns: write 1.5 for 1,5, or put semicolons between the columns.',
});

/** Nowhere on Earth is a mean high above 45 °C, and hardly anywhere never above 9 °C. */
function checkUnits(days: readonly ImportedDay[], lowName: string): void {
  const meanHigh = days.reduce((sum, d) => sum + d.maxC, 0) / days.length;
  const hottest = Math.max(...days.map((d) => d.maxC));
  const wrong = 45 < meanHigh ? 'Fahrenheit' : hottest < 9 ? 'Celsius' : undefined;
  if (!wrong) return;
  throw new FieldError([
    {
      field: 'csv.header',
      code: 'conflict',
      given: lowName,
      fix: `The average high would be ${meanHigh.toFixed(0)} °C: the numbers look like ${wrong}. Rename the columns.`,
    },
  ]);
}
