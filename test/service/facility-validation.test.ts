import { expect } from '@jest/globals';
import { anyFacility } from '../../shared/farm/facility.js';
import { LEFT_OUT, type BadValue } from '../support/bad-values.js';
import { brooderBody } from '../support/orders.js';
import { describeRefusals, type Place } from '../support/refusals.js';

const NOT_A_NUMBER = { code: 'not-a-number' } as const;
const bounds = (min: number, max: number) => ({ code: 'out-of-bounds', min, max }) as const;
const KINDS = { code: 'not-allowed', allowed: Object.keys(anyFacility.rows) } as const;

const facilities = (what: string, valid: () => object, bad: readonly BadValue[]): Place => ({
  what,
  path: (farm) => `${farm.path}/facilities`,
  valid,
  bad,
});

/** A name that every object answers to is refused where it stands. */
const OF_EVERY = (field: string) => ({ field, given: 1, code: 'not-allowed' });

describeRefusals(
  facilities('a new brooder', brooderBody, [
    ['an unknown kind', 'kind', 'barn', KINDS],
    ['no kind', 'kind', LEFT_OUT, KINDS],
    ['a kind that is null', 'kind', null, KINDS],
    ['a kind that is a number', 'kind', 3, KINDS],
    ['a kind that is a list', 'kind', ['brooder'], { code: 'not-allowed' }],
    ['a kind that every object has', 'kind', 'constructor', KINDS],
    ['a kind that cannot be made text', 'kind', { toString: 1 }, OF_EVERY('kind.toString')],
    ['a length that is an object', 'lengthM', { m: 3 }, NOT_A_NUMBER],
    [
      'a length with a field of the language',
      'lengthM',
      { constructor: 1 },
      OF_EVERY('lengthM.constructor'),
    ],
    ['no name', 'name', LEFT_OUT, { code: 'missing' }],
    ['a name of blanks', 'name', '  ', bounds(1, 80)],
    ['a name with a zero byte', 'name', 'Brooder\u0000', {}],
    ['a length of 0 m', 'lengthM', 0, bounds(0.2, 60)],
    ['a negative width', 'widthM', -2, bounds(0.2, 60)],
    ['a height of 100 m', 'heightM', 100, bounds(0.2, 6)],
    ['a length as text', 'lengthM', '3', NOT_A_NUMBER],
    ['a length of NaN as text', 'lengthM', 'NaN', NOT_A_NUMBER],
    ['no walls', 'walls', LEFT_OUT, {}],
    ['walls that are null', 'walls', null, {}],
    ['walls that are text', 'walls', 'plywood', { code: 'not-allowed' }],
    ['walls that are an empty list', 'walls', [], { code: 'not-allowed' }],
    ['walls that are a list', 'walls', [{ rM2KPerW: 1 }], { code: 'not-allowed' }],
    ['layers that are not a list', 'walls.layers', 'plywood', {}],
    ['a layer that is null', 'walls.layers.0', null, {}],
    [
      'a layer that is a list',
      'walls.layers.0',
      [],
      { field: expect.stringMatching(/^walls\.layers\.0/) },
    ],
    [
      'an unknown material',
      'walls.layers.0.materialId',
      'gingerbread',
      { code: 'not-allowed', allowed: expect.arrayContaining(['plywood', 'xps']) },
    ],
    ['a layer of 0 mm', 'roof.layers.0.thicknessMm', 0, bounds(0.1, 1000)],
    ['a negative R-value', 'walls.rM2KPerW', -1, bounds(0, 20)],
    ['13 layers', 'walls.layers', Array(13).fill({ materialId: 'plywood', thicknessMm: 12 }), {}],
    ['a wall with a field it does not know', 'walls.color', 'red', { code: 'not-allowed' }],
    [
      'a place it does not know',
      'standsIn',
      'garage',
      { code: 'not-allowed', allowed: ['outdoors', 'unheated-building', 'heated-room'] },
    ],
    [
      'a heated room without its air',
      'standsIn',
      'heated-room',
      { field: 'roomC', code: 'missing', given: null },
    ],
    ['a room of 500 °C', 'roomC', 500, bounds(0, 35)],
    ['no heat', 'heat', LEFT_OUT, {}],
    ['heat that is an empty list', 'heat', [], { code: 'not-allowed' }],
    ['heat that is a number', 'heat', 250, { code: 'not-allowed' }],
    [
      'an unknown heater',
      'heat.kind',
      'candle',
      { code: 'not-allowed', allowed: ['lamp', 'plate', 'gas'] },
    ],
    ['half a lamp', 'heat.count', 0.5, bounds(0, 100)],
    ['a lamp of 0 W', 'heat.wattsEach', 0, bounds(1, 60000)],
    ['a thermostat as text', 'heat.thermostat', 'true', { code: 'not-allowed' }],
    ['a feeder of negative length', 'feederCm', -1, bounds(0, 100000)],
    ['a circuit id with a slash', 'circuitId', 'a/b', { code: 'not-allowed' }],
    ['a field of another kind', 'liters', 400, { code: 'not-allowed' }],
  ]),
);

