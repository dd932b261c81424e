import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Batch } from '../../shared/farm/batch.js';
import type { Product } from '../../shared/farm/product.js';
import { productsOfPrices, withoutPrice } from '../../shared/plan/kept-prices.js';
import { bagOf, beddingBag, chickPrice, processingPrice } from '../../shared/plan/prices.js';
import { formatValue } from '../../shared/units/format.js';
import { newBatch, newFarm, tables } from '../support/factories.js';

const feed = (more: Partial<Extract<Product, { kind: 'feed' }>> = {}): Product => ({
  id: 'feed',
  kind: 'feed',
  name: 'Meat starter',
  phaseIds: ['starter'],
  bagKg: 20,
  price: '18.00',
  ...more,
});
const bag = (products: readonly Product[], batch: Partial<Batch> = {}, phaseId = 'starter') =>
  bagOf({ farm: newFarm(), batch: newBatch(batch), products, tables }, phaseId);
const USUAL_KG = tables.feedKeeping.usualBag.metricKg; // newFarm weighs in kilograms

describe('the bag a feed is bought in', () => {
  it('is the usual one without a price, where neither batch nor place says anything', () => {
    expect(bag([])).toMatchObject({ bagKg: USUAL_KG });
    expect(bag([])).not.toHaveProperty('price');
  });

  it('is one that is sold there: 50 lb, or 25 kg where people weigh in kilograms', () => {
    const usual = (units: 'us' | 'metric') => {
      const farm = newFarm({ units });
      const asked = { farm, batch: newBatch(), products: [], tables };
      return formatValue(bagOf(asked, 'starter').bagKg, 'kg', farm);
    };
    expect(usual('us')).toBe('50 lb');
    expect(usual('metric')).toBe('25 kg');
  });

  it('is the place’s, with its price', () => {
    expect(bag([feed()])).toMatchObject({
      bagKg: 20,
      price: { price: '18.00', product: 'Meat starter' },
    });
  });

  it('is the batch’s own where it has a price, whatever the place buys by now', () => {
    const prices = { feedPerBag: { starter: '24.50' } };
    expect(bag([feed()], { prices })).toMatchObject({ bagKg: USUAL_KG, price: { price: '24.50' } });
    expect(bag([feed()], { prices, bagKg: 25 })).toMatchObject({ bagKg: 25 });
  });

  it('has the place’s price only for a bag of its size', () => {
    expect(bag([feed()], { bagKg: 20 }).price?.price).toBe('18.00');
    expect(bag([feed()], { bagKg: 40 })).not.toHaveProperty('price');
  });

  it('is for the birds and the phase it is made for, the narrowest first, of equals the cheaper', () => {
    const all = feed({ id: 'all', name: 'All of it', phaseIds: ['starter', 'grower'], price: '1' });
    const layers = feed({ id: 'layers', name: 'Chick starter', feedFor: 'layers', price: '2' });
    const dear = feed({ id: 'dear', name: 'Dear', price: '30' });
    // 40 kg for 30.00 is cheaper a kilogram than 20 kg for 18.00.
    const large = feed({ id: 'large', name: 'Large', bagKg: 40, price: '30' });
    const products = [all, layers, dear, feed(), large];
    expect(bag(products).price?.product).toBe('Large');
    expect(bag(products, {}, 'grower').price?.product).toBe('All of it');
    expect(bag(products, { purpose: 'layers' }).price?.product).toBe('Chick starter');
    expect(bag(products, {}, 'finisher')).not.toHaveProperty('price');
  });
});

describe('other prices', () => {
  const chicks = { id: 'c', kind: 'chicks', name: 'Any', price: '2.00' } as const;
  const ofBreed = { ...chicks, id: 'b', name: 'Meat', strainId: 'fast-meat', price: '3.10' };

  it('of a chick are those of its breed before those of any', () => {
    const batch = newBatch();
    expect(chickPrice({ batch, products: [chicks] })?.price).toBe('2.00');
    expect(chickPrice({ batch, products: [chicks, ofBreed] })?.price).toBe('3.10');
    expect(
      chickPrice({ batch: newBatch({ prices: { perBird: '4' } }), products: [chicks] }),
    ).toEqual({ price: '4' });
    expect(chickPrice({ batch, products: [] })).toBeUndefined();
  });

  it('of processing count only where it is hired', () => {
    const products: Product[] = [{ id: 'p', kind: 'processing', name: 'Hired', price: '5.50' }];
    expect(processingPrice({ batch: newBatch({ processing: 'home' }), products })).toBeUndefined();
    expect(processingPrice({ batch: newBatch({ processing: 'hired' }), products })?.price).toBe(
      '5.50',
    );
  });

  it('of bedding come with what the bag opens to', () => {
    const products: Product[] = [
      { id: 's', kind: 'bedding', name: 'Shavings', opensToM3: 0.2, price: '6' },
    ];
    expect(beddingBag({ batch: newBatch(), products }).opensTo?.value).toBe(0.2);
    const typed = newBatch({ prices: { beddingPerBag: '7' } });
    expect(beddingBag({ batch: typed, products })).toEqual({ price: { price: '7' } });
  });
});

describe('prices that become the place’s', () => {
  const price = fc.option(fc.constantFrom('1.10', '3', '24.50'), { nil: undefined });
  const typed = fc.record({ perBird: price, bedding: price, starter: price, processing: price });

  it('give the batch the same numbers without prices of its own', () => {
    fc.assert(
      fc.property(typed, fc.constantFrom(undefined, 20, 22.68), (given, bagKg) => {
        const prices = {
          ...(given.perBird === undefined ? {} : { perBird: given.perBird }),
          ...(given.bedding === undefined ? {} : { beddingPerBag: given.bedding }),
          ...(given.processing === undefined ? {} : { processingPerBird: given.processing }),
          ...(given.starter === undefined ? {} : { feedPerBag: { starter: given.starter } }),
        };
        const batch = newBatch({
          ...{ prices, processing: 'hired' as const },
          ...(bagKg === undefined ? {} : { bagKg }),
        });
        const kept = productsOfPrices(batch, { farm: newFarm(), products: [] }, tables);
        const products = kept.map((product, k) => ({ ...product, id: `${k}` }) as Product);
        const { prices: _prices, bagKg: _bagKg, ...bare } = batch;
        const after = { farm: newFarm(), batch: bare, products, tables };
        expect(chickPrice(after)?.price).toBe(given.perBird);
        expect(beddingBag(after).price?.price).toBe(given.bedding);
        expect(processingPrice(after)?.price).toBe(given.processing);
        expect(bagOf(after, 'starter').price?.price).toBe(given.starter);
        if (given.starter !== undefined)
          expect(bagOf(after, 'starter').bagKg).toBe(bagKg ?? USUAL_KG);
        const left = kept.reduce(withoutPrice, prices);
        expect(left).toEqual({});
      }),
    );
  });

  it('take the place of what is there for just that', () => {
    const mine = feed({ id: 'mine', feedFor: 'meat' });
    const batch = newBatch({ prices: { feedPerBag: { starter: '20' }, beddingPerBag: '9' } });
    const shavings = { id: 's', kind: 'bedding', name: 'Shavings', price: '6' } as const;
    expect(
      productsOfPrices(batch, { farm: newFarm(), products: [mine, shavings] }, tables),
    ).toEqual([
      { ...shavings, price: '9' },
      { ...mine, bagKg: USUAL_KG, price: '20' },
    ]);
  });
});
