import { describe, expect, it } from '@jest/globals';
import { checkPasture } from '../../../shared/plan/pasture/check-pasture.js';
import type { PastureRequest } from '../../../shared/plan/pasture/pasture-request.js';
import {
  describeProblem,
  FieldError,
  type FieldProblem,
} from '../../../shared/problems/field-problem.js';
import { tables } from '../../support/factories.js';
import {
  newGroup,
  newHerd,
  newPaddock,
  newPaddocks,
  newPastureRequest,
  newReading,
} from '../../support/pasture-factories.js';

type More = Parameters<typeof newPastureRequest>[0];

function problemsOf(request: PastureRequest): readonly FieldProblem[] {
  try {
    checkPasture(request);
    return [];
  } catch (error) {
    if (!(error instanceof FieldError)) throw error;
    return error.problems;
  }
}
const paddock = (more: object): More => ({ paddocks: [newPaddock(more)] });
const group = (more: object): More => ({ herds: [newHerd({ groups: [newGroup(more)] })] });

/** What is wrong, the request, and the problem that must be named; anything else is a fault. */
const WRONG: readonly (readonly [string, More, Partial<FieldProblem>])[] = [
  [
    'a paddock without area',
    paddock({ areaM2: 0 }),
    { field: 'paddocks.0.areaM2', code: 'out-of-bounds', given: 0, min: 50, max: 1e7, unit: 'm2' },
  ],
  [
    'an area that is no number',
    paddock({ areaM2: NaN }),
    { field: 'paddocks.0.areaM2', code: 'not-a-number', given: NaN },
  ],
  [
    'a residual above the turn-in height',
    paddock({ readyHeightCm: 10, residualHeightCm: 12 }),
    {
      field: 'paddocks.0.residualHeightCm',
      code: 'out-of-bounds',
      given: 12,
      max: 9.9,
      unit: 'cm',
    },
  ],
  [
    'a residual at the turn-in height of the forage',
    paddock({ residualHeightCm: 20.3 }),
    {
      field: 'paddocks.0.residualHeightCm',
      code: 'out-of-bounds',
      given: 20.3,
      max: 20.2,
      unit: 'cm',
    },
  ],
  [
    'a turn-in height under the residual of the forage',
    paddock({ readyHeightCm: 5 }),
    {
      field: 'paddocks.0.residualHeightCm',
      code: 'out-of-bounds',
      given: 7.62,
      max: 4.9,
      unit: 'cm',
    },
  ],
  [
    'an unknown forage',
    paddock({ forageId: 'plastic' }),
    {
      field: 'paddocks.0.forageId',
      code: 'not-allowed',
      given: 'plastic',
      allowed: tables.forages.map((f) => f.id),
    },
  ],
  [
    'an unknown soil',
    paddock({ soilId: 'concrete' }),
    {
      field: 'paddocks.0.soilId',
      code: 'not-allowed',
      given: 'concrete',
      allowed: tables.soils.map((s) => s.id),
    },
  ],
  [
    'an unknown stand',
    paddock({ stand: 'lush' }),
    { field: 'paddocks.0.stand', code: 'not-allowed', given: 'lush' },
  ],
  [
    'a paddock shut to before it is shut from',
    paddock({ closedDays: [{ from: '2027-06-10', to: '2027-06-01', why: 'hay' }] }),
    {
      field: 'paddocks.0.closedDays.0.to',
      code: 'out-of-bounds',
      given: '2027-06-01',
      min: '2027-06-10',
    },
  ],
  [
    'a day that is on no calendar',
    paddock({ lastGrazedOn: '2027-02-30' }),
    { field: 'paddocks.0.lastGrazedOn', code: 'not-a-date', given: '2027-02-30' },
  ],
  [
    'two paddocks of one id',
    { paddocks: [newPaddock(), newPaddock({ name: 'Again' })] },
    { field: 'paddocks.1.id', code: 'conflict', given: 'p1' },
  ],
  [
    'two herds in one paddock',
    {
      herds: [
        newHerd({ inPaddockId: 'p1' }),
        newHerd({ id: 'h2', name: 'Steers', inPaddockId: 'p1' }),
      ],
    },
    { field: 'herds.1.inPaddockId', code: 'conflict', given: 'p1' },
  ],
  [
    'a herd in a paddock that is not there',
    { herds: [newHerd({ inPaddockId: 'p9' })] },
    {
      field: 'herds.0.inPaddockId',
      code: 'not-allowed',
      given: 'p9',
      allowed: newPaddocks(6).map((p) => p.id),
    },
  ],
  [
    'an empty herd',
    { herds: [newHerd({ groups: [] })] },
    { field: 'herds.0.groups', code: 'missing', given: undefined },
  ],
  [
    'no head',
    group({ head: 0 }),
    { field: 'herds.0.groups.0.head', code: 'out-of-bounds', given: 0, min: 1, max: 2000 },
  ],
  [
    'cattle of an unknown class',
    group({ classId: 'yak' }),
    {
      field: 'herds.0.groups.0.classId',
      code: 'not-allowed',
      given: 'yak',
      allowed: tables.cattle.classes.map((c) => c.id),
    },
  ],
  [
    'cattle of an unknown breed',
    group({ breedId: 'yak' }),
    {
      field: 'herds.0.groups.0.breedId',
      code: 'not-allowed',
      given: 'yak',
      allowed: tables.gestation.breeds.map((b) => b.id),
    },
  ],
  [
    'cattle that leave before they arrive',
    group({ arrivesOn: '2027-06-10', leavesOn: '2027-06-01' }),
    {
      field: 'herds.0.groups.0.leavesOn',
      code: 'out-of-bounds',
      given: '2027-06-01',
      min: '2027-06-10',
    },
  ],
  [
    'a stay of a month',
    { herds: [newHerd({ longestStayDays: 31 })] },
    { field: 'herds.0.longestStayDays', code: 'out-of-bounds', given: 31, min: 1, max: 14 },
  ],
  [
    'a reading in the future',
    { readings: [newReading({ date: '2027-04-22' })] },
    {
      field: 'readings.0.date',
      code: 'out-of-bounds',
      given: '2027-04-22',
      max: '2027-04-21',
    },
  ],
  [
    'a reading of a paddock that is not there',
    { readings: [newReading({ paddockId: 'p9' })] },
    {
      field: 'readings.0.paddockId',
      code: 'not-allowed',
      given: 'p9',
      allowed: newPaddocks(6).map((p) => p.id),
    },
  ],
  [
    'a reading as tall as a house',
    { readings: [newReading({ heightCm: 600 })] },
    {
      field: 'readings.0.heightCm',
      code: 'out-of-bounds',
      given: 600,
      min: 0,
      max: 250,
      unit: 'cm',
    },
  ],
  [
    'thirteen shares of rain',
    { choices: { rainShareByMonth: new Array<number>(13).fill(1) } },
    {
      field: 'pastureChoices.rainShareByMonth',
      code: 'out-of-bounds',
      given: 13,
      min: 12,
      max: 12,
    },
  ],
  [
    'rain below nothing',
    { choices: { rainShareByMonth: [1, 1, 1, -1, 1, 1, 1, 1, 1, 1, 1, 1] } },
    {
      field: 'pastureChoices.rainShareByMonth.3',
      code: 'out-of-bounds',
      given: -1,
      min: 0,
      max: 3,
    },
  ],
  [
    'an unknown bale',
    { choices: { baleId: 'bag' } },
    {
      field: 'pastureChoices.baleId',
      code: 'not-allowed',
      given: 'bag',
      allowed: tables.pasture.hay.bales.map((b) => b.id),
    },
  ],
];

