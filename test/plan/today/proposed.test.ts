import { describe, expect, it } from '@jest/globals';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { LastTold } from '../../../shared/plan/today/last-told.js';
import { L_PER_US_GAL } from '../../../shared/units/convert.js';
import { proposalOf, type Feed } from '../../../src/web/tell/proposed.js';

type Asked = Parameters<typeof proposalOf>[0];
const TODAY = '2027-06-21';
const grower = {
  ...{ id: 'f', kind: 'feed', name: 'Grower', bagKg: 25, price: '30.00' },
  priceBreaks: [{ fromBags: 10, price: '25.00' }],
} as unknown as Feed;
const last = (kind: string, on: string, details: object): LastTold =>
  ({ kind, about: 'cows', on, details }) as unknown as LastTold;
const paid = (on: string, more: object = {}): LastTold =>
  last('bought', on, {
    ...{ what: 'feed', name: 'Grower', amount: 2, eachKg: 25, money: '64.00' },
    ...more,
  });
const values = (kind: Asked['kind'], more: Partial<Asked> = {}) =>
  proposalOf({
    ...{ kind, about: 'cows', draft: {}, lastTold: [], feeds: [grower], currency: 'USD' },
    ...{
      units: 'metric',
      today: TODAY,
      on: TODAY,
      holds: { price: 60, milk: 7 },
      sayDate: (on) => on,
    },
    ...more,
  }).values;
const buy = (before: LastTold, draft: object = {}) =>
  values('bought', {
    draft: { what: 'feed', name: 'Grower', amount: 3, ...draft },
    lastTold: [before],
  })['money'];

describe('what is proposed of something that is told', () => {
  it('is of rain the forecast of today, for today alone, and never what the gauge held before', () => {
    const rained = { rainTodayMm: 8, lastTold: [last('rained', '2027-06-20', { mm: 12 })] };
    expect(values('rained', rained)).toEqual({ mm: 8 });
    expect(values('rained', { ...rained, on: '2027-06-20' })).toEqual({});
    expect(values('rained', { lastTold: rained.lastTold })).toEqual({});
  });

  it('is of milk that of a week at most before the day that is told, else that of the plan', () => {
    const line = { kind: 'herd', milkKg: 9 } as AnimalLine;
    const milk = (day: string, on = TODAY) =>
      values('milked', { line, on, lastTold: [last('milked', day, { liters: 11 })] });
    expect(milk('2027-06-14')).toEqual({ liters: 11 });
    expect(milk('2027-06-13')).toEqual({ liters: 9 });
    expect(milk('2027-06-20', '2027-06-19')).toEqual({ liters: 9 });
  });

  it('is of water, milk and rain as much as a pail or a gauge is read to', () => {
    const water = (liters: number, units: 'us' | 'metric') =>
      values('water-drunk', {
        ...{ units, line: { kind: 'batch', water: { value: liters } } as AnimalLine },
      })['liters'];
    expect(water(29.4, 'us')).toBeCloseTo(8 * L_PER_US_GAL, 9);
    expect(water(29.4, 'metric')).toBe(29);
    const milk = { line: { kind: 'herd', milkKg: 13.2 } as AnimalLine, units: 'us' } as const;
    expect(values('milked', milk)['liters']).toBeCloseTo(3.5 * L_PER_US_GAL, 9);
    expect(values('rained', { rainTodayMm: 7.9, units: 'us' })['mm']).toBeCloseTo(7.62, 9);
  });

  it('takes what was paid for as many bags more, and the price list after two months', () => {
    expect(buy(paid('2027-06-01'))).toBe('96.00');
    expect(buy(paid('2027-01-01'))).toBe('90.00');
  });

  it('never multiplies the price of a bag onto a bag of another size', () => {
    expect(buy(paid('2027-06-01', { eachKg: 10 }))).toBe('90.00');
    expect(buy(paid('2027-06-01', { eachKg: 10 }), { eachKg: 40 })).toBeUndefined();
    expect(buy(paid('2027-06-01'), { name: 'Mash' })).toBeUndefined();
  });

  it('goes by the list where so many bags cost less each than were bought then', () => {
    expect(buy(paid('2027-06-01'), { amount: 12 })).toBe('300.00');
  });

  it('says nothing of other things that have no name', () => {
    const rope = last('bought', '2027-06-01', { what: 'other', amount: 1, money: '9.00' });
    expect(values('bought', { draft: { what: 'other', amount: 1 }, lastTold: [rope] })).toEqual({});
  });
});
