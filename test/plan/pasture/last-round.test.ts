import { describe, expect, it } from '@jest/globals';
import { join } from 'node:path';
import { pastureContext } from '../../../shared/plan/pasture/pasture-context.js';
import { pastureOfFarm } from '../../../shared/plan/pasture/pasture-of-farm.js';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { pictureOfFile } from '../../../src/cli/farm-file.js';
import { SEEDS_DIR } from '../../../src/reference/load-tables.js';
import { tables } from '../../support/factories.js';

describe('the last round of the example farm', () => {
  const picture = pictureOfFile(join(SEEDS_DIR, 'farm.example.jsonc'), tables);
  const context = pastureContext(pastureOfFarm(picture, tables));
  const { problem, books } = chooseMoves(context);

  it('is not broken off with hay while a tall paddock stands that gains hardly more', () => {
    const fall = problem.growthEnds - 30;
    const last = books.stays.filter(({ from }) => fall <= from);
    expect(last.length).toBeGreaterThan(3);
    expect(last.filter(({ start }) => start === 'after-hay')).toEqual([]);
    const gone = last.at(-1)!.from + last.at(-1)!.days;
    problem.swards.forEach(({ turnInKgPerHa }, p) => {
      expect(books.massKgPerHa[p]![gone]!).toBeLessThan(turnInKgPerHa);
    });
  });
});
