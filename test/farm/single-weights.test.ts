import { describe, expect, it } from '@jest/globals';
import { toldProblems, type ToldOn } from '../../shared/farm/told-kinds.js';

const FARM: ToldOn = { today: '2027-06-01', batchIds: ['b'], herdIds: [], paddockIds: [] };
const KG_PER_OUNCE = 0.028349523125;
/** Ten Barred Rocks at 21 days; their sum is printed as 53.25 ounces, and is 59.25. */
const OUNCES = [6.5, 6, 7, 5.75, 6, 6.5, 4.5, 5.5, 5.75, 5.75];
const EACH = OUNCES.map((ounces) => ounces * KG_PER_OUNCE);
const problems = (details: Readonly<Record<string, unknown>>) =>
  toldProblems({ kind: 'weighed', about: 'b', on: '2027-05-26', details }, FARM);

describe('birds that are weighed one by one', () => {
  it('are told by their weights, alone or with what they add up to', () => {
    expect(problems({ birds: 10, eachKg: EACH })).toEqual([]);
    expect(problems({ birds: 10, eachKg: EACH, totalKg: 59.25 * KG_PER_OUNCE })).toEqual([]);
  });

  it.each([
    ['a sum that they do not add up to', { totalKg: 53.25 * KG_PER_OUNCE }, 'details.totalKg'],
    ['another number of birds', { birds: 9 }, 'details.birds'],
    ['an average as well', { averageKg: 0.168 }, 'details.averageKg'],
    ['a bird in grams', { eachKg: EACH.with(3, 16.3) }, 'details.eachKg.3'],
    ['a bird of 66 lb', { eachKg: EACH.with(0, 29.9) }, 'details.eachKg.0'],
    ['no weight', { eachKg: [] }, 'details.eachKg'],
  ])('are not told with %s', (_, more, field) => {
    expect(problems({ birds: 10, eachKg: EACH, ...more }).map((each) => each.field)).toContain(
      field,
    );
  });

  it('are held to bounds that are read as weights, and that are believed themselves', () => {
    const [slip] = problems({ birds: 3, eachKg: [2.1, 2.1, 6.6] });
    expect(slip).toMatchObject({ field: 'details.eachKg.2', given: 6.6, min: 0.7, max: 6.3 });
    expect(problems({ birds: 3, eachKg: [2.1, 2.1, 6.3] })).toEqual([]);
  });
});
