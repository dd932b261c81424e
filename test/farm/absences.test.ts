import { describe, expect, it } from '@jest/globals';
import { absencesAhead } from '../../shared/farm/absences.js';

const person = (id: string, ...away: { from: string; to: string }[]) => ({ id, name: id, away });
const [may, june] = [
  { from: '2027-05-11', to: '2027-05-14' },
  { from: '2027-06-01', to: '2027-06-03' },
];

describe('absences ahead', () => {
  it('names all who are away on those days, the next first, each span once', () => {
    const people = [person('a', june, may), person('b', may), person('c')];
    expect(absencesAhead(people, [], '2027-05-01')).toEqual([
      { ...may, awayIds: ['a', 'b'] },
      { ...june, awayIds: ['a'] },
    ]);
  });

  it('leaves out what is over and what is handed over', () => {
    const people = [person('a', may, june)];
    expect(absencesAhead(people, [], '2027-05-20')).toHaveLength(1);
    expect(absencesAhead(people, [{ from: '2027-06-02', to: '2027-06-09' }], '2027-05-20')).toEqual(
      [],
    );
  });
});
