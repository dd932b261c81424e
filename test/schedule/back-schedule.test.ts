import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import {
  backSchedule,
  type HungTask,
  type ScheduledTask,
} from '../../shared/schedule/back-schedule.js';

const ARRIVAL = '2027-05-05';
const task = (id: string, offsetDays: number, more: Partial<HungTask> = {}): HungTask => ({
  id,
  anchorDate: ARRIVAL,
  offsetDays,
  lengthDays: 1,
  waitsFor: [],
  ...more,
});
const scheduled = (tasks: readonly HungTask[], id: string, today = '2027-01-01'): ScheduledTask =>
  backSchedule(tasks, today).find((t) => t.id === id)!;

describe('backSchedule', () => {
  it('hangs a task on its anchor and lets it slip to the day before', () => {
    expect(scheduled([task('order', -7)], 'order')).toEqual({
      id: 'order',
      start: '2027-04-28', // 5 May − 7 days
      pulledDays: 0,
      end: '2027-04-28',
      latestStart: '2027-05-04', // one day of work before 5 May
      spareDays: 6,
      alreadyLate: false,
      overdue: false,
    });
  });

  it('counts the days of work into the end and out of the latest start', () => {
    const repair = scheduled([task('repair', -28, { lengthDays: 14 })], 'repair');
    expect(repair.start).toBe('2027-04-07');
    expect(repair.end).toBe('2027-04-20'); // 14 days, the first included
    expect(repair.latestStart).toBe('2027-04-21'); // 5 May − 14
    expect(repair.spareDays).toBe(14);
  });

  it('holds a task back by what waits for it', () => {
    const tasks = [task('bed', -10, { lengthDays: 2 }), task('heat', -5, { waitsFor: ['bed'] })];
    expect(scheduled(tasks, 'heat').latestStart).toBe('2027-05-04');
    expect(scheduled(tasks, 'bed').latestStart).toBe('2027-05-02'); // 4 May − 2 days of work
    expect(scheduled(tasks, 'bed').spareDays).toBe(7); // 25 April to 2 May
  });

  it('follows a chain of three to its tightest link', () => {
    const tasks = [
      task('book', -30),
      task('order', -20, { waitsFor: ['book'] }),
      task('collect', 0, { waitsFor: ['order'] }),
      task('pay', -18, { waitsFor: ['book'], lengthDays: 15 }),
    ];
    expect(scheduled(tasks, 'collect').spareDays).toBe(0); // nothing may push the day of arrival
    expect(scheduled(tasks, 'order').latestStart).toBe('2027-05-04');
    expect(scheduled(tasks, 'pay').latestStart).toBe('2027-04-20'); // 5 May − 15
    expect(scheduled(tasks, 'book').latestStart).toBe('2027-04-19'); // 20 April − 1, by pay
  });

  it('lets two tasks of one day follow each other within it', () => {
    const tasks = [task('collect', 0), task('place', 0, { waitsFor: ['collect'] })];
    expect(scheduled(tasks, 'collect').spareDays).toBe(0);
    expect(scheduled(tasks, 'collect').latestStart).toBe(ARRIVAL);
  });

  it('gives no slack to a task after its anchor that nothing waits for', () => {
    expect(scheduled([task('weigh', 14)], 'weigh').spareDays).toBe(0);
  });

  it('pulls a task forward when it leaves too little time for what waits for it', () => {
    const tasks = [task('dry', -2, { lengthDays: 5 }), task('bed', -1, { waitsFor: ['dry'] })];
    // Bedding may slip to 4 May, so five days of drying start on 29 April, not 3 May.
    expect(scheduled(tasks, 'dry')).toMatchObject({
      start: '2027-04-29',
      end: '2027-05-03',
      pulledDays: 4,
      spareDays: 0,
    });
  });

  it('starts daily work on its day, and lets what waits for it start while it goes on', () => {
    const tasks = [
      { ...task('care', 1, { lengthDays: 30 }), isDaily: true },
      task('weigh', 14, { waitsFor: ['care'] }),
    ];
    expect(scheduled(tasks, 'care')).toMatchObject({ start: '2027-05-06', spareDays: 0 });
    expect(scheduled(tasks, 'weigh').start).toBe('2027-05-19');
  });

  it('keeps the lead time that somebody outside needs, however much slack the chain has', () => {
    const order = { ...task('order', -84), latestOffsetDays: -28 };
    // 28 days before 5 May is 7 April.
    expect(scheduled([order], 'order').latestStart).toBe('2027-04-07');
  });

  it('leaves out a task that is waited for but not in the plan', () => {
    expect(scheduled([task('bed', -3, { waitsFor: ['nowhere'] })], 'bed').spareDays).toBe(2);
  });

  it('says what is already late and what is only overdue', () => {
    const tasks = [task('order', -84)]; // planned 10 February, latest 4 May
    expect(scheduled(tasks, 'order', '2027-02-10')).toMatchObject({
      alreadyLate: false,
      overdue: false,
    });
    expect(scheduled(tasks, 'order', '2027-02-11')).toMatchObject({
      alreadyLate: false,
      overdue: true,
    });
    expect(scheduled(tasks, 'order', '2027-05-04')).toMatchObject({
      alreadyLate: false,
      overdue: true,
    });
    expect(scheduled(tasks, 'order', '2027-05-05')).toMatchObject({
      alreadyLate: true,
      overdue: false,
    });
  });

  it('names the ring when tasks wait for each other in a circle', () => {
    const ring = [
      task('a', -3, { waitsFor: ['c'] }),
      task('b', -2, { waitsFor: ['a'] }),
      task('c', -1, { waitsFor: ['b'] }),
      task('d', -9),
    ];
    expect(() => backSchedule(ring, ARRIVAL)).toThrow('in a circle: a → b → c → a. Remove one.');
    expect(() => backSchedule([task('a', -3, { waitsFor: ['a'] })], ARRIVAL)).toThrow('a → a');
  });

  it('keeps the order and the number of what it was given, and does not change it', () => {
    const tasks = Object.freeze([Object.freeze(task('b', -2)), Object.freeze(task('a', -3))]);
    expect(backSchedule(tasks, ARRIVAL).map((t) => t.id)).toEqual(['b', 'a']);
    expect(backSchedule([], ARRIVAL)).toEqual([]);
  });

  it('leaves room for the work between a latest start and that of whatever waits, in any tree', () => {
    // Tasks wait only for tasks listed before them that start at least their length earlier.
    const trees = fc.array(
      fc.record({
        gap: fc.integer({ min: 3, max: 20 }),
        length: fc.integer({ min: 1, max: 3 }),
        after: fc.nat(9),
      }),
      { minLength: 1, maxLength: 10 },
    );
    fc.assert(
      fc.property(trees, (rows) => {
        let offset = -300;
        const tasks = rows.map(({ gap, length, after }, k) => {
          offset += gap;
          return task(`t${k}`, offset, {
            lengthDays: length,
            waitsFor: k === 0 ? [] : [`t${after % k}`],
          });
        });
        const byId = new Map(backSchedule(tasks, '2026-01-01').map((t) => [t.id, t]));
        for (const each of tasks) {
          const own = byId.get(each.id)!;
          expect(own.spareDays).toBe(daysBetween(own.start, own.latestStart));
          expect(own.spareDays).toBeGreaterThanOrEqual(0);
          expect(own.end).toBe(addDays(own.start, each.lengthDays - 1));
          for (const before of each.waitsFor) {
            const length = tasks.find((t) => t.id === before)!.lengthDays;
            expect(
              daysBetween(byId.get(before)!.latestStart, own.latestStart),
            ).toBeGreaterThanOrEqual(length);
          }
        }
      }),
    );
  });
});
