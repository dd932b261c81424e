import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import { FieldError, type FieldProblem } from '../../shared/problems/field-problem.js';
import { parseDailyCsv, parseForecastCsv } from '../../src/weather-files/daily-csv.js';

const TODAY = '2027-04-21';

/** One day of a file with rain, as it is understood. */
function rainOf(cell: string, separator = ','): number | null {
  const line = [TODAY, '1', '9', cell].join(separator);
  const text = `${['date', 'tmin_c', 'tmax_c', 'prcp_mm'].join(separator)}\n${line}`;
  return parseForecastCsv(text, TODAY)[0]!.rainMm;
}

function problemsOf(parse: () => unknown): readonly FieldProblem[] {
  try {
    parse();
  } catch (error) {
    if (error instanceof FieldError) return error.problems;
    throw error;
  }
  throw new Error('Nothing was refused.');
}

describe('rain in a daily file', () => {
  it.each([
    ['1.5', 1.5],
    ['0', 0],
    ['', null],
    ['T', 0], // a trace, as weather services write it
    ['t', 0],
    ['trace', 0],
    ['"1,5"', 1.5],
    ['"12,75"', 12.75],
    ['1825', 1825],
  ])('%s is %s mm', (cell, mm) => {
    expect(rainOf(cell)).toBe(mm);
  });

  it('may have a decimal comma between semicolons', () => {
    expect(rainOf('1,5', ';')).toBe(1.5);
  });

  it.each([
    ['-3', 'out-of-bounds'],
    ['-9999', 'out-of-bounds'],
    ['1e9', 'out-of-bounds'],
    ['1826', 'out-of-bounds'], // above the record of one day on Earth
    ['some', 'not-a-number'],
    ['NaN', 'not-a-number'],
    ['Infinity', 'not-a-number'],
    ['"1,500"', 'not-a-number'], // a thousand and a half, or one and a half?
  ])('%s is refused by line and column', (cell, code) => {
    expect(problemsOf(() => rainOf(cell))).toMatchObject([{ field: 'csv.row2.prcp_mm', code }]);
  });

  it('with a decimal comma between commas is refused, and the fix is said', () => {
    const [problem] = problemsOf(() => rainOf('1,5'));
    expect(problem).toMatchObject({ field: 'csv.row2', code: 'unreadable' });
    expect(problem!.fix).toMatch(/write 1\.5 for 1,5, or put semicolons/);
  });

  it('is refused together with the other cells of its line', () => {
    const text = `date,tmin_c,tmax_c,prcp_mm\n${TODAY},cold,warm,-1`;
    expect(problemsOf(() => parseForecastCsv(text, TODAY)).map(({ field }) => field)).toEqual([
      'csv.row2.tmin_c',
      'csv.row2.tmax_c',
      'csv.row2.prcp_mm',
    ]);
  });
});

describe('a file made to keep others waiting', () => {
  it.each([
    ['a header of 11.9 million commas', `date${','.repeat(11_900_000)}`, 'csv.row1'],
    ['a long line', `date,tmin_c,tmax_c\n${TODAY},1,2,${'x'.repeat(3000)}`, 'csv.row2'],
    ['millions of empty lines', '\n'.repeat(11_900_000), 'csv.rows'],
    ['millions of comments', '#\n'.repeat(5_900_000), 'csv.rows'],
    ['one quotation mark', `date,tmin_c,tmax_c\n"${'x\n'.repeat(70_000)}`, 'csv.row2'],
  ])('%s is refused', (_what, text, field) => {
    expect(problemsOf(() => parseDailyCsv(text, TODAY))).toMatchObject([{ field }]);
  });
});

describe('a file of many years', () => {
  it('is read whole', () => {
    const days = Array.from({ length: 3000 }, (_, i) => `${addDays('2015-01-01', i)},1,10,0.5`);
    const text = ['date,tmin_c,tmax_c,prcp_mm', ...days].join('\n');
    expect(parseDailyCsv(text, TODAY)).toHaveLength(3000);
  });
});

describe('the names of columns in a daily file', () => {
  const read = (header: string) => parseForecastCsv(`${header}\n${TODAY},41,59,0.5`, TODAY)[0]!;

  it.each([
    'date,tmin_f,tmax_f,prcp_in',
    'DATE,TMIN (°F),TMAX (°F),PRCP (in)',
    'time,temperature_2m_min (°F),temperature_2m_max (°F),precipitation_sum (inch)',
    'Day,Min temp °F,Max temp °F,Rain inches',
  ])('are understood as weather services write them: %s', (header) => {
    expect(read(header)).toEqual({ date: TODAY, minC: 5, maxC: 15, rainMm: 12.7 });
  });

  it.each([
    ['date,tmin,tmax,prcp', 'The name “tmin” does not say its unit'],
    ['date,tmin_f,tmax_f,prcp', 'The name “prcp” does not say its unit'],
    ['date,a,b,c', 'Name one of the columns tmin_c or tmin_f.'],
    ['date,tmin_c,tmin_f,tmax_f', 'Name exactly one column'],
    ['when,tmin_f,tmax_f,prcp_in', 'Name one column date'],
  ])('are named where they say too little: %s', (header, fix) => {
    const [problem] = problemsOf(() => read(header));
    expect(problem).toMatchObject({ field: 'csv.header', given: header.split(',').join(', ') });
    expect(problem!.fix).toContain(fix);
  });
});
