import { describe, expect, it } from '@jest/globals';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

describe('feed per dozen', () => {
  it('is the same simple ratio in a plan, week by week and over the year', () => {
    const { laying } = plannedBatch(
      newRequest({
        batch: { purpose: 'layers', strainId: 'white-layer', sex: 'pullets', wantedBirds: 20 },
      }),
    );
    const fed = laying!.weeks.reduce((sum, week) => sum + week.feed.value, 0);
    const laid = laying!.weeks.reduce((sum, week) => sum + week.eggs.value, 0);
    // The year has one day more than its 52 whole weeks.
    expect(Math.abs(laying!.feedPerDozen.value / ((12 * fed) / laid) - 1)).toBeLessThan(0.005);
  });
});
