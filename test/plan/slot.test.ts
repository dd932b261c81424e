import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../shared/calendar/plain-date.js';
import type { Batch } from '../../shared/farm/batch.js';
import { FieldError } from '../../shared/problems/field-problem.js';
import { newRequest } from '../support/factories.js';
import { foundArrivals, foundReady, plannedBatch } from '../support/pictures.js';

const withSlot = (batch: Partial<Batch>) => newRequest({ batch: { wantedBirds: 60, ...batch } });
const planned = (batch: Partial<Batch>) => plannedBatch(withSlot(batch));
const codes = (batch: Partial<Batch>) => planned(batch).issues.map(({ code }) => code);

/** @throws what is wrong with the fields of a batch or a goal */
function problemOf(of: () => unknown) {
  try {
    of();
  } catch (error) {
    if (error instanceof FieldError) return error.problems[0];
    throw error;
  }
  return undefined;
}

describe('a slot that is booked', () => {
  it('is the day they leave, by a processor, whatever else was wished', () => {
    fc.assert(
      fc.property(fc.integer({ min: 30, max: 110 }), (days) => {
        const slotDate = addDays('2027-05-05', days);
        const { leaving, tasks } = planned({ slotDate, processingWeekday: 2, targetLiveKg: 2.5 });
        expect(leaving!.processingDays.map(({ on }) => on)).toEqual([slotDate]);
        expect(leaving!.age.value).toBe(days + 1); // hatched the day before they came
        expect(leaving!.birdsADay).toBeUndefined();
        const isOver = (id: string) =>
          tasks.tasks.find(({ templateId }) => templateId === id)!.isOver;
        expect(isOver('meat.book-processor-or-fix-own-processing')).toBe(true);
      }),
      { numRuns: 6 },
    );
  });

  it('wants the weight of the strain, whatever birds that were weighed turn out to be', () => {
    const slotDate = '2027-06-28';
    const weighing = { id: 'w', batchId: 'any', date: '2027-05-20', birds: 10, averageKg: 0.25 };
    const request = { ...withSlot({ slotDate }), today: '2027-05-21' };
    const [before, after] = [request, { ...request, weighings: [weighing] }].map(
      (each) => plannedBatch(each).leaving!.slot!,
    );
    expect(after!.wanted.value).toBe(before!.wanted.value);
    expect(after!.over.value).toBeLessThan(before!.over.value);
  });

  it('says when they are too light or too heavy on it, and which dates would be right', () => {
    expect(codes({ slotDate: '2027-06-12' })).toContain('slot-under');
    expect(codes({ slotDate: '2027-07-20' })).toContain('slot-over');
    const { slot } = planned({ slotDate: '2027-06-12' }).leaving!;
    expect(slot!.over.value).toBeLessThan(0);
    // Each of the dates it names is right when it is taken.
    for (const { value } of [slot!.slots.from, slot!.slots.best, slot!.slots.to]) {
      const found = codes({ slotDate: String(value) });
      expect(found.filter((code) => code === 'slot-under' || code === 'slot-over')).toEqual([]);
    }
    const arrivalDate = String(slot!.arrivals.best.value);
    const right = planned({ arrivalDate, slotDate: '2027-06-12' }).leaving!;
    expect(Math.abs(right.slot!.over.value)).toBeLessThan(0.05 * right.slot!.wanted.value);
  });

  it('says when it is for fewer or more than come to it', () => {
    const slotDate = '2027-06-30';
    expect(codes({ slotDate, slotBirds: 40 })).toContain('slot-too-small');
    expect(codes({ slotDate, slotBirds: 200 })).toContain('slot-not-filled');
  });

  it('takes points off arrivals that do not suit it', () => {
    const search = { from: '2027-04-01', to: '2027-07-01' };
    const weeks = foundArrivals(withSlot({ slotDate: '2027-08-14' }), search);
    const isOff = ({ reasons }: (typeof weeks)[number]) => reasons.some((r) => r.code === 'slot');
    const suiting = weeks.filter((week) => !isOff(week)).map(({ arrivalDate }) => arrivalDate);
    expect(suiting.length).toBeGreaterThan(0);
    for (const date of suiting) expect(daysBetween(date, '2027-08-14')).toBeGreaterThan(45);
    expect(weeks.filter(isOff).length).toBeGreaterThan(8);
  });

  it('begins the whole plan: arrivals with weight, order and what suits better', () => {
    const on = '2027-08-14';
    const found = foundReady(newRequest(), { goal: 'slot', on, head: 60 });
    const [best] = found.arrivals;
    const { from, best: middle, to } = found.slot!.arrivals;
    expect([from.value, middle.value, to.value]).toEqual(
      [from.value, middle.value, to.value].toSorted(),
    );
    expect(best!.orderBy!.value).toBe(addDays(best!.arrivalDate, -28)); // four weeks are usual
    expect(best!.isLateToOrder).toBe(false);
    // Taken up, the birds are as heavy as was said.
    const { leaving } = planned({ arrivalDate: best!.arrivalDate, slotDate: on, slotBirds: 60 });
    expect(leaving!.liveEach.value).toBeCloseTo(best!.liveEach!.value, 3);
    // A Wednesday box meets the weight well enough: nothing better is named.
    expect(found.betterSlot).toBeUndefined();
    const soon = foundReady(newRequest({ today: '2027-05-20' }), {
      goal: 'slot',
      on: '2027-07-04',
    });
    expect(soon.arrivals.some(({ isLateToOrder }) => isLateToOrder)).toBe(true);
    expect(String(soon.betterSlot!.value) > '2027-07-04').toBe(true);
  });

  it.each<[string, string, () => unknown]>([
    ['batch.slotDate', 'before four weeks of age', () => planned({ slotDate: '2027-05-30' })],
    [
      'batch.slotDate',
      'beside processing at home',
      () => planned({ slotDate: '2027-07-01', processing: 'home' }),
    ],
    [
      'batch.slotBirds',
      'for more than were ordered',
      () => planned({ slotDate: '2027-07-01', slotBirds: 70, orderedBirds: 60 }),
    ],
    ['batch.slotBirds', 'for none', () => planned({ slotDate: '2027-07-01', slotBirds: 0 })],
    ['batch.killingCones', 'without a cone', () => planned({ killingCones: 0 })],
    ['on', 'in the past', () => foundReady(newRequest(), { goal: 'slot', on: '2026-11-01' })],
    [
      'on',
      'before any bird can be ready',
      () => foundReady(newRequest(), { goal: 'slot', on: '2026-12-15' }),
    ],
    [
      'head',
      'for none from the end',
      () => foundReady(newRequest(), { goal: 'slot', on: '2027-08-14', head: 0 }),
    ],
  ])('is refused at %s: %s', (field, _, of) => {
    expect(problemOf(of)).toMatchObject({ field });
  });
});
