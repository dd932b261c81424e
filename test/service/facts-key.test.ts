import { describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../shared/farm/picture.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { factsKey } from '../../src/work/facts-key.js';
import { newFarm } from '../support/factories.js';
import { newPicture } from '../support/pictures.js';

describe('factsKey', () => {
  const picture = newPicture({
    ...{ farm: newFarm(), today: '2027-05-01' },
    climate: climateFromMonthlyMeans(newFarm().monthlyMinC, newFarm().monthlyMaxC, 7),
  });
  const of = (more: object) => factsKey('a', { ...picture, ...more } as FarmPicture);

  it('is another for each part of a farm that changes', () => {
    const parts = Object.keys(picture).filter((part) => part !== 'keptPlans');
    const keys = parts.map((part) => of({ [part]: 'changed' }));
    expect(new Set([...keys, of({}), factsKey('b', picture)]).size).toBe(parts.length + 2);
  });

  it('is the same however often a row was saved, and whatever plan was kept today', () => {
    const saved = (version: number) => of({ people: [{ id: 'a', name: 'A', version }] });
    expect(saved(2)).toBe(saved(1));
    const kept = (plannedOn: string) => of({ keptPlans: [{ plannedOn, pieces: [] }] });
    expect(kept('2027-05-01')).toBe(of({ keptPlans: [] }));
    expect(kept('2027-04-30')).not.toBe(of({ keptPlans: [] }));
  });
});
