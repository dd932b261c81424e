import { describe, expect, it } from '@jest/globals';
import { changedFields, type RowOfRecord } from '../../shared/farm/row-changed.js';
import { sayRowChanged } from '../../shared/farm/say-row-changed.js';

const reader = { units: 'us', currency: 'USD', today: '2027-05-01' } as const;
type Row = Readonly<Record<string, unknown>>;

/** What the record says of a row that became another. */
const said = (of: RowOfRecord, before: Row, after: Row): string => {
  const fields = changedFields(of, before, after);
  return sayRowChanged({ of, name: 'x', how: 'changed', fields }, reader, (id) =>
    id === 'p1' ? 'Long' : undefined,
  );
};

describe('a changed row in the record', () => {
  const cold = { from: '2027-05-03', to: '2027-05-05', isIll: true };
  const trip = { from: '2027-06-01', to: '2027-06-02' };

  it('says of a list what came in and what was taken out', () => {
    expect(said('person', { away: [trip] }, { away: [trip, cold] })).toBe(
      'days away Mon, May 3 to Wed, May 5, ill',
    );
    expect(said('person', { away: [trip, cold] }, { away: [cold] })).toBe(
      'days away no longer Tue, Jun 1 to Wed, Jun 2',
    );
    expect(said('paddock', { closedDays: [] }, { closedDays: [trip] })).toMatch(
      /^closed days Tue, Jun 1 to Wed, Jun 2$/i,
    );
  });

  it('says of a field what it is and what it was, in the units of the farm', () => {
    expect(said('batch', { arrivalDate: '2027-05-19' }, { arrivalDate: '2027-05-26' })).toMatch(
      /Wed, May 26, before Wed, May 19$/,
    );
    expect(said('paddock', { areaM2: 4046.856 }, { areaM2: 8093.712 })).toMatch(
      /2 (ac|acres), before 1 (ac|acre)/,
    );
  });

  it('says who is put in charge, and of which days', () => {
    const fields = Object.entries(trip).map(([field, after]) => ({ field, after }));
    const say = (how: 'added' | 'deleted'): string =>
      sayRowChanged({ of: 'hand-over', name: 'Ruth', how, fields }, reader, () => undefined);
    expect(say('added')).toBe('put in charge, Tue, Jun 1 to Wed, Jun 2');
    expect(say('deleted')).toBe('not in charge any more, Tue, Jun 1 to Wed, Jun 2');
  });

  it('says of one that is gone what it was, the first of it', () => {
    const fields = changedFields('coop', { kind: 'coop', name: 'East', floorM2: 6, roostM: 5 }, {});
    const say = (many: typeof fields): string =>
      sayRowChanged({ of: 'coop', name: 'East', how: 'deleted', fields: many }, reader, () => '');
    expect(say(fields)).toMatch(/^deleted; floor 64\.58\d* ft²; roost 16\.40\d* ft$/);
    const rest = Array.from({ length: 12 }, () => fields.at(-1)!);
    expect(say(rest)).toMatch(/; and 4 more$/);
  });

  it('leaves out what did not change, and what nobody typed', () => {
    const row = { id: 'a', version: 1, name: 'A', away: [], assumed: ['away'] };
    expect(changedFields('person', row, { ...row, version: 2, assumed: [] })).toEqual([]);
  });

  it('does not keep an outline of many corners, but says that it changed', () => {
    const outline = (k: number) =>
      Array.from({ length: 200 }, (_, i) => ({ latitude: 44 + i / 1000, longitude: k }));
    const [field] = changedFields('paddock', { outline: outline(1) }, { outline: outline(2) });
    expect(field).toEqual({ field: 'outline' });
    expect(said('paddock', { outline: outline(1) }, { outline: outline(2) })).toMatch(/changed$/);
  });
});
