import { describe, expect, it } from '@jest/globals';
import { heightsLeft, withHeightsLeft } from '../../shared/farm/heights-left.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';

const move = (k: number, on: string, details: HerdMove['details'], more = {}): HerdMove => ({
  ...{ id: `m${k}`, key: `m${k}`, kind: 'herd-move', about: 'h1', on, details },
  toldAt: `2027-06-01T00:00:00.00${k}Z`,
  ...more,
});
const ofMove = { isOfMove: true } as const;

describe('a height that was told with a move', () => {
  const moves = [
    move(1, '2027-05-01', { paddockId: 'a' }),
    move(2, '2027-05-05', { paddockId: 'b', leftHeightCm: 8 }),
    move(3, '2027-05-09', { isOff: true, leftHeightCm: 10 }),
  ];

  it('is a reading of the paddock that they left, on the day they left it', () => {
    expect(heightsLeft(moves)).toEqual([
      { id: 'm2', paddockId: 'a', date: '2027-05-05', heightCm: 8, ...ofMove },
      { id: 'm3', paddockId: 'b', date: '2027-05-09', heightCm: 10, ...ofMove },
    ]);
  });

  it('goes with the move that is taken back, and is none where they left nothing', () => {
    const [first, second] = moves;
    const undone = { ...second!, takenBackAt: '2027-06-02T00:00:00.000Z' };
    expect(heightsLeft([first!, undone])).toEqual([]);
    expect(heightsLeft([move(1, '2027-05-01', { paddockId: 'a', leftHeightCm: 8 })])).toEqual([]);
    const again = move(2, '2027-05-05', { paddockId: 'a', leftHeightCm: 8 });
    expect(heightsLeft([first!, again])).toEqual([]);
  });

  it('is of the paddock between two moves of one day', () => {
    const through = move(4, '2027-05-09', { paddockId: 'd', leftHeightCm: 9 });
    expect(
      heightsLeft([
        ...moves.slice(0, 2),
        { ...moves[2]!, details: { paddockId: 'c', leftHeightCm: 10 } },
        through,
      ]),
    ).toEqual([
      { id: 'm2', paddockId: 'a', date: '2027-05-05', heightCm: 8, ...ofMove },
      { id: 'm3', paddockId: 'b', date: '2027-05-09', heightCm: 10, ...ofMove },
      { id: 'm4', paddockId: 'c', date: '2027-05-09', heightCm: 9, ...ofMove },
    ]);
    const first = move(1, '2027-05-01', { paddockId: 'b' });
    const next = move(2, '2027-05-01', { paddockId: 'c', leftHeightCm: 8 });
    expect(heightsLeft([first, next])).toEqual([
      { id: 'm2', paddockId: 'b', date: '2027-05-01', heightCm: 8, ...ofMove },
    ]);
  });

  it('yields to what was read there on a walk that day, in the order of days', () => {
    const walked = [
      { id: 'r1', paddockId: 'a', date: '2027-05-05', heightCm: 7 },
      { id: 'r2', paddockId: 'a', date: '2027-05-20', heightCm: 12 },
    ];
    const ids = withHeightsLeft(walked, moves).map(({ id }) => id);
    expect(ids).toEqual(['r1', 'm3', 'r2']);
    expect(withHeightsLeft(walked, [moves[0]!])).toEqual(walked);
  });
});
