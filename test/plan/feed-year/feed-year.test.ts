import { describe, expect, it } from '@jest/globals';
import { daysBetween, weekdayOf } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import type { FeedProduct } from '../../../shared/farm/product.js';
import type { FactOf } from '../../../shared/farm/told-fact.js';
import { batchCost } from '../../../shared/plan/cost/batch-cost.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { feedYear, type FeedYear } from '../../../shared/plan/feed-year/feed-year.js';
import { newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const { farm, climate, facilities, batch } = newRequest({
  batch: { arrivalDate: '2027-03-01', wantedBirds: 50 },
});
const feed = (phase: string, more: Partial<FeedProduct> = {}): FeedProduct => ({
  ...{ id: phase, kind: 'feed', name: phase, phaseIds: [phase], feedFor: 'meat' },
  ...{ bagKg: 20, price: '18.05' },
  ...more,
});
const FEEDS = ['starter', 'grower', 'finisher'].map((phase) => feed(phase));

const TRIP = { ...{ id: 'trip', kind: 'trip' as const, name: 'Trip' }, price: '9.50' };

const farmOf = (more: Partial<FarmPicture> = {}): FarmPicture =>
  newPicture({
    ...{ farm, climate, facilities, today: '2027-02-20', products: FEEDS },
    batches: [{ ...batch, id: 'meat', name: 'Meat birds' }],
    ...more,
  });
const yearOf = (
  more: Partial<FarmPicture> = {},
  bought: readonly FactOf<'bought'>[] = [],
): FeedYear => {
  const picture = farmOf(more);
  return feedYear(picture, tables, planAnimals(picture, tables), bought);
};
const purchase = (on: string, details: FactOf<'bought'>['details']): FactOf<'bought'> => ({
  ...{ id: on + details.name, kind: 'bought', about: 'farm', on, details },
  ...{ toldAt: `${on}T08:00:00.000Z`, key: on + details.name },
});

describe('feedYear', () => {
  it('adds up to the cent: lines, trips, months and the year', () => {
    const suppliers = [{ id: 'mill', name: 'Mill', comes: 'fetched' as const, tripCost: '7.333' }];
    const products = FEEDS.map((each) => ({ ...each, price: '18.055', supplierId: 'mill' }));
    for (const currency of ['USD', 'JPY', 'KWD']) {
      const year = yearOf({ farm: { ...farm, currency }, products, suppliers });
      const trips = year.trips.reduce((sum, { total }) => sum + total!.value, 0);
      const months = year.months.reduce((sum, { total }) => sum + total.value, 0);
      expect(trips).toBe(year.total.value);
      expect(months).toBe(year.total.value);
      for (const { lines, tripCost, total } of year.trips)
        expect(lines.reduce((sum, { cost }) => sum + cost!.value, tripCost!.value)).toBe(
          total!.value,
        );
      expect(Number.isInteger(year.total.value)).toBe(true);
    }
  });

  it('shares each trip among the batches by the weight fetched for them, to the last coin', () => {
    const suppliers = [{ id: 'mill', name: 'Mill', comes: 'fetched' as const, tripCost: '7.33' }];
    const products = FEEDS.map((each) => ({ ...each, supplierId: 'mill' }));
    const batches = ['2027-03-01', '2027-03-15', '2027-08-01'].map((arrivalDate, k) => ({
      ...{ ...batch, arrivalDate, id: `meat-${k}`, name: `Meat ${k}` },
    }));
    const year = yearOf({ products, suppliers, batches });
    const sum = (of: readonly number[]): number => of.reduce((all, each) => all + each, 0);
    expect(sum(year.tripShares.map(({ cost }) => cost.value))).toBe(year.tripsCost.value);
    expect(sum(year.tripShares.map(({ kg }) => kg.value))).toBeCloseTo(
      sum(year.trips.map(({ kg }) => kg.value)),
      1,
    );
    const picture = farmOf({ products: [...products, TRIP], suppliers, batches });
    const { fetching } = year;
    const costs = batches.map(
      ({ id }) => batchCost(picture, tables, id, { fetching }).breakEven.beside[0]!.cost.value,
    );
    // What lies over at the end of the year is fetched and not eaten.
    expect(sum(costs)).toBeLessThanOrEqual(year.tripsCost.value + 2);
    expect(sum(costs)).toBeGreaterThan(0.9 * year.tripsCost.value);
  });

  it('counts a trip at the place’s own price where a supplier has none, and no delivery so', () => {
    const costsOf = (comes: 'fetched' | 'delivered', tripCost?: string) => {
      const mill = { ...{ id: 'mill', name: 'Mill', comes }, ...(tripCost ? { tripCost } : {}) };
      const products = [...FEEDS.map((each) => ({ ...each, supplierId: 'mill' })), TRIP];
      const { trips } = yearOf({ products, suppliers: [mill] });
      return new Set(trips.map((each) => each.tripCost?.value));
    };
    expect(costsOf('fetched')).toEqual(new Set([950]));
    expect(costsOf('fetched', '4')).toEqual(new Set([400]));
    expect(costsOf('delivered')).toEqual(new Set([undefined]));
  });

  it('orders while the seller is open, and takes nothing that could not be ordered in time', () => {
    // 20 February 2027 is a Saturday; the mill answers on Mondays, Tuesdays and Fridays.
    const mill = { id: 'mill', name: 'Mill', comes: 'fetched' as const, leadDays: 2 };
    const open = new Set([1, 2, 5]);
    const products = FEEDS.map((each) => ({ ...each, supplierId: 'mill' }));
    const { trips } = yearOf({ products, suppliers: [{ ...mill, openWeekdays: [...open] }] });
    expect(trips.length).toBeGreaterThan(1);
    for (const { on, orderOn } of trips) {
      expect(open.has(weekdayOf(orderOn!))).toBe(true);
      expect(daysBetween(orderOn!, String(on.value))).toBeGreaterThanOrEqual(mill.leadDays);
    }
    expect(trips[0]!.orderOn! > '2027-02-20').toBe(true);
  });

  it('gives medicated feed only as long before the last day as its label says', () => {
    const late = feed('finisher', {
      id: 'medicated',
      name: 'medicated',
      price: '10',
      withdrawalDays: 7,
    });
    const year = yearOf({ products: [...FEEDS, late] });
    const clean = year.feeds.find(({ name }) => name === 'finisher')!;
    expect(clean.fed.value).toBeGreaterThan(0);
    const all = yearOf().feeds.find(({ name }) => name === 'finisher')!;
    expect(clean.fed.value).toBeLessThan(all.fed.value);
  });

  it('buys less by what lies in the store, and says when that runs out', () => {
    const [starter, ...rest] = FEEDS;
    const there = { ...starter!, storeBags: 2, storeOn: '2027-02-19' };
    const of = (year: FeedYear) => year.feeds.find(({ name }) => name === 'starter')!;
    const [with2, without] = [of(yearOf({ products: [there, ...rest] })), of(yearOf())];
    expect(with2.inStore!.value).toBe(40);
    expect(with2.bags.value).toBe(without.bags.value - 2);
    expect(String(with2.runsOut!.value) > '2027-03-01').toBe(true);
  });

  it('takes nothing off bags that were counted for what was fed before, whatever was bought then', () => {
    const [starter, ...rest] = FEEDS;
    const counted = { ...starter!, storeBags: 2, storeOn: '2027-03-10' };
    const other = feed('starter', { id: 'mash', name: 'mash' });
    const asked = { today: '2027-03-12', products: [counted, other, ...rest] };
    const of = (facts: readonly FactOf<'bought'>[]) =>
      yearOf(asked, facts).feeds.find(({ name }) => name === 'starter')!.inStore!.value;
    const early = purchase('2027-03-01', { what: 'feed', name: 'mash', amount: 0.2, eachKg: 20 });
    expect(of([early])).toBe(of([]));
    expect(of([])).toBeGreaterThan(30);
  });

  it('carries what is left of one batch to the next that eats the same', () => {
    const batches = ['2027-03-01', '2027-03-20'].map((arrivalDate, k) => ({
      ...{ ...batch, arrivalDate, id: `meat-${k}`, name: `Meat ${k}` },
    }));
    const bagsOf = (year: FeedYear) => year.feeds.find(({ name }) => name === 'starter')!;
    const both = bagsOf(yearOf({ batches }));
    const apart = batches.map((each) => bagsOf(yearOf({ batches: [each] })).bags.value);
    expect(both.eatenBy).toHaveLength(2);
    expect(both.bags.value).toBe(Math.ceil(both.fed.value / 20 - 1e-9));
    expect(both.bags.value).toBeLessThanOrEqual(apart[0]! + apart[1]!);
  });

  it('says what nobody sells, what has no price, and a store that is too full already', () => {
    const codes = (year: FeedYear) => year.issues.map(({ code }) => code);
    expect(codes(yearOf({ products: FEEDS.slice(1) }))).toContain('feed-not-sold');
    const store = { id: 'store', kind: 'feed-store' as const, name: 'Bin', capacityKg: 30 };
    const full = { ...FEEDS[0]!, storeBags: 9, storeOn: '2027-02-19' };
    const year = yearOf({
      facilities: [...facilities, store],
      products: [full, ...FEEDS.slice(1)],
    });
    expect(codes(year)).toContain('store-over-now');
    expect(
      codes(yearOf({}, [purchase('2027-02-18', { what: 'feed', name: 'oats', amount: 1 })])),
    ).toContain('feed-bought-unknown');
  });

  it('splits what feed cost over its plan into parts that add up to the last cent', () => {
    const year = yearOf(
      {
        today: '2027-03-25',
        feedOpenings: [
          { batchId: 'meat', date: '2027-03-02', bags: 2 },
          { batchId: 'meat', date: '2027-03-12', bags: 1 },
          { batchId: 'meat', date: '2027-03-16', bags: 2 },
          { batchId: 'meat', date: '2027-03-21', bags: 1 },
        ],
        headChanges: [{ id: 'd', batchId: 'meat', date: '2027-03-05', change: 'died', birds: 6 }],
        weighings: [{ id: 'w', batchId: 'meat', date: '2027-03-22', birds: 10, averageKg: 0.7 }],
      },
      [
        purchase('2027-02-28', {
          what: 'feed',
          name: 'starter',
          amount: 6,
          eachKg: 20,
          money: '118.33',
        }),
      ],
    );
    const [{ planned, actual, heads, intake, waste, price, used }] = year.actual as [
      FeedYear['actual'][number],
    ];
    expect(used.value).toBe(100); // 2 + 1 + 2 bags of 20 kg; the last is in use
    expect(planned.value + heads.value + intake.value + waste.value + price.value).toBe(
      actual.value,
    );
    expect(actual.value).toBe(9861); // 100 kg × 118.33 ÷ 120 kg
    expect(price.value).toBe(9861 - 9025); // at the planned price: 5 × 18.05
    expect(heads.value).toBeLessThan(0);
    expect(year.actualOfAll!.actual.value).toBe(actual.value);
    // Larger birds that spilled feed, too: more of what is to come is planned for them.
    expect(intake.value + waste.value).toBeGreaterThan(-heads.value);
    const { toCome } = year.actualOfAll!;
    expect(toCome!.now.value).toBeGreaterThan(toCome!.planned.value);
  });
});
