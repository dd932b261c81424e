import { describe, expect, it } from '@jest/globals';
import { putBack } from '../../shared/farm/put-back.js';

interface Row {
  readonly version: number;
  readonly name: string;
  readonly arrivalDate: string;
  readonly slotDate?: string;
  readonly assumed?: readonly string[];
}
const BEFORE: Row = {
  ...{ version: 1, name: 'Spring', arrivalDate: '2027-04-07' },
  assumed: ['arrivalDate', 'name'],
};
const CHANGE: Row = { ...BEFORE, arrivalDate: '2027-04-14', slotDate: '2027-06-09' };
const SAVED: Row = { ...CHANGE, version: 2, assumed: ['name'] };

describe('a change that is put back', () => {
  it('leaves the whole row as it was, what nobody had said included', () => {
    expect(putBack(BEFORE, CHANGE, SAVED)).toEqual({ ...BEFORE, version: 2 });
  });

  it('leaves what somebody else changed meanwhile, and what they said', () => {
    const joined: Row = { ...SAVED, version: 3, name: 'Early', assumed: [] };
    expect(putBack(BEFORE, CHANGE, joined)).toEqual({
      ...{ version: 3, name: 'Early', arrivalDate: BEFORE.arrivalDate },
      assumed: ['arrivalDate'],
    });
    const theirs: Row = { ...joined, arrivalDate: '2027-04-21' };
    expect(putBack(BEFORE, CHANGE, theirs)).toEqual({
      ...{ version: 3, name: 'Early', arrivalDate: '2027-04-21' },
      assumed: [],
    });
  });
});
