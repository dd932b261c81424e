import { describe, expect, it } from '@jest/globals';
import type { RowChanged } from '../../shared/farm/row-changed.js';
import type { RowWasChanged } from '../../shared/farm/told-fact.js';
import { withThoseMoved } from '../../shared/farm/treated-moved.js';
import type { Treatment } from '../../shared/farm/treated.js';

const given = (more: Partial<Treatment> = {}): Treatment => ({
  ...{ id: 't', about: 'A', date: '2027-03-10', product: 'Wormer', meatDays: 21, ...more },
});

const moved = (on: string, before: string, after: string, of: RowChanged['of'] = 'cow') =>
  ({
    ...{ id: `${on}-${after}`, key: on, kind: 'row-changed', about: 'daisy', on },
    toldAt: `${on}T08:00:00.000Z`,
    details: { of, name: 'Daisy', how: 'changed', fields: [{ field: 'herdId', before, after }] },
  }) as RowWasChanged;

const ofHer = (changes: readonly RowWasChanged[], treatment = given()) =>
  withThoseMoved([treatment], changes).slice(1);

describe('a medicine that a whole herd had', () => {
  it('goes with a cow into the herd she came to since', () => {
    expect(ofHer([moved('2027-03-12', 'A', 'B')])).toEqual([
      given({ id: 't/daisy', about: 'B', cowId: 'daisy', wentAlong: true }),
    ]);
    const on = [moved('2027-03-12', 'A', 'B'), moved('2027-03-14', 'B', 'C')];
    expect(ofHer(on)).toEqual([
      given({ id: 't/daisy', about: 'C', cowId: 'daisy', wentAlong: true }),
    ]);
  });

  it('goes with her where she changed over on that very day: nobody knows which came first', () => {
    expect(ofHer([moved('2027-03-10', 'A', 'B')])).toHaveLength(1);
    expect(ofHer([moved('2027-03-10', 'B', 'A'), moved('2027-03-11', 'A', 'B')])).toHaveLength(1);
  });

  it('does not where she left before, came back, or was given it by name', () => {
    expect(ofHer([moved('2027-03-09', 'A', 'B')])).toEqual([]);
    expect(ofHer([moved('2027-03-12', 'A', 'B'), moved('2027-03-13', 'B', 'A')])).toEqual([]);
    expect(ofHer([moved('2027-03-12', 'A', 'B')], given({ cowId: 'daisy' }))).toEqual([]);
    expect(ofHer([moved('2027-03-12', 'A', 'B', 'herd')])).toEqual([]);
  });
});
