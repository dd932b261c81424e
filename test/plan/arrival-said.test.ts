import { describe, expect, it } from '@jest/globals';
import { arrivalSaid } from '../../shared/plan/arrival-said.js';

const batch = { id: 'b', arrivalDate: '2027-05-19' };
const change = (kind: 'arrived' | 'died', date: string, batchId = 'b') => ({
  ...{ id: `${kind}${date}`, batchId, date, change: kind, birds: 80 },
});
const said = (...of: Parameters<typeof arrivalSaid>): string => {
  const { what, on } = arrivalSaid(...of);
  return `${what} ${on}`;
};

describe('the arrival of a batch in a list', () => {
  it('is awaited until somebody tells it, and then on the day that was told', () => {
    expect(said(batch, [], '2027-05-10')).toBe('Arrive 2027-05-19');
    expect(said(batch, [], '2027-05-21')).toBe('Expected 2027-05-19');
    expect(said(batch, [change('arrived', '2027-05-20')], '2027-05-21')).toBe('Came 2027-05-20');
    expect(said(batch, [change('arrived', '2027-05-20', 'c')], '2027-05-21')).toBe(
      'Expected 2027-05-19',
    );
  });

  it('is past where birds were told of otherwise, or nobody tells anything of them', () => {
    expect(said(batch, [change('died', '2027-05-20')], '2027-05-21')).toBe('Came 2027-05-19');
    expect(said(batch, [], '2028-05-21')).toBe('Came 2027-05-19');
  });
});
