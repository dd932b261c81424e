import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import { BOUNDS } from '../../shared/farm/bounds.js';
import { checkBatch } from '../../shared/plan/check-batch.js';
import {
  describeProblem,
  FieldError,
  type FieldProblem,
} from '../../shared/problems/field-problem.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

function problemsOf(batch: Record<string, unknown>): readonly FieldProblem[] {
  try {
    checkBatch(newRequest({ batch: batch as Partial<Batch> }));
  } catch (error) {
    if (error instanceof FieldError) return error.problems;
    throw error;
  }
  return [];
}

const NUMBERS = [
  ['wantedBirds', 'wantedBirds'],
  ['orderedBirds', 'orderedBirds'],
  ['hatchToArrivalDays', 'hatchToArrivalDays'],
  ['weightFactor', 'weightFactor'],
  ['feedFactor', 'feedFactor'],
  ['wastePercent', 'wastePercent'],
  ['firstWeekLossPercent', 'lossPercent'],
  ['laterLossPercent', 'lossPercent'],
  ['leaveAgeDays', 'leaveAgeDays'],
  ['targetLiveKg', 'targetLiveKg'],
  ['dressingShare', 'dressingShare'],
  ['movesPerDay', 'movesPerDay'],
  ['medicatedWithdrawalDays', 'withdrawalDays'],
  ['bagKg', 'bagKg'],
] as const;

describe('checkBatch', () => {
  it('lets a valid batch pass', () => {
    expect(problemsOf({})).toEqual([]);
  });

  it.each(NUMBERS)(
    'takes %s at both of its bounds and refuses a value past them',
    (field, bound) => {
      const { min, max, fix } = BOUNDS[bound];
      expect(problemsOf({ [field]: min })).toEqual([]);
      expect(problemsOf({ [field]: max })).toEqual([]);
      for (const given of [min - 1, max + 1]) {
        expect(problemsOf({ [field]: given })).toEqual([
          expect.objectContaining({
            field: `batch.${field}`,
            code: 'out-of-bounds',
            given,
            min,
            max,
            fix,
          }),
        ]);
      }
    },
  );

  it.each(NUMBERS)('says that %s is not a number when it is none', (field, _bound) => {
    for (const given of [Number.NaN, Infinity, '12', null, {}, true]) {
      const [problem, ...others] = problemsOf({ [field]: given });
      expect(others).toEqual([]);
      expect(problem).toMatchObject({ field: `batch.${field}`, code: 'not-a-number', given });
      expect(problem!.fix.length).toBeGreaterThan(10);
    }
  });

  it.each(['wantedBirds', 'orderedBirds', 'hatchToArrivalDays', 'leaveAgeDays'])(
    'refuses a fraction of %s',
    (field) => {
      expect(problemsOf({ [field]: 2.5 })).toEqual([
        expect.objectContaining({ field: `batch.${field}`, code: 'out-of-bounds', unit: 'whole' }),
      ]);
    },
  );

  it.each([
    ['strainId', 'gold', 'fast-meat'],
    ['growthTableId', 'brown-pullet-1994', 'fast-2020'],
    ['broodingScheduleId', 'warm', 'step-5f'],
    ['spaceStandardId', 'roomy', 'extension-weekly'],
    ['moveOutRuleId', 'never', 'usual'],
    ['purpose', 'layers', 'meat'],
  ])('names what %s may be when it is "%s"', (field, given, among) => {
    const [problem] = problemsOf({ [field]: given });
    expect(problem).toMatchObject({ field: `batch.${field}`, code: 'not-allowed', given });
    expect(problem!.allowed).toContain(among);
  });

  it.each([
    ['brooderId', 'brooder'],
    ['penId', undefined],
    ['coopId', undefined],
    ['freezerId', undefined],
    ['feedStoreId', undefined],
  ])('names the places there are when %s is unknown', (field, known) => {
    const [problem] = problemsOf({ [field]: 'nowhere' });
    expect(problem).toMatchObject({
      field: `batch.${field}`,
      code: 'not-allowed',
      given: 'nowhere',
    });
    expect(problem!.allowed).toEqual(known === undefined ? [] : [known]);
    expect(problem!.fix).toBe(
      known === undefined
        ? 'There is none yet: add one first, or leave it out.'
        : 'Choose one of these.',
    );
  });

  it.each(['2027-02-29', '21 April', '', '2027-4-1', 20270505])(
    'refuses the arrival date %p',
    (given) => {
      expect(problemsOf({ arrivalDate: given })).toEqual([
        expect.objectContaining({ field: 'batch.arrivalDate', code: 'not-a-date', given }),
      ]);
    },
  );

  it('refuses dates that contradict each other', () => {
    expect(problemsOf({ orderDate: '2027-05-06' })).toEqual([
      expect.objectContaining({
        field: 'batch.arrivalDate',
        min: '2027-05-06',
        given: '2027-05-05',
      }),
    ]);
    expect(problemsOf({ moveOutDate: '2027-05-05' })).toEqual([
      expect.objectContaining({ field: 'batch.moveOutDate', min: '2027-05-06' }),
    ]);
    expect(problemsOf({ arrivalDate: '2031-01-01' })).toEqual([
      expect.objectContaining({ field: 'batch.arrivalDate', max: '2029-11-29' }), // today + 1100 days
    ]);
  });

  it('refuses cockerels as layers', () => {
    expect(problemsOf({ purpose: 'layers', strainId: 'brown-layer', sex: 'cockerels' })).toEqual([
      expect.objectContaining({ field: 'batch.sex', code: 'conflict', given: 'cockerels' }),
    ]);
  });

  it('finds every problem at once', () => {
    const fields = problemsOf({
      wantedBirds: 0,
      bagKg: 0,
      strainId: 'gold',
      arrivalDate: 'soon',
    }).map((p) => p.field);
    expect(fields.sort()).toEqual([
      'batch.arrivalDate',
      'batch.bagKg',
      'batch.strainId',
      'batch.wantedBirds',
    ]);
  });

  it('is asked by planBatch before anything is worked out', () => {
    expect(() => plannedBatch(newRequest({ batch: { wantedBirds: 0 } }))).toThrow(FieldError);
  });

  it.each(['wantedBirds', 'hatchToArrivalDays'])(
    'names %s when it is missing, instead of planning with NaN',
    (field) => {
      expect(problemsOf({ [field]: undefined })).toEqual([
        expect.objectContaining({ field: `batch.${field}` }),
      ]);
    },
  );

  it('refuses a sex that it does not know', () => {
    expect(problemsOf({ sex: 'hens' })).toEqual([
      expect.objectContaining({ field: 'batch.sex', given: 'hens' }),
    ]);
  });

  it('refuses a price that is not decimal text as a field, not as a broken sum', () => {
    const request = newRequest({ batch: { prices: { perBird: 'three' } } });
    expect(() => plannedBatch(request)).toThrow(FieldError);
  });
});

