import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import type { CattleGroup } from '../../shared/farm/herd.js';
import { cowDay, weanedOn } from '../../shared/pasture/cow-day.js';
import { dueOf, herdDays, type HerdDays } from '../../shared/pasture/herd-demand.js';
import { tables } from '../support/factories.js';
import { newGroup } from '../support/pasture-factories.js';

const FIRST = '2027-03-01';
const DAYS = 290;
const on = (index: number): string => addDays(FIRST, index);
const daysOf = (...groups: CattleGroup[]): HerdDays =>
  herdDays({ id: 'h', name: 'Herd', groups }, tables, {
    first: FIRST,
    days: DAYS,
    from: 0,
    minC: new Float64Array(DAYS).fill(8),
    maxC: new Float64Array(DAYS).fill(20),
    hotC: new Float64Array(DAYS).fill(20),
    energyMcalPerKg: new Float64Array(800).fill(1.35),
  });
const { classes } = tables.cattle;
const KEYS = [
  'head',
  'liveKg',
  'demandKg',
  'shareOfWeightKg',
  'animalUnits',
  'waterL',
  'nitrogenKg',
  'phosphorusKg',
] as const;

describe('herdDays', () => {
  it('counts cattle from the day they arrive to the day before they leave', () => {
    const { head, demandKg } = daysOf(newGroup({ arrivesOn: on(20), leavesOn: on(50) }));
    for (let i = 0; i < DAYS; i++) {
      expect(head[i]).toBe(20 <= i && i < 50 ? 4 : 0);
      expect(0 < demandKg[i]!).toBe(20 <= i && i < 50);
    }
  });

  it('counts cattle that came before the first day or leave after the last on every day', () => {
    const { head } = daysOf(newGroup({ arrivesOn: on(-40), leavesOn: on(DAYS + 40) }));
    expect([...head]).toEqual(new Array(DAYS).fill(4));
  });

  it('counts none that leave before the first day or arrive after the last', () => {
    for (const group of [newGroup({ leavesOn: on(-5) }), newGroup({ arrivesOn: on(DAYS + 5) })]) {
      for (const key of KEYS) expect(daysOf(group)[key].every((value) => value === 0)).toBe(true);
    }
  });

  it('weighs growing cattle from the day they arrive', () => {
    const { liveKg } = daysOf(
      newGroup({
        classId: 'stocker',
        head: 2,
        weightKg: 250,
        gainKgPerDay: 0.9,
        arrivesOn: on(30),
      }),
    );
    expect(liveKg[29]).toBe(0);
    expect(liveKg[30]).toBe(500);
    expect(liveKg[40]).toBeCloseTo(2 * 259, 9);
  });

  it('takes weight, gain and milk of the class where the household gives none', () => {
    const stocker = classes.find((each) => each.id === 'stocker')!;
    const { liveKg } = daysOf(newGroup({ classId: 'stocker', head: 1 }));
    expect(liveKg[0]).toBe(stocker.weightKg);
    expect(liveKg[100]).toBeCloseTo(stocker.weightKg + 100 * stocker.gainKgPerDay, 9);
  });

  it('is the sum of its classes, and twice the head needs twice as much', () => {
    const group = fc.record({
      classId: fc.constantFrom(...classes.map((each) => each.id)),
      head: fc.integer({ min: 1, max: 40 }),
      weightKg: fc.integer({ min: 150, max: 900 }),
    });
    fc.assert(
      fc.property(group, group, (a, b) => {
        const [both, one, other] = [daysOf(a, b), daysOf(a), daysOf(b)];
        const twice = daysOf({ ...a, head: 2 * a.head });
        for (const key of KEYS) {
          for (let i = 0; i < DAYS; i += 29) {
            expect(both[key][i]!).toBeCloseTo(one[key][i]! + other[key][i]!, 6);
            expect(twice[key][i]!).toBeCloseTo(2 * one[key][i]!, 6);
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it('keeps its head whatever calves, gives milk or falls dry in between', () => {
    const group = fc.record({
      classId: fc.constantFrom(...classes.map((each) => each.id)),
      head: fc.integer({ min: 1, max: 40 }),
      calvesOn: fc.integer({ min: -200, max: 400 }).map(on),
    });
    fc.assert(
      fc.property(fc.array(group, { minLength: 1, maxLength: 4 }), (groups) => {
        const sum = groups.reduce((total, each) => total + each.head, 0);
        const days = daysOf(...groups);
        expect(days.head.every((head) => head === sum)).toBe(true);
        for (const key of KEYS)
          expect(days[key].every((v) => Number.isFinite(v) && 0 < v)).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  it('weighs calves at foot with their mothers until they are weaned', () => {
    // 554 lb at 192 days after 2.5 lb a day: 74 lb at birth, by hand.
    const { liveKg, calfLiveKg } = daysOf(newGroup({ classId: 'cow-calf', calvesOn: on(10) }));
    expect(calfLiveKg[10]! / 4).toBeCloseTo(33.6, 1);
    expect(calfLiveKg[202]! / 4).toBeCloseTo(251.3, 9);
    const { weaningDays } = tables.judgements.grass;
    const weaned = 10 + weaningDays.value;
    const cowKg = classes.find(({ id }) => id === 'cow-calf')!.weightKg;
    for (const day of [10, 100, weaned - 1])
      expect(liveKg[day]! - calfLiveKg[day]!).toBeCloseTo(4 * cowKg, 6);
    expect(liveKg[weaned]).toBeCloseTo(4 * cowKg, 6);
  });

  it('needs most at the best week of her milk, and least once the calf is weaned', () => {
    const group = newGroup({ classId: 'dry-cow', head: 1, calvesOn: on(10) });
    const { demandKg, animalUnits } = daysOf(group);
    const best = 10 + 60;
    expect(demandKg[best]!).toBeGreaterThan(demandKg[9]! + 0.5);
    const weaned = 10 + tables.judgements.grass.weaningDays.value;
    // The calf eats 5 to 6 kg of grass by then, beside what her milk asks of her.
    expect(demandKg[weaned - 1]! - demandKg[weaned]!).toBeGreaterThan(5);
    expect(demandKg[weaned]!).toBeCloseTo(demandKg[9]!, 6);
    // The date that is said is the day on which she is counted without it.
    const said = (classId: string, today: string): string | undefined =>
      weanedOn({ ...group, classId }, on(10), today, weaned - 10);
    expect(said('dry-cow', on(0))).toBe(on(weaned));
    expect(said('cow-calf', addDays(on(weaned), -400))).toBe(addDays(on(weaned), -365));
    expect(said('milk-cow', on(0))).toBeUndefined();
    const { calfOverDays, calfUnits } = tables.cattle.animalUnits;
    const four = 10 + calfOverDays;
    expect(animalUnits[four]! - animalUnits[four - 1]!).toBeCloseTo(calfUnits, 9);
    expect(animalUnits[weaned - 1]! - animalUnits[weaned]!).toBeCloseTo(calfUnits, 9);
  });

  it('gives a milk cow less in her first weeks than at her best, and least while she is dry', () => {
    const { demandKg } = daysOf(newGroup({ classId: 'milk-cow', head: 1, calvesOn: on(80) }));
    expect(demandKg[20]!).toBeLessThan(demandKg[19]!); // dry from 60 days before
    expect(demandKg[79]!).toBeLessThan(demandKg[120]!);
    expect(demandKg[81]!).toBeLessThan(demandKg[120]!);
  });
});

describe('cowDay', () => {
  const classAt = (group: CattleGroup, index: number): string =>
    cowDay(group, dueOf(group, tables)?.due, { date: on(index), typedOn: FIRST }, tables).of.id;

  it.each(['dry-cow', 'heifer'])('makes a %s a nursing cow on the day she calves', (classId) => {
    const group = newGroup({ classId, calvesOn: on(50) });
    expect(classAt(group, 49)).toBe(classId);
    expect(classAt(group, 50)).toBe('cow-calf');
    expect(classAt(group, 254)).toBe('cow-calf');
    expect(classAt(group, 255)).toBe('dry-cow'); // weaned at 205 days
  });

  it('weans last year’s calf of a cow that is due again, and gives her this year’s', () => {
    const group = newGroup({ classId: 'cow-calf', calvesOn: on(200) });
    expect(classAt(group, 39)).toBe('cow-calf'); // 204 days after the calving of the year before
    expect(classAt(group, 40)).toBe('dry-cow');
    expect(classAt(group, 199)).toBe('dry-cow');
    expect(classAt(group, 200)).toBe('cow-calf');
  });

  it('gives the milk that was typed on its day, and follows the curve from there', () => {
    const group = newGroup({ classId: 'milk-cow', milkKgPerDay: 12, calvesOn: on(-150) });
    const milkAt = (index: number): number =>
      cowDay(group, on(-150), { date: on(index), typedOn: on(0) }, tables).milkKg;
    expect(milkAt(0)).toBeCloseTo(12, 9);
    expect(milkAt(100)).toBeLessThan(12);
    expect(milkAt(100)).toBeGreaterThan(8);
  });

  it('makes a milk cow dry for the sixty days before she calves', () => {
    const group = newGroup({ classId: 'milk-cow', calvesOn: on(100) });
    const classesByDay = Array.from({ length: DAYS }, (_, i) => classAt(group, i));
    expect(classesByDay.filter((id) => id === 'dry-cow')).toHaveLength(60);
    expect(classesByDay[39]).toBe('milk-cow');
    expect(classesByDay[40]).toBe('dry-cow');
    expect(classesByDay[99]).toBe('dry-cow');
    expect(classesByDay[100]).toBe('milk-cow');
  });

  it.each(['stocker', 'bull', 'calf'])('leaves a %s what it is', (classId) => {
    const group = newGroup({ classId, calvesOn: on(50) });
    for (const i of [0, 49, 50, 200]) expect(classAt(group, i)).toBe(classId);
  });

  it('goes by the service where no due date is known, and by the due date where both are', () => {
    const bred = newGroup({ classId: 'dry-cow', bredOn: on(-233), breedId: 'all' });
    expect(dueOf(bred, tables)!.due).toBe(on(50));
    expect(classAt(bred, 49)).toBe('dry-cow');
    expect(classAt(bred, 50)).toBe('cow-calf');
    expect(dueOf({ ...bred, calvesOn: on(61) }, tables)!.due).toBe(on(61));
    expect(dueOf(newGroup(), tables)).toBeUndefined();
  });

  it('feeds cattle that join a herd in their pen for thirty days before they graze with it', () => {
    const own = newGroup({ classId: 'dry-cow', head: 2 });
    const bought = newGroup({ classId: 'stocker', head: 3, arrivesOn: addDays(FIRST, 10) });
    const { demandKg, grassKg } = daysOf(own, bought);
    const alone = daysOf(own).demandKg;
    for (const day of [10, 25, 39]) {
      expect(demandKg[day]!).toBeGreaterThan(alone[day]!);
      expect(grassKg[day]!).toBeCloseTo(alone[day]!, 9);
    }
    expect(grassKg[40]!).toBeCloseTo(demandKg[40]!, 9);
    // Bought for the season, with nobody to infect: they graze from the day they come.
    const { demandKg: need, grassKg: grass } = daysOf(bought);
    expect(grass[10]!).toBe(need[10]!);
  });
});
