import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { quantityOfDay } from '../../../shared/explain/daily-series.js';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import type { NumberQuantity } from '../../../shared/explain/quantity.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { Product } from '../../../shared/farm/product.js';
import { FORMULAS } from '../../../shared/formulas/formulas.js';
import { newBatch, newBrooder, newRequest } from '../../support/factories.js';
import { costedBatch, plannedBatch } from '../../support/pictures.js';

const FEED: readonly Product[] = ['starter', 'grower', 'finisher'].map((phase, k) => ({
  id: phase,
  kind: 'feed',
  name: phase,
  phaseIds: [phase],
  bagKg: 20,
  price: ['21.00', '19.50', '19.00'][k]!,
}));
const PRODUCTS: readonly Product[] = [
  ...FEED,
  { id: 'c', kind: 'chicks', name: 'Chicks', price: '3.00' },
  { id: 'b', kind: 'bedding', name: 'Shavings', price: '8.00' },
  { id: 'i', kind: 'ice', name: 'Ice', price: '3.50' },
  { id: 'z', kind: 'freezer-bags', name: 'Bags', price: '0.60' },
];
const HOUR: Product = { id: 'h', kind: 'own-hour', name: 'An hour', price: '15.00' };
const meat = (price: string, fromDressedKg?: number): Product => ({
  id: `m${fromDressedKg ?? 0}`,
  kind: 'meat',
  name: 'Whole birds',
  price,
  ...(fromDressedKg === undefined ? {} : { fromDressedKg }),
});

/** Fifty fast meat birds with every price, processed at home, unless said otherwise. */
function given(batch: Partial<Batch> = {}, more: readonly Product[] = [], products = PRODUCTS) {
  return newRequest({
    facilities: [newBrooder()],
    products: [...products, ...more],
    batch: newBatch({ brooderId: 'brooder', wantedBirds: 50, ...batch }),
  });
}
const costOf = (...asked: Parameters<typeof given>) => costedBatch(given(...asked));
const stopOf = (...asked: Parameters<typeof given>) => costOf(...asked).stop!;
const ageOf = (...asked: Parameters<typeof given>): number => stopOf(...asked).stop!.bestAge.value;

describe('what a batch must bring', () => {
  it('pays for the whole bill at the price to break even, live and dressed', () => {
    const { breakEven } = costOf({}, [
      HOUR,
      { id: 't', kind: 'trip', name: 'Trip', price: '6.00' },
    ]);
    const { leaving, bill } = plannedBatch(given());
    const amounts = [leaving!.liveAll.value, leaving!.dressedAll.value];
    // A price is kept to a hundredth of a coin: half of one for each kilogram is lost of the whole.
    const lost = (price: number, k: number, all: number) =>
      Math.abs(price * amounts[k]! - all) / amounts[k]!;
    breakEven.mustBring.forEach(({ withoutHours, withHours }, k) => {
      const { withoutHours: all, withHours: allWith } = breakEven;
      expect(lost(withoutHours.value, k, all.value)).toBeLessThanOrEqual(0.005 + 1e-9);
      expect(lost(withHours!.value, k, allWith!.value)).toBeLessThanOrEqual(0.005 + 1e-9);
    });
    const trips = breakEven.beside[0]!.cost.value;
    expect(breakEven.withoutHours.value).toBe(bill.total.value + trips);
    expect(breakEven.withHours!.value).toBe(
      breakEven.withoutHours.value + breakEven.ownHours!.cost.value,
    );
  });

  it('counts hours at nothing where none is reckoned, and says so', () => {
    const { breakEven } = costOf();
    expect(breakEven.withHours).toBeUndefined();
    expect(breakEven.said[0]).toMatch(/hours are counted at nothing/);
    expect(breakEven.mustBring[0]!.withoutHours.label).toMatch(/your hours at nothing/);
  });

  it('writes gear off over its years and the batches of a year, for birds of its kind', () => {
    const pens = { id: 'g', kind: 'gear', name: 'Pens', years: 8, batchesAYear: 3 } as const;
    const gear: Product = { ...pens, price: '640.00', usedFor: 'meat' };
    // 640 ÷ 8 ÷ 3 = 26.666…
    expect(costOf({}, [gear]).breakEven.beside.map(({ cost }) => cost.value)).toEqual([2667]);
    expect(costOf({}, [{ ...gear, usedFor: 'layers' }]).breakEven.beside).toEqual([]);
  });

  it('sets the price that was given beside it, by the size of the birds', () => {
    const { breakEven } = costOf({}, [meat('8.00'), meat('9.00', 1.5), meat('20.00', 5)]);
    expect(breakEven.priceWanted!.value).toBe(900);
    const { dressedAll } = plannedBatch(given()).leaving!;
    expect(breakEven.brings!.value).toBe(Math.round(900 * dressedAll.value));
    expect(breakEven.left!.value).toBe(breakEven.brings!.value - breakEven.withoutHours.value);
  });

  it('has no price to break even where something it is made of has none', () => {
    const withoutFeed = PRODUCTS.filter(({ kind }) => kind !== 'feed');
    const { breakEven, stop } = costOf({}, [], withoutFeed);
    expect(breakEven.mustBring).toEqual([]);
    expect(stop!.stop).toBeUndefined();
    expect(stop!.said).toHaveLength(1);
    expect(stop!.weeks.every(({ next }) => next === undefined)).toBe(true);
    expect(stop!.weeks.some(({ conversion }) => conversion)).toBe(true);
  });
});

