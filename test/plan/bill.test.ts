import { describe, expect, it } from '@jest/globals';
import type { Product } from '../../shared/farm/product.js';
import { newBrooder, newFarm, newRequest } from '../support/factories.js';
import { sayPrice } from '../../shared/money/unit-price.js';
import { formatValue } from '../../shared/units/format.js';
import { toShown } from '../../shared/units/unit.js';
import { plannedBatch, type BatchCase } from '../support/pictures.js';

const PRODUCTS: readonly Product[] = [
  { id: 'c', kind: 'chicks', name: 'Chicks', price: '3.00' },
  { id: 'b', kind: 'bedding', name: 'Shavings', price: '8.00' },
  { id: 'i', kind: 'ice', name: 'Ice', price: '3.00' },
  { id: 'z', kind: 'freezer-bags', name: 'Bags', price: '0.60' },
  {
    id: 'f',
    kind: 'feed',
    name: 'Feed',
    phaseIds: ['starter', 'grower', 'finisher'],
    bagKg: 20,
    price: '18.00',
  },
];
const billOf = (more: Parameters<typeof newRequest>[0] = {}) =>
  plannedBatch(newRequest(more) satisfies BatchCase);

describe('the bill', () => {
  it('is whole with the place’s prices, and names what each line was bought as', () => {
    const { bill, issues } = billOf({ products: PRODUCTS, batch: { brooderId: 'brooder' } });
    expect(bill.leftOut).toEqual([]);
    expect(bill.perBird!.label).toBe('Cost per bird');
    expect(bill.lines.find(({ label }) => label === 'Chicks')).toMatchObject({
      price: '3.00',
      product: 'Chicks',
    });
    const sum = bill.lines.reduce((all, { cost }) => all + cost!.value, 0);
    expect(bill.total.value).toBe(sum);
    expect(issues.map(({ code }) => code)).not.toContain('price-missing');
  });

  it('says beside every cost what it leaves out, and counts it as nothing nowhere', () => {
    const products = PRODUCTS.filter(({ kind }) => kind !== 'ice');
    const { bill, issues } = billOf({ products, batch: { brooderId: 'brooder' } });
    expect(bill.leftOut).toEqual(['without ice: no price given']);
    expect(bill.perBird!.label).toBe('Cost per bird, without ice: no price given');
    expect(bill.perKgDressed!.label).toMatch(/without ice: no price given$/);
    expect(issues.find(({ code }) => code === 'price-missing')!.text).toMatch(/leaves out ice/);
  });

  it.each(['chicks', 'feed', 'processing'] as const)('has no cost of one without %s', (without) => {
    const hired: Product = { id: 'p', kind: 'processing', name: 'Processor', price: '5.00' };
    const products = [...PRODUCTS, hired].filter(({ kind }) => kind !== without);
    const { bill } = billOf({ products, batch: { brooderId: 'brooder', processing: 'hired' } });
    expect(bill.leftOut).toEqual([`without ${without}: no price given`]);
    expect(bill.total.label).toBe(`The bill, without ${without}: no price given`);
    expect([bill.perBird, bill.perKgLive, bill.perKgDressed]).toEqual(Array(3).fill(undefined));
  });

  it('has no cost of a dozen where pullets have no price', () => {
    const batch = { purpose: 'layers', sex: 'pullets', strainId: 'brown-layer' } as const;
    expect(billOf({ batch }).bill).not.toHaveProperty('perDozen');
    const feedPerBag = Object.fromEntries(
      ['starter', 'grower', 'developer', 'pre-lay', 'layer'].map((phase) => [phase, '20']),
    );
    const prices = { perBird: '4', feedPerBag };
    expect(billOf({ batch: { ...batch, prices } }).bill.perDozen!.value).toBeGreaterThan(0);
  });

  it('names the feed as one where no phase has a price, and heat where no brooder is chosen', () => {
    const { bill } = billOf({ batch: { processing: 'hired' } });
    expect(bill.leftOut).toEqual([
      'without chicks, feed and processing: no price given',
      'without heat and bedding: no brooder chosen',
    ]);
  });

  it('keeps the numbers of a batch that has prices of its own', () => {
    const own = { brooderId: 'brooder', bagKg: 22.68 };
    const prices = {
      ...{ perBird: '2.00', beddingPerBag: '7.00', iceBag: '4', freezerBag: '0.5' },
      feedPerBag: { starter: '24.50', grower: '23.00', finisher: '22.50' },
    };
    const before = billOf({ batch: { ...own, prices } });
    const after = billOf({ batch: { ...own, prices }, products: PRODUCTS });
    expect(after.bill).toEqual(before.bill);
    expect(after.feed).toEqual(before.feed);
  });

  it.each([
    ['us', '$3.03 a gallon', '$3.028 a gallon'],
    ['metric', '$0.80 a liter', '$0.80 a liter'],
  ] as const)('gives propane in the unit that it is bought by: %s', (units, opened, said) => {
    const heat = { kind: 'gas', wattsEach: 1500, count: 1, thermostat: true } as const;
    const farm = newFarm({ units, gasPricePerL: '0.80' });
    const { bill } = billOf({
      farm,
      facilities: [newBrooder({ heat })],
      batch: { brooderId: 'brooder' },
    });
    const line = bill.lines.find((each) => each.label === 'Heat')!;
    expect(line.amount.unit).toBe('L');
    const price = line.cost!.inputs.find(({ label }) => label === 'Price of gas')!;
    expect(formatValue(price.value, price.unit, farm)).toBe(opened);
    expect(sayPrice(line.price!, line.amount.unit, farm)).toBe(said);
    // What is shown as amount and price comes to what is shown as cost, to a cent for each gallon.
    const shown = toShown(line.amount.value, 'L', units);
    expect(Math.abs(shown * parseFloat(said.slice(1)) - line.cost!.value / 100)).toBeLessThan(
      0.01 * shown,
    );
  });
});
