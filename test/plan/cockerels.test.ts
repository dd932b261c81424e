import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const LAYERS: Partial<Batch> = {
  purpose: 'layers',
  strainId: 'heritage',
  sex: 'straight-run',
  wantedBirds: 20,
  leaveAgeDays: undefined as never,
};

const planOf = (batch: Partial<Batch> = {}) =>
  plannedBatch(newRequest({ batch: { ...LAYERS, ...batch } }));

describe('cockerels of a straight run of layers', () => {
  it('are processed on the day they leave, with the hours of so many birds', () => {
    const plan = planOf();
    const { on, birds } = plan.birds.cockerelsLeave!;
    const killing = plan.tasks.tasks.filter(({ templateId }) => templateId.includes('.kill-'));
    expect(killing.map(({ end }) => end)).toEqual([on.value]);
    expect(birds.value).toBeGreaterThan(5);
    const meat = plannedBatch(newRequest({ batch: { purpose: 'meat', processing: 'home' } }));
    const ofMeat = meat.tasks.tasks.find(({ templateId }) => templateId.includes('.kill-'))!;
    expect(killing[0]!.hours).toBeLessThan(ofMeat.hours);
  });

  it('take room in the freezer, and pullets take none', () => {
    const chest = { kind: 'freezer', id: 'chest', name: 'Chest', liters: 20, usedL: 0 } as const;
    const plan = plannedBatch(
      newRequest({
        batch: { ...LAYERS, freezerId: 'chest' },
        facilities: [...newRequest().facilities, chest],
      }),
    );
    const { birds, freezerNeed } = plan.birds.cockerelsLeave!;
    // A dressed bird of one to two kilograms takes two to seven liters (packing.kgPerL).
    expect(freezerNeed!.value / birds.value).toBeGreaterThan(1.5);
    expect(freezerNeed!.value / birds.value).toBeLessThan(7);
    expect(plan.issues.some(({ code }) => code === 'freezer-full')).toBe(true);
    expect(planOf({ sex: 'pullets' }).birds.cockerelsLeave).toBeUndefined();
  });
});

describe('tasks of feed', () => {
  const ids = (batch: Partial<Batch>) =>
    planOf({ strainId: 'brown-layer', sex: 'pullets', ...batch }).tasks.tasks.map(
      ({ templateId }) => templateId,
    );
  const [GROWER, LAYER, SHELL] = [
    'layers.change-starter-to-grower-feed',
    'layers.change-grower-to-layer-feed',
    'layers.set-out-oyster-shell',
  ];

  it('name only the changes that the feeds make', () => {
    expect(ids({})).toEqual(expect.arrayContaining([GROWER, LAYER]));
    expect(ids({})).not.toContain(SHELL);
    const one = ids({ feedProgramId: 'layers-one' });
    expect(one).toContain(SHELL);
    expect(one).not.toContain(GROWER);
    expect(one).not.toContain(LAYER);
    expect(ids({ feedProgramId: 'layers-two' })).not.toContain(GROWER);
  });
});