describe('the weeks of a bill', () => {
  it('add up to it, to the smallest coin, for any batch and currency', () => {
    fc.assert(
      fc.property(
        fc.record({
          wantedBirds: fc.integer({ min: 1, max: 300 }),
          leaveAgeDays: fc.integer({ min: 28, max: 90 }),
          strainId: fc.constantFrom('fast-meat', 'slow-meat'),
        }),
        fc.constantFrom('USD', 'JPY', 'KWD'),
        (batch, currency) => {
          const request = given(batch);
          const asked = { ...request, farm: { ...request.farm, currency } };
          const { weeks } = costedBatch(asked).stop!;
          const { bill } = plannedBatch(asked);
          const planned = weeks.filter(({ isBeyond }) => !isBeyond);
          const sum = planned.reduce((all, { cost }) => all + cost!.value, 0);
          expect(sum).toBe(bill.total.value);
          expect(planned.at(-1)!.soFar!.value).toBe(bill.total.value);
          expect(planned.at(-1)!.isPlanned).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('hold all feed of the plan', () => {
    const { weeks } = stopOf();
    const fed = weeks.filter(({ isBeyond }) => !isBeyond).reduce((sum, w) => sum + w.feed.value, 0);
    expect(fed).toBeCloseTo(plannedBatch(given()).feed.total.value, 1);
  });
});

describe('when to stop feeding', () => {
  it('is the day on which all of the meat costs least', () => {
    const { stop, daily } = stopOf();
    const each = daily.find(({ id }) => id === 'each-kg')!.values;
    const best = Math.min(...each.slice(27, -1));
    expect(stop!.eachAtBest.value).toBeCloseTo(best, 2);
    expect(stop!.weekEarly.costs.value).toBeGreaterThan(0);
    expect(stop!.weekLate.costs.value).toBeGreaterThan(0);
    expect(stop!.weekEarly.weight.value).toBeLessThan(0);
    expect(stop!.weekLate.weight.value).toBeGreaterThan(0);
  });

  it('lies where the next of it begins to cost more than all of it', () => {
    const { stop, daily } = stopOf();
    const day = stop!.bestAge.value - 1;
    const at = (id: string, on: number): number =>
      (quantityOfDay(daily, id, on) as NumberQuantity).value;
    expect(at('next-kg', day)).toBeGreaterThan(at('each-kg', day) * 0.97);
    expect(at('next-kg', day - 3)).toBeLessThan(at('each-kg', day - 3));
    expect(at('next-kg', day + 3)).toBeGreaterThan(at('each-kg', day + 3));
  });

  it.each([
    ['fast-meat', 6, 9.5],
    ['slow-meat', 9, 13],
  ])('is an age at which people process %s', (strainId, from, to) => {
    const weeks = ageOf({ strainId, leaveAgeDays: Math.round(7 * to) }) / 7;
    expect(weeks).toBeGreaterThanOrEqual(from);
    expect(weeks).toBeLessThanOrEqual(to);
  });

  it('does not hang on the day in the plan', () => {
    expect(Math.abs(ageOf({ leaveAgeDays: 42 }) - ageOf({ leaveAgeDays: 63 }))).toBeLessThan(3);
  });

  it('comes later where the young are dearer, and sooner where feed is', () => {
    const usual = ageOf();
    expect(ageOf({ prices: { perBird: '6.00' } })).toBeGreaterThan(usual);
    const feedPerBag = { starter: '40', grower: '40', finisher: '40' };
    expect(ageOf({ prices: { feedPerBag } })).toBeLessThan(usual);
  });

  it('does not hang on one price for all sizes; feed pays for itself longer where it is high', () => {
    const [low, high] = [stopOf({}, [meat('6.00')]), stopOf({}, [meat('12.00')])];
    expect(low.stop!.bestAge).toEqual(high.stop!.bestAge);
    expect(String(low.stop!.paysUntil!.value) < String(high.stop!.paysUntil!.value)).toBe(true);
    expect(stopOf().stop!.paysUntil).toBeUndefined();
  });

  it('waits for a size that brings more', () => {
    const { stop, weeks } = stopOf({}, [meat('6.00'), meat('9.00', 2.5)]);
    expect(stop!.bestAge.value).toBeGreaterThan(ageOf());
    expect(stopOf({}, [meat('6.00'), meat('9.00', 2.5)]).said[0]).toMatch(/^The meat leaves most/);
    const heavier = weeks.find(({ ageDays }) => stop!.bestAge.value < ageDays);
    expect(heavier!.dressedEach.value).toBeGreaterThan(2.5);
  });

  it('says to stop sooner where the meat brings less than it costs', () => {
    const { stop, said } = stopOf({}, [meat('3.00')]);
    expect(String(stop!.paysUntil!.value) < String(stop!.best.value)).toBe(true);
    expect(said.join(' ')).toMatch(/stop sooner: after .* a day more costs more than it adds/);
  });

  it('says of a day that is past that it is', () => {
    const late = { ...given({ orderedBirds: 55, leaveAgeDays: 84 }), today: '2027-07-20' };
    expect(costedBatch(late).stop!.said.join(' ')).toMatch(/That day is past/);
  });

  it('says what a slot costs against the best day', () => {
    const slotDate = '2027-06-26';
    const { stop, said } = stopOf({
      slotDate,
      processing: 'hired',
      prices: { processingPerBird: '5' },
    });
    expect(stop!.planned.on.value).toBe(slotDate);
    expect(said.join(' ')).toMatch(/The slot, Sat 26 Jun/);
  });

  it('opens every number with a formula that is listed', () => {
    for (const { formula, label } of quantitiesIn(costOf({}, [HOUR, meat('9.00')])))
      expect([label, FORMULAS.has(formula)]).toEqual([label, true]);
  });
});

describe('hens as they grow old', () => {
  const bags = { starter: '22', grower: '21', developer: '20', 'pre-lay': '21', layer: '20' };
  const hens = (eggDozen?: string) =>
    costOf({
      purpose: 'layers',
      strainId: 'brown-layer',
      sex: 'pullets',
      wantedBirds: 20,
      prices: { perBird: '4.50', feedPerBag: bags, ...(eggDozen ? { eggDozen } : {}) },
    }).layAges!;

  it('cost more feed a dozen with each year, and are kept two or three of them', () => {
    const { quarters, keepUntil, cheapest } = hens();
    const ofYear = (year: number): number => {
      const own = quarters.slice(4 * year, 4 * year + 4);
      const eggs = own.reduce((sum, q) => sum + q.eggs.value, 0);
      return own.reduce((sum, q) => sum + q.feedCost!.value * q.eggs.value, 0) / eggs;
    };
    expect(ofYear(0)).toBeLessThan(ofYear(1));
    expect(ofYear(1)).toBeLessThan(ofYear(2));
    const kept = quarters.findIndex(({ from }) => from.value === keepUntil!.value);
    expect(kept).toBeGreaterThanOrEqual(6);
    expect(kept).toBeLessThanOrEqual(12);
    expect(cheapest!.value).toBe(Math.min(...quarters.map((q) => q.soFar!.value)));
  });

  it('say from how many eggs on they pay, where a dozen has a price', () => {
    expect(hens().paysFrom).toBeUndefined();
    const [dear, cheap] = [hens('6.00').paysFrom!, hens('3.00').paysFrom!];
    expect(cheap.value).toBeCloseTo(2 * dear.value, 2);
    expect(hens('6.00').said.join(' ')).toMatch(/Ten hens pay for their feed while/);
  });
});