describe('describeProblem', () => {
  it.each([
    [
      {
        field: 'batch.wantedBirds',
        code: 'out-of-bounds',
        given: 0,
        min: 1,
        max: 5000,
        unit: 'count',
        fix: 'Plan fewer.',
      },
      'batch.wantedBirds is 0, but must be from 1 to 5000. Plan fewer.',
    ],
    [
      {
        field: 'areaM2',
        code: 'out-of-bounds',
        given: 0,
        min: 0.1,
        unit: 'm2',
        fix: 'Measure the sides.',
      },
      'areaM2 is 0 m², but must be at least 0.1 m². Measure the sides.',
    ],
    [
      { field: 'batch.bagKg', code: 'not-a-number', given: 'heavy', fix: 'Read the weight.' },
      'batch.bagKg is "heavy", which is not a number. Read the weight.',
    ],
    [
      { field: 'batch.arrivalDate', code: 'not-a-date', given: 'soon', fix: 'Write a date.' },
      'batch.arrivalDate is "soon", which is not a calendar date. Write a date.',
    ],
    [
      {
        field: 'batch.sex',
        code: 'not-allowed',
        given: 'hens',
        allowed: ['pullets', 'cockerels'],
        fix: 'Choose.',
      },
      'batch.sex is "hens", but must be one of: pullets, cockerels. Choose.',
    ],
    [
      { field: 'farm', code: 'missing', given: undefined, fix: 'Send one.' },
      'farm is missing. Send one.',
    ],
  ] as [FieldProblem, string][])(
    'says what was given, what is allowed and what to do: %#',
    (problem, words) => {
      expect(describeProblem(problem)).toBe(words);
    },
  );

  it('puts every problem into the message of the error', () => {
    const error = new FieldError(problemsOf({ wantedBirds: 0, bagKg: 0 }));
    expect(error.message).toContain('batch.wantedBirds is 0');
    expect(error.message).toContain('batch.bagKg is 0 kg');
  });
});
