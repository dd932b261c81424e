import { expect } from '@jest/globals';
import { LEFT_OUT, type BadValue } from '../support/bad-values.js';
import { describeRefusals } from '../support/refusals.js';

const NOT_A_DATE = { code: 'not-a-date' } as const;

const BAD: readonly BadValue[] = [
  ['no name', 'name', LEFT_OUT, { code: 'missing' }],
  ['an empty name', 'name', '', { code: 'out-of-bounds', min: 1, max: 80 }],
  ['a name with a zero byte', 'name', 'Adult\u0000', {}],
  ['no absences', 'away', LEFT_OUT, {}],
  ['absences that are null', 'away', null, {}],
  ['absences that are text', 'away', '2027-05-10', {}],
  ['an absence that is null', 'away.0', null, {}],
  ['an absence that is text', 'away.0', '2027-05-10', {}],
  ['an absence that is an empty list', 'away.0', [], { field: expect.stringMatching(/^away\.0/) }],
  ['an absence without its end', 'away.0.to', LEFT_OUT, { code: 'missing' }],
  ['an absence from 30 February', 'away.0.from', '2027-02-30', NOT_A_DATE],
  ['an absence to a time of day', 'away.0.to', '2027-05-14T12:00:00Z', NOT_A_DATE],
  ['an absence to a number', 'away.0.to', 20270514, NOT_A_DATE],
  [
    'an absence that ends before it begins',
    'away.0.to',
    '2027-05-09',
    { code: 'out-of-bounds', min: '2027-05-10' },
  ],
  ['an absence with a field it does not know', 'away.0.why', 'fair', { code: 'not-allowed' }],
  ['201 absences', 'away', Array(201).fill({ from: '2027-05-10', to: '2027-05-14' }), {}],
  ['a field it does not know', 'age', 40, { code: 'not-allowed' }],
];

describeRefusals({
  what: 'a new person',
  path: (farm) => `${farm.path}/people`,
  valid: () => ({ name: 'Adult A', away: [{ from: '2027-05-10', to: '2027-05-14' }] }),
  bad: BAD,
});
