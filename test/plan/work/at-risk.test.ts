import { describe, expect, it } from '@jest/globals';
import { atRisk } from '../../../shared/plan/work/at-risk.js';

const fetch = {
  of: 'Hens',
  ifLate: 'The hens have nothing to eat',
  latest: '2027-05-20',
};

describe('work that is put off or struck out', () => {
  it('says what it means for animals once it would be too late, or is not done at all', () => {
    const risk = 'Hens: if not done in time, the hens have nothing to eat.';
    expect(atRisk(fetch, { notBefore: '2027-05-21' })).toBe(risk);
    expect(atRisk(fetch, { struckOut: true })).toBe(risk);
  });

  it('asks nothing where it is still in time, or where no animal waits for it', () => {
    expect(atRisk(fetch, { notBefore: '2027-05-20' })).toBeUndefined();
    expect(atRisk(fetch, {})).toBeUndefined();
    const { of: _of, ...own } = fetch;
    expect(atRisk(own, { struckOut: true })).toBeUndefined();
  });
});