describeRefusals(
  facilities(
    'a new heated-room brooder',
    () => ({ ...brooderBody(), standsIn: 'heated-room', roomC: 18 }),
    [['a room whose air is null', 'roomC', null, {}]],
  ),
);

describeRefusals(
  facilities(
    'a new coop',
    () => ({ kind: 'coop', name: 'Coop', floorM2: 6, roostM: 5, nestBoxes: 4, runM2: 40 }),
    [
      ['a floor of 0 m²', 'floorM2', 0, bounds(0.1, 10000)],
      ['a floor of 1e400 m² as text', 'floorM2', '1e400', NOT_A_NUMBER],
      ['a negative roost', 'roostM', -0.5, bounds(0, 1000)],
      ['two and a half nest boxes', 'nestBoxes', 2.5, bounds(0, 1000)],
      ['no run', 'runM2', LEFT_OUT, { code: 'missing' }],
    ],
  ),
);

describeRefusals(
  facilities('a new field pen', () => ({ kind: 'field-pen', name: 'Pen', floorM2: 11, count: 2 }), [
    ['a floor of 0 m²', 'floorM2', 0, bounds(0.1, 10000)],
    ['no pens at all', 'count', 0, bounds(1, 500)],
    ['a count as text', 'count', '2', NOT_A_NUMBER],
  ]),
);

describeRefusals(
  facilities(
    'a new freezer',
    () => ({ kind: 'freezer', name: 'Freezer', liters: 400, usedL: 50 }),
    [
      ['a freezer of 0 L', 'liters', 0, bounds(1, 20000)],
      ['negative liters in use', 'usedL', -1, bounds(0, 20000)],
      ['liters that are null', 'usedL', null, { code: 'missing' }],
      [
        'more taken than it holds',
        'usedL',
        401,
        { code: 'out-of-bounds', max: 400, boundBy: 'liters' },
      ],
    ],
  ),
);

describeRefusals(
  facilities('a new feed store', () => ({ kind: 'feed-store', name: 'Room', capacityKg: 500 }), [
    ['no room', 'capacityKg', 0, bounds(1, 1000000)],
    ['room for more than a mill', 'capacityKg', 1000001, bounds(1, 1000000)],
  ]),
);

describeRefusals(
  facilities(
    'a new circuit',
    () => ({ kind: 'circuit', name: 'Circuit', volts: 230, amps: 16, otherLoadW: 0 }),
    [
      ['1 V', 'volts', 1, bounds(6, 480)],
      ['0 A', 'amps', 0, bounds(1, 200)],
      ['a negative load', 'otherLoadW', -60, bounds(0, 100000)],
    ],
  ),
);