const SPANS: typeof WRONG = [
  [
    'a plan that ends before it begins',
    { choices: { to: '2027-04-01' } },
    { field: 'pastureChoices.to', code: 'out-of-bounds', given: '2027-04-01' },
  ],
  [
    'a plan of two years',
    { choices: { to: '2029-04-01' } },
    { field: 'pastureChoices.to', code: 'out-of-bounds', given: '2029-04-01' },
  ],
];

describe('checkPasture', () => {
  it('lets a valid farm pass', () => {
    expect(problemsOf(newPastureRequest())).toEqual([]);
    expect(problemsOf(newPastureRequest({ readings: [newReading()] }))).toEqual([]);
  });

  it.each([...WRONG, ...SPANS])('names %s, and nothing else', (_, more, named) => {
    const problems = problemsOf(newPastureRequest(more));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject(named);
    expect(problems[0]!.fix).toMatch(/^[A-Z].{12,}\.$/);
  });

  it.each(WRONG)('says of %s what was given and what is allowed', (_, more, { field, given }) => {
    const [problem] = problemsOf(newPastureRequest(more));
    const text = describeProblem(problem!);
    expect(text.startsWith(field!)).toBe(true);
    expect(text.endsWith(problem!.fix)).toBe(true);
    if (given !== undefined && given === given) expect(text).toContain(String(given));
    expect(text).not.toMatch(/undefined|\[object/);
  });

  it('names every field at once', () => {
    const request = newPastureRequest({
      paddocks: [newPaddock({ areaM2: 0, soilId: 'concrete' })],
      herds: [newHerd({ groups: [newGroup({ head: 0 })] })],
      readings: [newReading({ date: '2027-05-01', heightCm: -1 })],
    });
    expect(
      problemsOf(request)
        .map((problem) => problem.field)
        .sort(),
    ).toEqual([
      'herds.0.groups.0.head',
      'paddocks.0.areaM2',
      'paddocks.0.soilId',
      'readings.0.date',
      'readings.0.heightCm',
    ]);
  });
});
