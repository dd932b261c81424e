import { describe, expect, it } from '@jest/globals';
import { isWorkKey } from '../../shared/farm/about-problems.js';
import { planAnimals } from '../../shared/plan/farm/animal-plans.js';
import { workOfFarm } from '../../shared/plan/farm/work-of-farm.js';
import { fitAll } from '../../shared/plan/work/fitted-work.js';
import { isKnownWork, workOfKey } from '../../shared/plan/known-work.js';
import { tables } from '../support/factories.js';
import { TEN_HOUSEHOLDS } from '../support/ten-households.js';

const isKnown = (key: string): boolean => isKnownWork(workOfKey(key), tables);

describe('work that is known', () => {
  it.each(TEN_HOUSEHOLDS)('is all that a plan has: %s', (_name, picture) => {
    const { work, chores } = fitAll(workOfFarm(picture, tables, planAnimals(picture, tables)), 1);
    const keys = [...work.needs, ...work.done, ...chores].map(({ key }) => key);
    expect(keys.length).toBeGreaterThan(15);
    expect(keys.filter((key) => !isWorkKey(key) || !isKnown(key))).toEqual([]);
  });

  it('is no work of another kind of animal, and none that a word is missing of', () => {
    expect(
      ['batch/b/meat.fetch-feed.12', 'herd/h/h.c0.hay.mow', 'herd/h/round'].map(isKnown),
    ).toEqual([true, true, true]);
    expect(
      ['batch/b/hay.mow', 'batch/b/meat.fetch', 'herd/h/meat.fetch-feed', 'herd/h/1'].map(isKnown),
    ).toEqual([false, false, false, false]);
  });
});
