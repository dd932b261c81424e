import { describe, expect, it } from '@jest/globals';
import { movedBy } from '../../../shared/plan/pasture/move-told.js';
import { goesByChore } from '../../../shared/plan/work/herd-goes.js';
import type { Move } from '../../../shared/plan/pasture/moves.js';

const on = '2027-05-14';
const herds = [{ id: 'h', inPaddockId: 'a' }];
const moves = [{ herdId: 'h', paddockId: 'd', from: on } as Move];
const knownUntil = '2027-05-03';

describe('the tick of a move', () => {
  it('tells the moves before it that were taken as made, each on its day', () => {
    const assumedMoves = [
      { herdId: 'h', paddockId: 'b', on: '2027-05-06', knownUntil },
      { herdId: 'other', paddockId: 'x', on: '2027-05-07', knownUntil },
      { herdId: 'h', paddockId: 'c', on: '2027-05-09', knownUntil },
    ];
    const goes = goesByChore({ key: 'herd/h/moves', on }, herds, { moves, assumedMoves })!;
    const told = movedBy(goes, 'herd/h/moves', on);
    expect(told.map(({ about, on, details }) => [about, on, details.paddockId])).toEqual([
      ['h', '2027-05-06', 'b'],
      ['h', '2027-05-09', 'c'],
      ['h', on, 'd'],
    ]);
    // All of them are of this tick, so that its undo takes them back together.
    expect(told.map(({ details }) => ({ tickedOn: on, ...details }))).toMatchObject(
      told.map(() => ({ work: 'herd/h/moves', tickedOn: on })),
    );
  });

  it('tells nothing else where all was told', () => {
    const goes = goesByChore({ key: 'herd/h/moves', on }, herds, { moves })!;
    expect(movedBy(goes, 'herd/h/moves', on)).toHaveLength(1);
  });
});
