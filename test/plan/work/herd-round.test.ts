import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import { describe, expect, it } from '@jest/globals';
import type { CattleGroup } from '../../../shared/farm/herd.js';
import { herdRounds } from '../../../shared/plan/work/herd-round.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../../shared/plan/farm/work-of-farm.js';
import { workPlanOf } from '../../../shared/plan/work/work-plan.js';
import { tables } from '../../support/factories.js';
import { TEN_HOUSEHOLDS } from '../../support/ten-households.js';

const today = '2027-12-01';
const roundsOf = (group: Partial<CattleGroup>, isSeen: (day: number) => boolean = () => false) => {
  const groups = [{ classId: 'dry-cow', head: 10, ...group }];
  const herd = { id: 'h', name: 'Cows', groups };
  return herdRounds({ herd, tables, today, days: 20, isSeen, isFed: (day) => day === 7 });
};

describe('the round of a herd', () => {
  it('comes on every day there are cattle, and no day on which another chore sees them', () => {
    const [round] = roundsOf(
      { arrivesOn: '2027-12-04', leavesOn: '2027-12-14' },
      (day) => day === 5,
    );
    expect([...round!.onDays!]).toEqual([3, 4, 6, 7, 8, 9, 10, 11, 12]);
  });

  it('brings hay also where a watch at calving has somebody there, unless that brings it', () => {
    const rounds = roundsOf({}, (day) => [5, 6, 7].includes(day));
    const hay = rounds.find(({ key }) => key === 'herd/h/hay')!;
    expect([...hay.onDays!]).toEqual([5, 6]);
    // seeds/herd-task-templates.json, for ten head: 0.25 + 0.1 h.
    expect(hay.hoursPerDay).toBeCloseTo(0.35, 9);
  });

  it('takes the hours of feeding hay and of the daily look, by the templates of both', () => {
    // seeds/herd-task-templates.json, for ten head: 0.25 + 0.1 h, 0.35 + 0.05 h.
    expect(roundsOf({})[0]!.hoursPerDay).toBeCloseTo(0.75, 9);
  });

  it('milks a milk cow twice a day, but for two months before she calves', () => {
    const calvesOn = '2028-02-09'; // 60 days before it is 11 December, the first dry day
    const [milking] = roundsOf({ classId: 'milk-cow', head: 1, calvesOn });
    expect(milking).toMatchObject({ name: 'Milk, morning and evening', hoursPerDay: 1 });
    expect([...milking!.onDays!]).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    // By her day of service too: seeds/gestation.json has 283 days where the breed is not known.
    const bredOn = '2027-05-02';
    expect([...roundsOf({ classId: 'milk-cow', head: 1, bredOn })[0]!.onDays!]).toHaveLength(10);
  });

  it('sets fences on the day of every move, and of every strip of a stay', () => {
    const groups = [{ classId: 'dry-cow', head: 10 }];
    const dates = { from: '2027-12-03', to: '2027-12-06', longestDays: 2 };
    const stay = { herdId: 'h', paddockId: 'p', ...dates };
    const other = { ...stay, herdId: 'other', from: '2027-12-09', to: '2027-12-12' };
    const paddocks = [{ id: 'p', name: 'Creek' }];
    const pasture = { from: today, to: today, herds: [], moves: [stay, other], paddocks };
    const rounds = herdRounds({
      ...{ herd: { id: 'h', name: 'Cows', groups }, tables, today, days: 20 },
      pasture: pasture as never,
      isSeen: () => true,
      isFed: () => true,
    });
    const moves = rounds.find(({ key }) => key === 'herd/h/moves')!;
    expect([...moves.onDays!]).toEqual([2, 4]);
    expect([2, 4].map((day) => moves.nameOn!.get(day)!.split(':')[0])).toEqual([
      'Move them into Creek, strip 1 of 2',
      'Give them the next strip of Creek, 2 of 2',
    ]);
    // A stay that goes on counts from its first day: today is the third of it.
    const since = { inPaddockId: 'p', inSince: addDays(today, -2) };
    const goesOn = { ...pasture, moves: [{ ...stay, from: today, to: addDays(today, 3) }] };
    const now = herdRounds({
      ...{ herd: { id: 'h', name: 'Cows', groups, ...since }, tables, today, days: 20 },
      ...{ pasture: goesOn as never, isSeen: () => true, isFed: () => true },
    });
    expect([...now.find(({ key }) => key === 'herd/h/moves')!.onDays!]).toEqual([0, 2]);
    // Published guesses: 0.4 h to set front and back fence, 0.2 h to measure the next paddock.
    expect(moves.hoursPerDay).toBeCloseTo(0.6, 9);
  });

  it('asks nothing once they have gone', () => {
    expect(roundsOf({ leavesOn: today })).toEqual([]);
  });

  it('goes in the next season by hay and grass of this one', () => {
    const season = { from: '2027-12-01', to: '2027-12-04', today };
    const stay = { herdId: 'h', paddockId: 'p', from: '2027-12-03', to: '2027-12-03' };
    const pasture = {
      ...season,
      herds: [{ id: 'h', hayByDay: [5, 5, 0, 5] }],
      moves: [{ ...stay, longestDays: 1 }],
      paddocks: [{ id: 'p', name: 'Creek' }],
    };
    const rounds = herdRounds({
      ...{ herd: { id: 'h', name: 'Cows', groups: [{ classId: 'dry-cow', head: 10 }] }, tables },
      ...{ today, days: 370, pasture: pasture as never, isSeen: () => false, isFed: () => false },
    });
    const daysOf = (key: string) => [...rounds.find((each) => each.key === key)!.onDays!];
    // 3 December is day 2, and day 367 a year later.
    expect(daysOf('herd/h/round')).toEqual([2, 367]);
    expect(daysOf('herd/h/moves')).toEqual([2, 367]);
    expect(daysOf('herd/h/winter-round')).toHaveLength(368);
  });

  it('brings no hay after the day on which there is grass again, though nothing is planned of it yet', () => {
    const hayByDay = [0, 0, 5, 5];
    const herds = [{ id: 'h', hayByDay, grassAgain: addDays(today, 150) }];
    const pasture = { from: today, to: addDays(today, 3), today, herds, moves: [], paddocks: [] };
    const rounds = herdRounds({
      ...{ herd: { id: 'h', name: 'Cows', groups: [{ classId: 'dry-cow', head: 10 }] }, tables },
      ...{ today, days: 369, isSeen: () => false, isFed: () => false },
      // The plan of 1 December is of the days from 1 December on: day 365 is its first a year later.
      pasture: pasture as never,
    });
    const onHay = rounds.find(({ key }) => key === 'herd/h/winter-round')!.onDays!;
    expect([...onHay]).toEqual([...Array.from({ length: 148 }, (_, k) => k + 2), ...[367, 368]]);
    const onGrass = rounds.find(({ key }) => key === 'herd/h/round')!.onDays!;
    expect(onHay.size + onGrass.size).toBe(369);
  });
});

