import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Person } from '../../../shared/farm/farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import type { WorkPlan } from '../../../shared/plan/work/planned-work.js';
import { newBatchWork, newWork } from '../../support/season-factories.js';

type More = Parameters<typeof newWork>[0];
const today = '2027-04-05'; // a Monday
const arrival = '2027-04-28'; // a Wednesday
const planOf = (more: More = {}): WorkPlan =>
  workPlanOf(newWork({ work: [newBatchWork(arrival, today)], ...more }), 1);
const gapsOf = (plan: WorkPlan, kind: string) => plan.careGaps.filter((gap) => gap.kind === kind);

const trip = { from: '2027-05-01', to: '2027-05-03' };
const both = (second: Person['away']): Person[] => [
  { id: 'a', name: 'Adult A', away: [trip] },
  { id: 'b', name: 'Adult B', away: second },
];

describe('days on which animals have nobody', () => {
  it('are told when everybody is away, and one who stays is enough', () => {
    const [gap] = gapsOf(planOf({ people: both([trip]) }), 'nobody-there');
    expect(gap).toMatchObject({ ...trip, days: 3, of: ['Meat chicks'] });
    expect(gap!.ways).toContain('Adult A or Adult B stays.');
    expect(gapsOf(planOf({ people: both([]) }), 'nobody-there')).toEqual([]);
  });

  it('end with an arrival after them, as they say', () => {
    const more = { people: both([trip]) };
    const [gap] = gapsOf(planOf(more), 'nobody-there');
    expect(gap!.ways.at(-1)).toBe('Meat chicks: an arrival after Mon 3 May instead of Wed 28 Apr.');
    const later = { ...more, work: [newBatchWork('2027-05-05', today)] };
    expect(gapsOf(planOf(later), 'nobody-there')).toEqual([]);
  });

  it('are handed over to a sitter, who is then asked to look at day-old chicks often', () => {
    const handover = {
      id: 'h',
      sitter: 'Neighbor',
      ...trip,
      hoursPerDay: 4,
      phones: [],
      whereabouts: [],
      roundOrder: [],
    };
    const plan = planOf({ people: both([trip]), handovers: [handover] });
    expect(gapsOf(plan, 'nobody-there')).toEqual([]);
    expect(gapsOf(plan, 'out-by-day').flatMap(({ ways }) => ways)).toContain(
      'Ask whoever comes in to look every 4 h by day.',
    );
  });

  it('are workdays of chicks in their first week, when all come home in the afternoon', () => {
    const people: Person[] = [
      { id: 'a', name: 'Adult A', away: [], startH: { weekday: 17, weekend: 8 } },
    ];
    const [gap] = gapsOf(planOf({ people }), 'out-by-day');
    // A look every 2 to 3 hours on the first day, four or five a day in the first week.
    expect(gap).toMatchObject({ from: arrival, to: addDays(arrival, 7), days: 6 });
    expect(gap!.said).toContain('every 3 h by day, later every 4 h');
    expect(gap!.said).toContain('nobody is in the house from 8:00 to 17:00');
    const atHome = people.map((person) => ({ ...person, byDay: 'at-home' as const }));
    expect(gapsOf(planOf({ people: atHome }), 'out-by-day')).toEqual([]);
  });

  it('are half as long where somebody is at home for half a day, and none where two take turns', () => {
    const half = (id: string, byDay: 'out-am' | 'out-pm'): Person => ({
      ...{ id, name: id, away: [], byDay },
      startH: { weekday: byDay === 'out-am' ? 13 : 8, weekend: 8 },
    });
    const saidOf = (people: Person[]) =>
      gapsOf(planOf({ people }), 'out-by-day').map(({ said }) => said);
    expect(saidOf([half('a', 'out-am')]).join()).toContain(
      'nobody is in the house from 8:00 to 12:00',
    );
    expect(saidOf([half('a', 'out-pm')]).join()).toContain(
      'nobody is in the house from 12:00 to 17:00',
    );
    expect(saidOf([half('a', 'out-am'), half('b', 'out-pm')])).toEqual([]);
  });

  it('name whose absence leaves one alone, and speak of turns only where two are there', () => {
    const out = { startH: { weekday: 17, weekend: 8 } };
    const ways = (away: Person['away']): string => {
      const people: Person[] = [
        { id: 'a', name: 'Adult A', away: [], ...out },
        { id: 'b', name: 'Adult B', away, ...out },
      ];
      return gapsOf(planOf({ people }), 'out-by-day')[0]!.ways.join(' ');
    };
    expect(ways([])).toContain('Somebody stays at home on those days, by turns.');
    expect(ways([])).toContain('At the least on Wed 28 Apr, when they want a look most often');
    const whole = ways([{ from: arrival, to: '2027-05-16' }]);
    expect(whole).toContain(
      'Adult A stays at home on those days: Adult B is away on 6 of the days from Wed 28 Apr to Wed 5 May.',
    );
    expect(whole).not.toContain('by turns');
    expect(ways([{ from: '2027-05-03', to: '2027-05-16' }])).toContain(
      'Somebody stays at home on those days, by turns where two are there: Adult B is away from Mon 3 May to Wed 5 May, and only Adult A is there then.',
    );
  });

  it('are ended by a neighbor who looks in as often as is said, and does the chores meanwhile', () => {
    const out: Person = { id: 'a', name: 'Adult A', away: [], startH: { weekday: 17, weekend: 8 } };
    const neighbor = (looksIn: number, name = 'Neighbor'): Person => ({
      ...{ id: 'n', name, away: [], looksIn, hoursByWeekday: Array<number>(7).fill(4) },
    });
    const [gap] = gapsOf(planOf({ people: [out] }), 'out-by-day');
    expect(gap!.ways.join(' ')).toContain('A neighbor looks in twice in between');
    expect(gapsOf(planOf({ people: [out, neighbor(2)] }), 'out-by-day')).toEqual([]);
    // Once leaves four and a half hours, where somebody looks every 3 or 4.
    expect(gapsOf(planOf({ people: [out, neighbor(1)] }), 'out-by-day')).toHaveLength(1);
    const plan = planOf({ people: [...both([trip]), neighbor(6)] });
    expect(gapsOf(plan, 'nobody-there')).toEqual([]);
    const onTrip = plan.chores.filter((_, day) => {
      const date = addDays(today, day);
      return trip.from <= date && date <= trip.to;
    });
    expect(onTrip.flat().every(({ personId }) => personId === 'n')).toBe(true);
    const byOthers = plan.chores.filter((list) => !onTrip.includes(list)).flat();
    expect(byOthers.some(({ personId }) => personId === 'n')).toBe(false);
    expect(plan.jobs.some(({ pieces }) => pieces.some((p) => p.personIds.includes('n')))).toBe(
      false,
    );
  });

  it('are no days of a household with chores it has no hours for, when it finds them', () => {
    const of = (hours: number): Person[] => [
      { id: 'a', name: 'Adult A', away: [], hoursByWeekday: Array<number>(7).fill(hours) },
    ];
    const [gap] = gapsOf(planOf({ people: of(0.25) }), 'no-hours');
    expect(gap!.said).toMatch(/^Chores of Meat chicks take up to .* more than anyone has/);
    expect(gapsOf(planOf({ people: of(3) }), 'no-hours')).toEqual([]);
  });

  it('hold every chore that no person is given', () => {
    const away = fc
      .tuple(fc.integer({ min: 0, max: 80 }), fc.integer({ min: 0, max: 20 }))
      .map(([from, days]) => ({ from: addDays(today, from), to: addDays(today, from + days) }));
    const person = (id: string) =>
      fc.record({
        id: fc.constant(id),
        name: fc.constant(id),
        away: fc.array(away, { maxLength: 3 }),
        hoursByWeekday: fc.array(fc.constantFrom(0, 0.5, 2), { minLength: 7, maxLength: 7 }),
      });
    fc.assert(
      fc.property(fc.tuple(person('a'), person('b')), (people) => {
        const { chores, careGaps } = planOf({ people });
        chores.forEach((list, day) => {
          const date = addDays(today, day);
          const isShort = list.some(({ shortHours }) => 0 < shortHours);
          const isTold = careGaps.some(
            ({ kind, from, to }) => kind !== 'out-by-day' && from <= date && date <= to,
          );
          if (isShort) expect(isTold).toBe(true);
        });
      }),
      { numRuns: 25 },
    );
  });
});
