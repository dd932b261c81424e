import { describe, expect, it } from '@jest/globals';
import { rowById } from '../../../shared/tables/tables.js';
import { tables } from '../../support/factories.js';

// Task list compiled from keepers' threads, homestead blogs and extension pages (second-hand; most
// figures are estimates): daily work is given in hours for each day of it, other work in hours in all.
const DAILY: readonly (readonly [string, number, number])[] = [
  // id, hours a day, more hours a day for each 100 birds
  ['meat.brooder-care-days-1-to-7', 0.6, 0.25],
  ['meat.brooder-care-days-8-to-move', 0.4, 0.25],
  ['meat.top-up-litter-and-restore-lamp', 0.1, 0.05],
  ['meat.cool-chicks-down-to-outdoor-temperature', 0.2, 0],
  ['layers.brooder-care-weeks-1-to-3', 0.5, 0.2],
  ['layers.brooder-care-weeks-4-to-6', 0.35, 0.2],
  ['layers.daily-pullet-care-to-point-of', 0.25, 0.25],
  ['layers.join-pullets-to-older-flock', 0.5, 0],
  ['layers.daily-layer-care-and-eggs', 0.3, 0.5],
  ['move-to-pasture.heat-off-at-night-for-3', 0.15, 0],
  ['move-to-pasture.daily-move-feed-water', 0.4, 0.35],
  ['move-to-pasture.second-water-round-on-hot-days', 0.2, 0.05],
];

describe('task templates', () => {
  it.each(DAILY)(
    'count %s as %d h and %d h for each 100 birds, every day (second-hand)',
    (id, base, per100) => {
      const template = rowById(tables.taskTemplates, id);
      expect([template.hoursBase, template.hoursPerUnit, template.unit]).toEqual([
        base,
        per100,
        'hundred-birds',
      ]);
      expect(template.isDaily).toBe(true);
    },
  );

  it.each([
    ['meat.repair-brooder-and-pasture-pen', 6, 2],
    ['layers.finish-coop-roosts-and-run', 12, 6],
    ['processing.kill-scald-pluck-eviscerate', 1, 18],
  ])('count %s as %d h and %d h for each 100 birds in all (second-hand)', (id, base, per100) => {
    const template = rowById(tables.taskTemplates, id);
    expect([template.hoursBase, template.hoursPerUnit, template.unit]).toEqual([
      base,
      per100,
      'hundred-birds',
    ]);
    expect(template.isDaily).toBe(false);
  });
});
