import { describe, expect, it } from '@jest/globals';
import {
  newCow,
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

describe('grass too old to carry milk', () => {
  // Two cows on land for a dozen, of which nothing is mown: they go into what has headed out.
  const plan = plannedPasture(
    newPastureRequest({
      paddocks: newPaddocks(6, { areaM2: 16_000 }),
      herds: [newHerd({ groups: [newGroup({ classId: 'milk-cow', head: 2 })] })],
      cows: [newCow({ classId: 'milk-cow', milkKgPerDay: 20 })],
      choices: { makesHay: false },
    }),
  );
  const said = plan.issues.filter(({ code }) => code === 'grass-too-poor');

  it('is said of a cow by her name and of others by their kind, with where and what helps', () => {
    expect(said.map(({ text }) => text)).toEqual([
      expect.stringMatching(/all of the milk of (Clover|each milk cow), in Paddock \d/),
      expect.stringMatching(/all of the milk of (Clover|each milk cow), in Paddock \d/),
    ]);
    for (const { text } of said)
      expect(text).toMatch(/Graze or top it younger.* good hay or grain/);
  });

  it('never leaves a cow without any milk', () => {
    for (const { carries } of plan.herds)
      for (const { least } of carries) expect(least.value).toBeGreaterThan(0);
  });
});
