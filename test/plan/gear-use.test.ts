import { describe, expect, it } from '@jest/globals';
import { gearUse } from '../../shared/plan/gear-use.js';

const held = (batchName: string, from: string, to: string, facilityId = 'brooder') => ({
  ...{ batchName, facilityId, from, to },
});
const TODAY = '2027-05-01';

describe('gearUse', () => {
  it('is free from today until somebody comes', () => {
    const later = held('Pullets', '2027-06-10', '2027-07-20');
    expect(gearUse([later], 'brooder', TODAY)).toEqual({
      uses: [{ batchName: 'Pullets', from: '2027-06-10', to: '2027-07-20', clashesWith: [] }],
      freeFrom: TODAY,
      freeUntil: '2027-06-09',
    });
  });

  it('is free on the day after those who are in it, one after the other', () => {
    const all = [
      held('Pullets', '2027-05-21', '2027-06-20'),
      held('Meat birds', '2027-04-20', '2027-05-20'),
      held('Long gone', '2027-01-20', '2027-02-20'),
      held('Elsewhere', '2027-04-20', '2027-12-20', 'coop'),
    ];
    const { uses, freeFrom, freeUntil } = gearUse(all, 'brooder', TODAY);
    expect(uses.map(({ batchName }) => batchName)).toEqual(['Meat birds', 'Pullets']);
    expect([freeFrom, freeUntil]).toEqual(['2027-06-21', undefined]);
  });

  it('names both who want it on one day', () => {
    const all = [
      held('Meat birds', '2027-05-10', '2027-06-01'),
      held('Pullets', '2027-06-01', '2027-07-01'),
    ];
    expect(gearUse(all, 'brooder', TODAY).uses.map(({ clashesWith }) => clashesWith)).toEqual([
      ['Pullets'],
      ['Meat birds'],
    ]);
  });
});
