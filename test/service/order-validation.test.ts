import { expect } from '@jest/globals';
import { LEFT_OUT, type BadValue } from '../support/bad-values.js';
import { exampleOrder } from '../support/orders.js';
import { describeRefusals } from '../support/refusals.js';

const NOT_A_NUMBER = { code: 'not-a-number' } as const;
const NOT_A_DATE = { code: 'not-a-date' } as const;
const bounds = (min: number, max: number) => ({ code: 'out-of-bounds', min, max }) as const;
const { today: _today, ...undated } = exampleOrder();

const BAD: readonly BadValue[] = [
  ['no farm', 'farm', LEFT_OUT, { code: 'missing' }],
  ['a farm that is null', 'farm', null, { code: 'missing' }],
  ['a farm that is text', 'farm', 'Thistledown', { code: 'not-allowed' }],
  ['a farm that is an empty list', 'farm', [], { field: expect.stringMatching(/^farm/) }],
  ['a farm in a list', 'farm', [undated.farm], { field: expect.stringMatching(/^farm/) }],
  ['a farm without a name', 'farm.name', LEFT_OUT, { code: 'missing' }],
  ['a farm of 500 °C', 'farm.monthlyMaxC', Array(12).fill(500), bounds(-60, 60)],
  [
    'a January whose low is above its high',
    'farm.monthlyMinC.0',
    5,
    { code: 'out-of-bounds', max: -1.5, unit: 'degC' },
  ],
  ['a farm with an id of its own', 'farm.id', 'x', { code: 'not-allowed' }],
  ['a farm id that is null', 'farmId', null, {}],
  ['a farm id that is a number', 'farmId', 5, { code: 'not-allowed' }],
  ['a farm id with a quote', 'farmId', "' OR 1=1", { code: 'not-allowed' }],
  ['no batch', 'batch', LEFT_OUT, {}],
  ['a batch that is null', 'batch', null, {}],
  ['a batch that is a number', 'batch', 75, { code: 'not-allowed' }],
  ['a batch that is an empty list', 'batch', [], { field: expect.stringMatching(/^batch/) }],
  ['a batch in a list', 'batch', [undated.batch], { field: expect.stringMatching(/^batch/) }],
  ['negative birds', 'batch.wantedBirds', -75, bounds(1, 5000)],
  ['a million birds', 'batch.wantedBirds', 1000000, bounds(1, 5000)],
  ['arrival on 30 February', 'batch.arrivalDate', '2027-02-30', NOT_A_DATE],
  [
    'arrival before the order',
    'batch.orderDate',
    '2027-04-22',
    {
      field: 'batch.arrivalDate',
      given: '2027-04-21',
      code: 'out-of-bounds',
      min: '2027-04-22',
    },
  ],
  ['an unknown strain', 'batch.strainId', 'dodo', { code: 'not-allowed' }],
  ['an unknown brooder', 'batch.brooderId', 'none', { allowed: ['shed-brooder'] }],
  ['a brooder named as a pen', 'batch.penId', 'shed-brooder', { allowed: ['field-pens'] }],
  ['a price as 1e5', 'batch.prices.perBird', '1e5', NOT_A_NUMBER],
  ['a price that is a number', 'batch.prices.perBird', 3.1, NOT_A_NUMBER],
  ['facilities that are text', 'facilities', 'none', {}],
  ['a facility that is null', 'facilities.1', null, { field: 'facilities.1.kind' }],
  ['a facility that is a list', 'facilities.1', [], { field: 'facilities.1.kind' }],
  ['a facility of an unknown kind', 'facilities.1.kind', 'barn', { code: 'not-allowed' }],
  ['a facility without an id', 'facilities.1.id', LEFT_OUT, { code: 'missing' }],
  ['a pen of 0 m²', 'facilities.2.floorM2', 0, bounds(0.1, 10000)],
  ['a wall of an unknown material', 'facilities.0.walls.layers.0.materialId', 'straw-hat', {}],
  ['a wall of 0 mm', 'facilities.0.walls.layers.0.thicknessMm', 0, bounds(0.1, 1000)],
  ['heat that is an empty list', 'facilities.0.heat', [], { code: 'not-allowed' }],
  [
    'two facilities of one id',
    'facilities',
    [...undated.facilities, undated.facilities[0]],
    { field: expect.stringMatching(/^facilities\.6/) },
  ],
  ['201 facilities', 'facilities', Array(201).fill(undated.facilities[1]), {}],
  ['people that are an object', 'people', {}, {}],
  ['a person that is null', 'people.0', null, {}],
  [
    'a person that is an empty list',
    'people.0',
    [],
    { field: expect.stringMatching(/^people\.0/) },
  ],
  [
    'an absence that ends before it begins',
    'people.0.away.0.to',
    '2027-05-01',
    { code: 'out-of-bounds', min: '2027-05-10' },
  ],
  ['today on 31 November', 'today', '2026-11-31', NOT_A_DATE],
  ['a previous arrival on 30 February', 'previousArrivalDate', '2027-02-30', NOT_A_DATE],
  ['a field it does not know', 'farms', [], { code: 'not-allowed' }],
];

const order = () => exampleOrder();

describeRefusals({
  what: 'a previewed order',
  path: () => '/api/plans/preview',
  valid: order,
  bad: BAD,
});

describeRefusals({
  what: 'a search for an arrival',
  path: () => '/api/plans/arrivals',
  valid: () => ({ ...order(), from: '2027-03-01', to: '2027-09-30', weekday: 3 }),
  bad: [
    ['no first day', 'from', LEFT_OUT, { code: 'missing' }],
    ['a first day that is no date', 'from', 'spring', NOT_A_DATE],
    ['a last day on 31 September', 'to', '2027-09-31', NOT_A_DATE],
    [
      'a last day before the first',
      'to',
      '2027-02-28',
      { code: 'out-of-bounds', min: '2027-03-01' },
    ],
    [
      'a span of more than two years',
      'to',
      '2029-03-03',
      { code: 'out-of-bounds', min: '2027-03-01', max: '2029-03-02' }, // 732 days
    ],
    ['weekday 0', 'weekday', 0, bounds(1, 7)],
    ['weekday 8', 'weekday', 8, bounds(1, 7)],
    ['a weekday by name', 'weekday', 'Wednesday', NOT_A_NUMBER],
    ['an unknown strain', 'batch.strainId', 'dodo', { code: 'not-allowed' }],
    ['a batch that is an empty list', 'batch', [], { field: expect.stringMatching(/^batch/) }],
    ['a field it does not know', 'until', '2027-09-30', { code: 'not-allowed' }],
  ],
});
