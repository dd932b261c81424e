import { describe, expect, it } from '@jest/globals';
import { batchFields } from '../../shared/farm/batch.js';
import { problemsOfNumber } from '../../shared/farm/bounds.js';
import { problemsOfRow } from '../../shared/farm/check-row.js';
import {
  brooderFields,
  coopFields,
  feedStoreFields,
  freezerFields,
} from '../../shared/farm/facility.js';
import type { NumberField } from '../../shared/farm/field.js';
import { unitAt } from '../../shared/farm/field-at.js';
import { dressedProblems, weightProblems } from '../../shared/farm/told-problems.js';
import { jobFields } from '../../shared/farm/job.js';
import { problemsOfMonths } from '../../shared/farm/months.js';
import { paddockFields } from '../../shared/farm/paddock.js';
import {
  describeForForm,
  describeProblem,
  type FieldProblem,
} from '../../shared/problems/field-problem.js';
import type { Reader } from '../../shared/units/format.js';

const us: Reader = { units: 'us', currency: 'USD' };
const metric: Reader = { units: 'metric', currency: 'EUR' };

const { lengthM, heightM, roomC } = brooderFields.fields;
const { runM2 } = coopFields.fields;
const { liters } = freezerFields.fields;
const { capacityKg } = feedStoreFields.fields;
const { wantedBirds, dressingShare } = batchFields.fields;

const words = (given: number, { bounds }: NumberField, reader: Reader): string =>
  problemsOfNumber('field', given, bounds)
    .map((p) => describeForForm(p, { labelOf: () => 'Length', unitOf: () => bounds.unit }, reader))
    .join();

describe('describeForForm', () => {
  it('says weights that contradict each other in the units of the farm', () => {
    const said = (problems: readonly FieldProblem[]): string[] =>
      problems.map((each) => describeForForm(each, { labelOf: () => 'Weight' }, us));
    // 9 lb live and 12 lb dressed; 6 lb on average and 60 lb of 10 birds together.
    expect(said(dressedProblems({ liveKg: 4.08233, dressedKg: 5.44311 }))).toEqual([
      expect.stringMatching(/^Weight 12 lb is above Weight 9 lb\. /),
    ]);
    expect(said(weightProblems({ birds: 10, averageKg: 2.72155, totalKg: 27.2155 }))).toEqual([
      expect.stringMatching(/^Weight is 6 lb, which contradicts another field\. /),
    ]);
    expect(said(weightProblems({ birds: 2, totalKg: 453.59237 }))).toEqual([
      expect.stringMatching(/^Weight is 1,000 lb, but must be from 0\.09 lb to 110 lb\. /),
    ]);
  });

  it('names the label and gives value and bounds in the units of the farm', () => {
    expect(words(800 * 0.3048, lengthM, us)).toBe(
      'Length is 800 ft, but must be from 0.66 ft to 196 ft. Measure the inside of the brooder.',
    );
    expect(words(243.84000000000003, lengthM, metric)).toContain(
      'is 243.84 m, but must be from 0.2 m to 60 m',
    );
    expect(words(60, roomC, us)).toContain('is 140 °F, but must be from 32 °F to 95 °F');
  });

  it('gives bounds that may themselves be typed', () => {
    for (const bound of [lengthM, heightM, liters, capacityKg]) {
      const said = words(1e9, bound, us);
      expect(said).toMatch(/from [\d.,]+ \S+ to [\d.,]+ \S+\./);
    }
    // 60 m are 196.85 ft: 197 would be refused.
    expect(words(1e9, lengthM, us)).toContain('to 196 ft');
  });

  it('says so when a number is negative, broken, or not a number', () => {
    expect(words(-2, runM2, us)).toContain('must not be negative: from 0 ft²');
    expect(words(2.5, wantedBirds, us)).toContain(
      'is 2.5, but must be a whole number from 1 to 5,000',
    );
    expect(words(Number.NaN, lengthM, us)).toContain('Length cannot be read as a number.');
  });

  it('names both fields when one bounds the other', () => {
    const min = [-5, 0, 140 / 9];
    const max = [5, 5, 5];
    const labels: Record<string, string> = {
      'monthlyMinC.2': 'March low',
      'monthlyMaxC.2': 'March high',
      usedL: 'Already taken',
      liters: 'Capacity',
    };
    const said = [
      ...problemsOfMonths(min, max),
      ...problemsOfRow(freezerFields, { kind: 'freezer', name: 'A', liters: 200, usedL: 300 }),
    ];
    expect(
      said.map((p) =>
        describeForForm(
          p,
          { labelOf: (field) => labels[field], unitOf: (field) => unitAt(freezerFields, field) },
          us,
        ),
      ),
    ).toEqual([
      'March low 60 °F is above March high 41 °F. A month’s average low cannot be above its average high.',
      'Already taken 10.5944 ft³ is above Capacity 7.0629 ft³. No more can be taken than the freezer holds: correct one of the two.',
    ]);
  });

  it.each([
    ['', 'is empty'],
    [' ', 'is empty'],
    [undefined, 'is missing'],
  ] as const)('asks for a name in so many words: %p', (name, wrong) => {
    const [problem] = problemsOfRow(jobFields, { name }).filter(({ field }) => field === 'name');
    expect(describeForForm(problem!, { labelOf: () => 'Name' }, us)).toBe(
      `Name ${wrong}. Give it a name.`,
    );
  });

  it('writes dates by name', () => {
    const problem = {
      field: 'arrivalDate',
      code: 'out-of-bounds',
      given: '2031-01-01',
      max: '2029-11-29',
      fix: 'Plan within three years of today.',
    } as const;
    expect(describeForForm(problem, { labelOf: () => 'Arrival' }, us)).toBe(
      'Arrival is Wed, Jan 1, 2031, but must be no later than Thu, Nov 29, 2029. Plan within three years of today.',
    );
  });
});

describe('describeProblem', () => {
  it('names the path for whoever sent the field', () => {
    const [problem] = problemsOfNumber('batch.wantedBirds', 2.5, wantedBirds.bounds);
    expect(describeProblem(problem!)).toContain(
      'batch.wantedBirds is 2.5, but must be from 1 to 5000, without decimals.',
    );
  });

  it('gives values and bounds in the unit they are stored in', () => {
    const [area] = problemsOfNumber('areaM2', 5, paddockFields.fields.areaM2.bounds);
    expect(area).toMatchObject({ given: 5, min: 50, unit: 'm2' });
    expect(describeProblem(area!)).toContain(
      'areaM2 is 5 m², but must be from 50 to 10000000 m². Give the grazed area',
    );
    const [share] = problemsOfNumber('dressingShare', 74, dressingShare.bounds);
    expect(describeProblem(share!)).toContain(
      'dressingShare is 74, but must be from 0.4 to 0.9, where 1 is all of it. Give the dressed',
    );
    const [room] = problemsOfNumber('liters', 0, liters.bounds);
    expect(describeProblem(room!)).toContain('liters is 0 L, but must be from 1 to 20000 L.');
  });
});
