import { describe, expect, it } from '@jest/globals';
import { feedPerGain } from '../../shared/poultry/feed-per-gain.js';

describe('feedPerGain', () => {
  // What published tables print of it stands in the table of checks.
  it('says nothing where nothing was gained', () => {
    expect(feedPerGain({ feedKg: 1, startKg: 2, endKg: 2 })).toBeUndefined();
  });
});
