import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays } from '../../shared/calendar/plain-date.js';
import { grazedBy, lastGrazedOn, placeOf } from '../../shared/farm/herd-places.js';
import type { HerdMove } from '../../shared/farm/told-fact.js';

const KNOWN = new Set(['a', 'b', 'c', 'd']);

/** Moves of one herd in the order in which they are told. */
const told = (...moves: readonly Partial<HerdMove>[]): HerdMove[] =>
  moves.map((move, k) => ({
    id: `m${k}`,
    kind: 'herd-move',
    about: 'h1',
    on: '2027-05-01',
    toldAt: `2027-06-01T00:00:00.${String(k).padStart(3, '0')}Z`,
    key: `m${k}`,
    details: {},
    ...move,
  }));
const to = (paddockId: string, on: string, more: object = {}): Partial<HerdMove> => ({
  on,
  details: { paddockId, ...more },
});
const lefts = (moves: readonly HerdMove[]) =>
  grazedBy(moves).map(({ paddockId, noUseAfter }) => [paddockId, noUseAfter]);

describe('where a herd stands', () => {
  it('is where it was moved last by the day, whenever that was told', () => {
    const moves = told(to('a', '2027-05-01'), to('c', '2027-05-09'), to('b', '2027-05-05'));
    expect(placeOf(moves, KNOWN)).toEqual({ inPaddockId: 'c', inSince: '2027-05-09' });
    expect(lefts(moves)).toEqual([
      ['a', '2027-05-04'],
      ['b', '2027-05-08'],
    ]);
  });

  it('is where it was before when the move is taken back', () => {
    const moves = told(to('a', '2027-05-01'), {
      ...to('b', '2027-05-05'),
      takenBackAt: '2027-06-02T00:00:00.000Z',
    });
    expect(placeOf(moves, KNOWN)).toEqual({ inPaddockId: 'a', inSince: '2027-05-01' });
    expect(lefts(moves)).toEqual([]);
  });

  it('is what was typed, against moves of later days that were told before', () => {
    const moves = told(
      to('a', '2027-05-01'),
      to('b', '2027-05-05'),
      to('c', '2027-05-03', { isTyped: true }),
    );
    expect(placeOf(moves, KNOWN)).toEqual({ inPaddockId: 'c', inSince: '2027-05-03' });
    expect(lefts(moves)).toEqual([['a', '2027-05-02']]);
  });

  it('without a day says where it really was, and every move told later comes after', () => {
    const vague = { isTyped: true, isSinceUnknown: true };
    const before = told(to('a', '2027-05-01'), to('b', '2027-05-05'), to('c', '2027-05-20', vague));
    expect(placeOf(before, KNOWN)).toEqual({ inPaddockId: 'c' });
    const after = told(to('c', '2027-05-20', vague), to('d', '2027-05-02'));
    expect(placeOf(after, KNOWN)).toEqual({ inPaddockId: 'd', inSince: '2027-05-02' });
  });

  it('is nowhere when that was typed, when the paddock is gone, and when nothing was told', () => {
    const cleared = told(to('a', '2027-05-01'), { details: { isTyped: true } });
    expect(placeOf(cleared, KNOWN)).toEqual({});
    expect(placeOf(told(to('gone', '2027-05-01')), KNOWN)).toEqual({});
    expect(placeOf([], KNOWN)).toEqual({});
  });
});

describe('when a paddock was last grazed', () => {
  const grazed = grazedBy(told(to('a', '2027-05-01'), to('b', '2027-05-05')));
  it('is the later of what was typed and what moves say', () => {
    expect(lastGrazedOn('a', undefined, undefined, grazed)).toBe('2027-05-04');
    expect(lastGrazedOn('a', '2027-04-01', undefined, grazed)).toBe('2027-05-04');
    expect(lastGrazedOn('a', '2027-05-20', undefined, grazed)).toBe('2027-05-20');
    expect(lastGrazedOn('b', undefined, undefined, grazed)).toBeUndefined();
  });

  it('is what was typed after the move was told', () => {
    expect(lastGrazedOn('a', '2027-04-01', '2027-07-01T00:00:00.000Z', grazed)).toBe('2027-04-01');
    expect(lastGrazedOn('a', undefined, '2027-07-01T00:00:00.000Z', grazed)).toBeUndefined();
  });
});

const anyMoves = fc
  .array(
    fc.record({
      paddockId: fc.constantFrom('a', 'b', 'c'),
      day: fc.integer({ min: 0, max: 20 }),
      isTakenBack: fc.boolean(),
    }),
    { maxLength: 12 },
  )
  .map((list) =>
    told(
      ...list.map(({ paddockId, day, isTakenBack }) => ({
        ...to(paddockId, addDays('2027-05-01', day)),
        ...(isTakenBack ? { takenBackAt: '2027-07-01T00:00:00.000Z' } : {}),
      })),
    ),
  );

describe('any moves', () => {
  it('taken back are as if they had never been told', () => {
    fc.assert(
      fc.property(anyMoves, (moves) => {
        const without = moves.filter(({ takenBackAt }) => takenBackAt === undefined);
        expect(placeOf(moves, KNOWN)).toEqual(placeOf(without, KNOWN));
        expect(grazedBy(moves)).toEqual(grazedBy(without));
      }),
    );
  });

  it('of different days are the same in whatever order they are told', () => {
    fc.assert(
      fc.property(
        fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7], { minLength: 8 }),
        fc.array(fc.constantFrom('a', 'b', 'c'), { minLength: 8, maxLength: 8 }),
        (order, paddocks) => {
          const move = (day: number) => to(paddocks[day]!, addDays('2027-05-01', day));
          const inOrder = told(...[0, 1, 2, 3, 4, 5, 6, 7].map(move));
          const mixed = told(...order.map(move));
          expect(placeOf(mixed, KNOWN)).toEqual(placeOf(inOrder, KNOWN));
          expect(lefts(mixed)).toEqual(lefts(inOrder));
        },
      ),
    );
  });
});
