import { describe, expect, it } from '@jest/globals';
import { quantitiesIn } from '../../../shared/explain/quantities-in.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { FeedProduct } from '../../../shared/farm/product.js';
import { FORMULAS } from '../../../shared/formulas/formulas.js';
import { newBatch, newBrooder, newRequest } from '../../support/factories.js';
import { movesOfBatch, plannedBatch } from '../../support/pictures.js';

const FEEDS = { starter: '24', grower: '22', finisher: '21' };
const PRICES = { perBird: '3', iceBag: '3', beddingPerBag: '8', freezerBag: '0.5' };
const given = (batch: Partial<Batch> = {}) =>
  newRequest({
    facilities: [newBrooder()],
    batch: newBatch({
      brooderId: 'brooder',
      wantedBirds: 50,
      prices: { ...PRICES, feedPerBag: FEEDS },
      ...batch,
    }),
  });
const namesOf = (batch: Partial<Batch> = {}): readonly string[] =>
  movesOfBatch(given(batch)).inputs.map(({ what }) => what);

describe('what moves a bill', () => {
  it('is tried as far as sources state it, what moves most first', () => {
    const { inputs, each } = movesOfBatch(given());
    expect(inputs.map(({ what }) => what).slice(0, 2)).toEqual([
      'How they grow',
      'How much they eat',
    ]);
    const widths = inputs.map(({ low, high }) => {
      const values = [low.each!.value, high.each!.value, each!.value];
      return Math.max(...values) - Math.min(...values);
    });
    expect(widths).toEqual([...widths].sort((a, b) => b - a));
  });

  it('is at either end what the batch costs when it is planned so', () => {
    const { inputs } = movesOfBatch(given());
    const dead = inputs.find(({ what }) => what === 'How many die')!;
    const placed = plannedBatch(given()).birds.chicksPlaced.value;
    const later = 100 * (1 - (1 - 0.14) / (1 - 0.02));
    const { bill } = plannedBatch(
      given({ orderedBirds: placed, firstWeekLossPercent: 2, laterLossPercent: later }),
    );
    expect(dead.high.each!.value).toBeCloseTo(bill.perKgDressed!.value, 1);
    expect(dead.high.bill.value).toBe(bill.total.value);
  });

  it('joins the ends into one range, wider than any alone, narrower than all at once', () => {
    const { inputs, each, bill } = movesOfBatch(given());
    const worse = inputs.map(({ high }) => Math.max(0, high.each!.value - each!.value));
    const over = each!.spread!.high - each!.value;
    expect(over).toBeGreaterThanOrEqual(Math.max(...worse) - 0.01);
    expect(over).toBeLessThan(worse.reduce((sum, one) => sum + one, 0));
    expect(over ** 2).toBeCloseTo(
      worse.reduce((sum, one) => sum + one ** 2, 0),
      -1,
    );
    expect(bill.spread!.low).toBeLessThan(bill.value);
    expect(bill.value).toBe(plannedBatch(given()).bill.total.value);
  });

  it('leaves out what the household typed', () => {
    expect(namesOf()).toContain('How much of them is left when dressed');
    expect(namesOf({ dressingShare: 0.72 })).not.toContain('How much of them is left when dressed');
    expect(namesOf({ weightFactor: 0.8 })).not.toContain('How they grow');
    expect(namesOf({ laterLossPercent: 4 })).not.toContain('How many die');
    expect(namesOf({ feedFactor: 1.2 })).not.toContain('How much they eat');
  });

  it('moves what feed costs as far as the household says, or as it did before, and else not', () => {
    const asked = given();
    const { feedPerBag: _typed, ...others } = asked.batch.prices!;
    const phases = ['starter', 'grower', 'finisher'] as const;
    const feedsWith = (more: Partial<FeedProduct>): FeedProduct[] =>
      phases.map((phase) => ({
        ...{ id: phase, kind: 'feed', name: phase, phaseIds: [phase], bagKg: 20 },
        ...{ price: '20', ...more },
      }));
    const movedBy = (more: Partial<FeedProduct>) => {
      const request = { ...asked, batch: { ...asked.batch, prices: others } };
      const { inputs, bill } = movesOfBatch({ ...request, products: feedsWith(more) });
      const found = inputs.find(({ what }) => what === 'What feed costs');
      return found && [found.low, found.high].map((end) => end.bill.value - bill.value);
    };
    expect(movedBy({})).toBeUndefined();
    // 10 % less and 20 % more of the same bags.
    const [low, high] = movedBy({ mayCost: { low: '18', high: '24' } }) as [number, number];
    expect(low).toBeLessThan(0);
    expect(high).toBeCloseTo(-2 * low, -1);
    const before = { price: '24', until: `${asked.today.slice(0, 4)}-01-01` };
    expect(movedBy({ earlierPrices: [before] })![1]).toBe(high);
  });

  it('goes by the bill where a price is missing, and by the dozen with hens', () => {
    const unpriced = movesOfBatch(given({ prices: { feedPerBag: FEEDS } }));
    expect(unpriced.each).toBeUndefined();
    expect(unpriced.inputs.length).toBeGreaterThan(1);
    const hens = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' } as const;
    expect(namesOf(hens)).toContain('How well they lay');
  });

  it('opens every number with a formula that is listed', () => {
    for (const { formula, label } of quantitiesIn(movesOfBatch(given())))
      expect([label, FORMULAS.has(formula)]).toEqual([label, true]);
  });
});
