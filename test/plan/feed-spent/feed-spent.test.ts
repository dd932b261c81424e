import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import type { FeedProduct } from '../../../shared/farm/product.js';
import type { Bought } from '../../../shared/farm/season-facts.js';
import type { FactOf } from '../../../shared/farm/told-fact.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { boughtOtherwise, sellersOf } from '../../../shared/plan/feed-spent/bought-otherwise.js';
import { feedSpent, type FeedSpent } from '../../../shared/plan/feed-spent/feed-spent.js';
import { needsOfReceipts } from '../../../shared/plan/feed-spent/needs-of-receipts.js';
import { receiptLines, receiptTrips } from '../../../shared/plan/feed-spent/receipt-lines.js';
import { newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const TODAY = '2027-11-01';
const { farm, climate, facilities, batch } = newRequest({
  batch: { arrivalDate: '2027-03-01', wantedBirds: 50 },
});
const feed = (id: string, more: Partial<FeedProduct> = {}): FeedProduct => ({
  ...{ id, kind: 'feed', name: id, phaseIds: ['layer'], feedFor: 'layers' },
  ...{ bagKg: 20, price: '18.00', supplierId: 'mill', keepsDays: 90 },
  ...more,
});
const MILL = { id: 'mill', name: 'Mill', comes: 'fetched' as const, tripCost: '10.00' };
const STORE = { id: 'store', name: 'Store', comes: 'fetched' as const, tripCost: '4.00' };

const farmOf = (more: Partial<FarmPicture> = {}): FarmPicture =>
  newPicture({
    ...{ farm, climate, facilities, today: TODAY, products: [feed('mash')] },
    ...{ suppliers: [MILL, STORE], batches: [], ...more },
  });
let n = 0;
const bought = (on: string, details: Partial<Bought> = {}): FactOf<'bought'> => {
  const id = `${n++}`;
  const toldAt = `${on}T08:00:00.000Z`;
  return {
    ...{ id, key: id, kind: 'bought', about: 'farm', on, toldAt },
    details: { what: 'feed', name: 'mash', amount: 2, money: '36.00', from: 'Mill', ...details },
  };
};
const spentOf = (
  facts: readonly FactOf<'bought'>[],
  more: Partial<FarmPicture> = {},
): FeedSpent => {
  const picture = farmOf(more);
  return feedSpent(picture, tables, planAnimals(picture, tables), facts)!;
};
const sum = (parts: FeedSpent['byFeed']): number =>
  parts.reduce((all, { cost }) => all + cost.value, 0);

describe('feedSpent', () => {
  it('splits the money of the receipts by feed, eater, seller and month, to the last coin', () => {
    const money = fc.integer({ min: 1, max: 9_999_999 }).map((coins) => (coins / 1000).toFixed(3));
    const line = fc.record({
      daysAgo: fc.integer({ min: 0, max: 364 }),
      name: fc.constantFrom('mash', 'Scratch', 'Hay'),
      amount: fc.integer({ min: 1, max: 9 }),
      from: fc.constantFrom('Mill', 'Store', 'A neighbor'),
      money,
    });
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 12 }),
        fc.constantFrom('USD', 'JPY', 'KWD'),
        (lines, currency) => {
          const facts = lines.map(({ daysAgo, name, ...details }) =>
            bought(addDays(TODAY, -daysAgo), {
              ...details,
              ...{ name, what: name === 'Hay' ? 'hay' : 'feed', eachKg: 20 },
            }),
          );
          const spent = spentOf(facts, { farm: { ...farm, currency } });
          for (const parts of [spent.byFeed, spent.byEater, spent.bySeller, spent.byMonth])
            expect(sum(parts)).toBe(spent.total.value);
          expect(Number.isInteger(spent.total.value)).toBe(true);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('says how many trips would have done, and what that saves with the price of more bags', () => {
    // Ten times 2 bags of 18.00 and a drive of 10.00; 20 bags at once cost 15.00 each, one drive.
    const facts = Array.from({ length: 10 }, (_, k) => bought(addDays('2027-05-01', 4 * k)));
    const products = [feed('mash', { priceBreaks: [{ fromBags: 20, price: '15.00' }] })];
    const { otherwise } = spentOf(facts, { products });
    expect(otherwise!.asMade.value).toBe(10 * (2 * 1800 + 1000));
    const [trips] = otherwise!.ways;
    expect(trips!.saves.value).toBe(otherwise!.asMade.value - (20 * 1500 + 1000));
    expect(trips!.said).toMatch(/^You went 10 times for feed in bags\. One trip would have done/);
  });

  it('names the other seller or the larger bag of the same feed, never a medicated one', () => {
    const facts = [0, 30, 60, 90].map((days) => bought(addDays('2027-05-01', days), { amount: 6 }));
    const cheap = feed('pellets', { price: '12.00', supplierId: 'store' });
    const { otherwise } = spentOf(facts, { products: [feed('mash'), cheap] });
    expect(otherwise!.ways.map(({ said }) => said).join(' ')).toMatch(
      /pellets from Store in place of mash from Mill: \$/,
    );
    const medicated = { ...cheap, withdrawalDays: 5 };
    const none = spentOf(facts, { products: [feed('mash'), medicated] });
    expect(none.otherwise!.ways.map(({ said }) => said).join(' ')).not.toMatch(/pellets/);
    const large = feed('mash, large bag', { price: '20.00', bagKg: 40 });
    const [way] = spentOf(facts, { products: [feed('mash'), large] }).otherwise!.ways;
    expect(way!.said).toMatch(/in the bag of/);
  });

  it('buys otherwise what serves the same needs: never out, never past its keeping', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            daysAgo: fc.integer({ min: 1, max: 300 }),
            amount: fc.integer({ min: 1, max: 9 }),
          }),
          { minLength: 1, maxLength: 10 },
        ),
        (all) => {
          const facts = all.map(({ daysAgo, amount }) =>
            bought(addDays(TODAY, -daysAgo), { amount }),
          );
          const picture = farmOf();
          const lines = receiptLines(picture, facts);
          const from = lines[0]!.on;
          const days = daysBetween(from, TODAY) + 1;
          const span = { from, days, maxDays: 60, storeKg: Infinity, hourMinor: 0, tripH: 1 };
          const feeds = needsOfReceipts(lines, [], span);
          const sellers = sellersOf(picture, receiptTrips(picture, lines), span);
          const kgAll = all.reduce((kg, { amount }) => kg + 20 * amount, 0);
          const need = feeds[0]!.needKg;
          expect(need.reduce((kg, each) => kg + each, 0)).toBeCloseTo(kgAll, 6);
          const asked = { span, currency: 'USD' };
          const { plan, minor } = boughtOtherwise(
            feeds,
            sellers,
            () => [],
            asked,
            () => 'Mill',
          );
          expect(plan.short).toEqual([]);
          // No cheaper than all of it at the price of a bag, with one trip.
          expect(minor).toBeGreaterThanOrEqual(Math.round((kgAll / 20) * 1800) + 1000);
          const lots = plan.purchases.map(({ day, bags }) => ({ day, kg: 20 * bags }));
          for (let day = 0; day < days; day++) {
            let kg = need[day]!;
            for (const lot of lots) {
              if (day < lot.day || lot.day + 90 < day) continue;
              const fed = Math.min(lot.kg, kg);
              lot.kg -= fed;
              kg -= fed;
            }
            expect(kg).toBeLessThan(1e-6);
          }
        },
      ),
      { numRuns: 30 },
    );
  });

  it('says what lay longer than it keeps only where plans say when it was eaten', () => {
    const starter = feed('starter', { phaseIds: ['starter'], feedFor: 'meat', keepsDays: 45 });
    const batches = [{ ...batch, id: 'meat', name: 'Meat birds' }];
    const picture = { products: [starter], batches };
    const plans = planAnimals(farmOf(picture), tables);
    const amount = Math.ceil(plans.batches[0]!.plan.feed.phases[0]!.totalKg.value / 20);
    const early = [bought('2027-01-02', { name: 'starter', amount })];
    expect(spentOf(early, picture).tooOld[0]!.said).toMatch(/lay longer than 45 days/);
    const inTime = [bought('2027-02-27', { name: 'starter', amount })];
    expect(spentOf(inTime, picture).tooOld).toEqual([]);
    expect(spentOf(early, { ...picture, batches: [] }).tooOld).toEqual([]);
  });

  it('is nothing before a receipt is told, and names what has no price', () => {
    const picture = farmOf();
    expect(feedSpent(picture, tables, planAnimals(picture, tables), [])).toBeUndefined();
    const { money: _money, ...scratch } = bought('2027-06-01', { name: 'Scratch' }).details;
    const fact = { ...bought('2027-06-01'), details: scratch };
    const spent = spentOf([fact]);
    expect(spent.unpriced).toEqual(['Scratch']);
    expect(spent.otherwise).toBeUndefined();
  });
});