it('has hay for the days by which cattle go out later, from the day they were to go', () => {
  const herd = { id: 'h', name: 'Cows', groups: [{ classId: 'dry-cow', head: 10 }] };
  const hayByDay = Array.from({ length: 20 }, (_, day) => (4 <= day && day < 10 ? 5 : 0));
  const herds = [{ id: 'h', hayByDay }];
  const pasture = { from: today, to: addDays(today, 19), herds, moves: [], paddocks: [] };
  const given = { herd, tables, today, days: 20, pasture: pasture as never };
  const daysOn = (later: { outLaterDays?: number; outOn?: string }): number[] => {
    const rounds = herdRounds({ ...given, ...later, isSeen: () => false, isFed: () => false });
    return [...rounds.find(({ key }) => key === 'herd/h/winter-round')!.onDays!];
  };
  expect(daysOn({})).toEqual([4, 5, 6, 7, 8, 9]);
  const outOn = addDays(today, 13);
  expect(daysOn({ outLaterDays: 3, outOn })).toEqual([4, 5, 6, 7, 8, 9, 10, 11, 12]);
});

it('walks once to groups of a herd that calve on the same days', () => {
  const [, picture] = TEN_HOUSEHOLDS.find(([name]) => name === 'a milk cow')!;
  const plan = workPlanOf(workOfFarm(picture, tables, planAnimals(picture, tables)), 1);
  // Six looks of seven minutes and a half, and a minute more for each cow. One cow, then four with her.
  const hoursOn = (date: string): number[] =>
    plan.chores[daysBetween(plan.today, date)]!.filter(({ name }) =>
      name.startsWith('Round-the-clock checks'),
    ).map(({ hours }) => hours);
  const alone = hoursOn('2027-04-22');
  const both = hoursOn('2027-05-01');
  expect(alone).toHaveLength(1);
  expect(alone[0]).toBeCloseTo(0.75 + 0.1, 1);
  expect(both).toHaveLength(2);
  expect(both[0]! + both[1]!).toBeCloseTo(0.75 + 0.5, 1);
  expect(hoursOn('2027-05-25')[0]).toBeCloseTo(0.75 + 0.4, 1);
  // One cow, due on 20 April, is watched until 12 days after, as far as any of her breed goes over.
  expect(hoursOn('2027-05-02')).toHaveLength(2);
  expect(hoursOn('2027-05-03')).toHaveLength(1);
});
