import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import type { Supplier } from '../../../shared/farm/supplier.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork } from '../../../shared/plan/farm/work-of-farm.js';
import { isFetch } from '../../../shared/plan/tasks/fetches.js';
import { todayOf } from '../../../shared/plan/today/today.js';
import { pictureOfFile } from '../../../src/cli/farm-file.js';
import { tables } from '../../support/factories.js';

const example = pictureOfFile('seeds/farm.example.jsonc', tables);
const [{ arrivalDate }] = example.batches as [(typeof example.batches)[number]]; // a Wednesday
const STARTER = 'Meat bird starter';
/** Open on Tuesdays, Fridays and Saturdays; what is ordered is ready two days later. */
const mill: Supplier = {
  ...({ id: 'mill', name: 'Mill', comes: 'fetched' } as const),
  ...{ tripCost: '16.00', tripH: 1, leadDays: 2, openWeekdays: [2, 5, 6] },
};
const farm: FarmPicture = {
  ...example,
  suppliers: [mill],
  products: example.products.map((each) =>
    each.kind === 'feed' && each.name === STARTER ? { ...each, supplierId: mill.id } : each,
  ),
};

const on = (days: number, more: Partial<FarmPicture> = {}) => {
  const picture = { ...farm, today: addDays(arrivalDate, days), ...more };
  const animals = planAnimals(picture, tables);
  const work = planWork(picture, tables, animals);
  const trip = work.jobs.find(
    ({ key, buys }) => isFetch(key) && buys?.lines.some(({ name }) => name === STARTER),
  )!;
  const { attention } = todayOf(picture, tables, animals, work);
  return { trip, attention, alarm: attention.find(({ key }) => key.includes('first-feed')) };
};

describe('the first feed of birds that come', () => {
  it('is fetched before them, and nothing is said of it while it can be', () => {
    const { trip, alarm } = on(-4);
    expect(trip.latest).toBe(addDays(arrivalDate, -1));
    expect(trip.pieces[0]!.date <= trip.latest).toBe(true);
    expect(alarm).toBeUndefined();
  });

  it.each([-3, -1, 0])('is due no later once no trip can bring it in time: %i days', (days) => {
    const { trip, attention, alarm } = on(days);
    expect(trip.latest).toBe(addDays(arrivalDate, -1));
    expect(arrivalDate < trip.pieces[0]!.date).toBe(true);
    expect(attention[0]).toBe(alarm);
    expect(alarm).toMatchObject({ level: 'stop', words: `no ${STARTER} for when they come` });
    expect(attention.filter(({ words }) => words.includes(STARTER))).toEqual([alarm]);
  });

  it('stays wanting once they are there, until it is told as bought', () => {
    const bought = (name: string, amount: number) => ({
      feedBought: [{ id: name, date: addDays(arrivalDate, -1), name, amount, eachKg: 22.68 }],
    });
    expect(on(2, bought('Meat bird grower', 1)).alarm).toBeDefined();
    expect(on(2, bought(STARTER, 5)).alarm).toBeUndefined();
    expect(on(-1, bought(STARTER, 5)).alarm).toBeUndefined();
  });
});
