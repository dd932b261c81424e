import { describe, expect, it } from '@jest/globals';
import { execFileSync } from 'node:child_process';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** Runs in a process of its own: the zone of a machine is read once, when a process starts. */
const SCRIPT = `
  const dates = await import('./shared/calendar/plain-date.ts');
  const format = await import('./shared/units/dates.ts');
  const reader = { units: 'us', today: '2027-07-01' };
  const { plannedBatch, foundArrivals } = await import('./test/support/pictures.ts');
  const { newRequest } = await import('./test/support/factories.ts');
  const days = ['1900-01-01', '2026-12-31', '2027-03-13', '2027-04-03', '2027-09-25', '2027-11-06', '2028-02-28'];
  const request = newRequest({ batch: { brooderId: 'brooder' } });
  console.log(JSON.stringify({
    zone: process.env.TZ,
    offset: new Date(2027, 0, 15).getTimezoneOffset(),
    results: {
      added: days.map((d) => [0, 1, 2, 21, 366, -1, -400].map((n) => dates.addDays(d, n))),
      between: days.map((d) => dates.daysBetween(d, '2027-07-01')),
      numbered: days.map((d) => [dates.dayOfYear(d), dates.weekdayOf(d)]),
      real: days.map((d) => dates.isPlainDate(d)),
      shown: days.map((d) => [format.formatLongDate(d, reader), format.formatDate(d, reader)]),
      today: dates.plainDateAt(Date.UTC(2027, 3, 21, 2, 30), 'America/New_York'),
      plan: plannedBatch(request),
      arrivals: foundArrivals(request, { from: '2027-03-01', to: '2027-06-30' }),
    },
  }));
`;

interface Answer {
  readonly zone: string;
  readonly offset: number;
  readonly results: {
    readonly added: string[][];
    readonly today: string;
    readonly shown: string[][];
  };
}

function runIn(zone: string): Answer {
  const text = execFileSync(
    process.execPath,
    ['--import', '@swc-node/register/esm-register', '--input-type=module', '-e', SCRIPT],
    { cwd: PROJECT_ROOT, env: { ...process.env, TZ: zone, NODE_OPTIONS: '' }, encoding: 'utf8' },
  );
  return JSON.parse(text) as Answer;
}

describe('dates, plans and arrivals', () => {
  it('come out the same in Auckland, New York and Greenwich', () => {
    const answers = ['Pacific/Auckland', 'America/New_York', 'UTC'].map(runIn);
    // The processes really were in three zones: minutes west of Greenwich in January.
    expect(answers.map((a) => a.offset)).toEqual([-780, 300, 0]);
    const [auckland, newYork, greenwich] = answers as [Answer, Answer, Answer];
    expect(auckland.results).toEqual(greenwich.results);
    expect(newYork.results).toEqual(greenwich.results);
    expect(greenwich.results.today).toBe('2027-04-20');
    expect(greenwich.results.added[2]).toEqual([
      '2027-03-13',
      '2027-03-14',
      '2027-03-15',
      '2027-04-03',
      '2028-03-13',
      '2027-03-12',
      '2026-02-06',
    ]);
    expect(greenwich.results.shown[2]).toEqual(['Sat, Mar 13, 2027', 'Sat, Mar 13']);
  }, 60_000);
});
