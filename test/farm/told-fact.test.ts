import { describe, expect, it } from '@jest/globals';
import {
  groundChecksOf,
  holding,
  progressOf,
  readingsOf,
  type GroundChecked,
  type HeightRead,
  type WorkProgress,
} from '../../shared/farm/told-fact.js';
import { isWorkKey } from '../../shared/farm/about-problems.js';
import { toldProblems, type Said } from '../../shared/farm/told-kinds.js';

const at = (k: number): string => `2027-06-01T00:00:00.${String(k).padStart(3, '0')}Z`;
const read = (k: number, more: Partial<HeightRead> = {}): HeightRead => ({
  id: `f${k}`,
  kind: 'grass-reading',
  about: 'p1',
  on: '2027-05-01',
  details: { heightCm: k },
  toldAt: at(k),
  key: `f${k}`,
  ...more,
});

describe('facts that hold', () => {
  it('are neither taken back nor replaced', () => {
    const facts = [
      read(3, { replaces: 'f2' }),
      read(1),
      read(2),
      read(4, { takenBackAt: at(9), replaces: 'f1' }),
    ];
    expect(holding(facts).map(({ id }) => id)).toEqual(['f1', 'f3']);
  });

  it('hold again when what replaced them is taken back', () => {
    const chain = [read(1), read(2, { replaces: 'f1' }), read(3, { replaces: 'f2' })];
    expect(readingsOf(chain)).toMatchObject([{ heightCm: 3 }]);
    const undone = chain.map((fact) => (fact.id === 'f3' ? { ...fact, takenBackAt: at(5) } : fact));
    expect(readingsOf(undone)).toMatchObject([{ heightCm: 2 }]);
  });

  it('are what planners take', () => {
    expect(readingsOf([read(2, { on: '2027-05-03' }), read(1)])).toEqual([
      { id: 'f1', paddockId: 'p1', date: '2027-05-01', heightCm: 1 },
      { id: 'f2', paddockId: 'p1', date: '2027-05-03', heightCm: 2 },
    ]);
    const tick = { ...read(1), kind: 'work-progress', about: 'own/x', details: { hours: 2 } };
    expect(progressOf([tick as WorkProgress])).toEqual([{ key: 'own/x', hours: 2 }]);
    const look = { ...read(1), kind: 'ground-check', details: { isWorkable: false } };
    expect(groundChecksOf([look as GroundChecked])).toEqual([
      { date: '2027-05-01', isWorkable: false },
    ]);
  });
});

describe('what is said', () => {
  const farm = { today: '2027-06-01', paddockIds: ['p1'], herdIds: ['h1'], batchIds: ['b1'] };
  const fields = (said: object): string[] =>
    toldProblems(said as Said, farm).map(({ field }) => field);
  const reading = {
    kind: 'grass-reading',
    about: 'p1',
    on: '2027-05-01',
    details: { heightCm: 9 },
  };

  it.each([
    ['a reading', reading],
    ['a tick', { kind: 'work-progress', about: 'own/x', on: '2027-05-01', details: {} }],
    [
      'a tick for a batch long gone',
      {
        kind: 'work-progress',
        about: 'batch/gone/feed.1',
        on: '2027-05-01',
        details: { hours: 1 },
      },
    ],
    ['a mowing', { kind: 'paddock-mown', about: 'p1', on: '2027-05-01', details: { bales: 12 } }],
    ['a move', { kind: 'herd-move', about: 'h1', on: '2027-05-01', details: { paddockId: 'p1' } }],
  ])('is taken: %s', (_what, said) => {
    expect(fields(said)).toEqual([]);
  });

  it.each([
    ['a day to come', { ...reading, on: '2027-06-02' }, ['on']],
    ['a year typed wrong', { ...reading, on: '1927-05-01' }, ['on']],
    ['a paddock that is none', { ...reading, about: 'p9' }, ['about']],
    ['no height', { ...reading, details: {} }, ['details.heightCm']],
    [
      'a detail of another kind',
      { ...reading, details: { heightCm: 9, hours: 1 } },
      ['details.hours'],
    ],
    [
      'a key that never was one',
      { kind: 'work-progress', about: 'mow', on: '2027-05-01', details: {} },
      ['about'],
    ],
    [
      'a ground that neither is nor is not',
      { kind: 'ground-check', about: 'ground', on: '2027-05-01', details: {} },
      ['details.isWorkable'],
    ],
    [
      'bales of what was left lying',
      {
        ...{ kind: 'paddock-mown', about: 'p1', on: '2027-05-01' },
        details: { bales: 12, isLeftLying: true },
      },
      ['details.bales'],
    ],
    [
      'a move to nowhere',
      { kind: 'herd-move', about: 'h1', on: '2027-05-01', details: {} },
      ['details.paddockId'],
    ],
  ])('is refused by its field: %s', (_what, said, expected) => {
    expect(fields(said)).toEqual(expected);
  });

  it('has keys of the shape that plans of work give', () => {
    expect(['own/a-1', 'batch/b/feed.1', 'herd/h/water.2027-05-01'].every(isWorkKey)).toBe(true);
    expect(['', 'own/', 'own/a/b', 'batch/b', 'farm/x/y'].some(isWorkKey)).toBe(false);
  });
});
