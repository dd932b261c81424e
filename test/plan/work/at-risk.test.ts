import { describe, expect, it } from '@jest/globals';
import { tables } from '../../support/factories.js';
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

  it('is never told what it means to be early', () => {
    const templates = [...tables.taskTemplates, ...tables.herdTaskTemplates];
    expect(templates.filter(({ ifEarly }) => ifEarly !== undefined)).toHaveLength(5);
    // “Early: season yield cut. Late: grass goes to stem” was put into one sentence of being late.
    for (const { ifLate } of templates)
      expect(ifLate).not.toMatch(/^Early|\bif (early|late)\b|Late:/);
  });

  it('asks nothing where it is still in time, or where no animal waits for it', () => {
    expect(atRisk(fetch, { notBefore: '2027-05-20' })).toBeUndefined();
    expect(atRisk(fetch, {})).toBeUndefined();
    const { of: _of, ...own } = fetch;
    expect(atRisk(own, { struckOut: true })).toBeUndefined();
  });
});
