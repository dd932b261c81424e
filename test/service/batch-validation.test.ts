import { expect } from '@jest/globals';
import { LEFT_OUT, type BadValue } from '../support/bad-values.js';
import { batchBody, inDays } from '../support/orders.js';
import { describeRefusals } from '../support/refusals.js';

const NOT_A_NUMBER = { code: 'not-a-number' } as const;
const BAG = { ...NOT_A_NUMBER, field: 'prices.feedPerBag.starter', given: 24.5 };
const NOT_A_DATE = { code: 'not-a-date' } as const;
const bounds = (min: number, max: number) => ({ code: 'out-of-bounds', min, max }) as const;
/** A rule of the core, whose paths may start at the order or at the batch; see batches.test.ts. */
const core = (field: string, code = 'not-allowed') => ({
  field: expect.stringMatching(new RegExp(`^(batch\\.)?${field}$`)),
  code,
});
const oneOf = (...allowed: string[]) => ({ code: 'not-allowed', allowed }) as const;

const BAD: readonly BadValue[] = [
  ['no name', 'name', LEFT_OUT, { code: 'missing' }],
  ['a name with a zero byte', 'name', 'Batch\u0000', {}],
  ['an unknown purpose', 'purpose', 'pets', oneOf('meat', 'layers')],
  [
    'an unknown strain',
    'strainId',
    'dodo',
    { ...core('strainId'), allowed: expect.arrayContaining(['fast-meat', 'heritage']) },
  ],
  ['a strain that is no id', 'strainId', 'fast meat', { code: 'not-allowed' }],
  ['a purpose that the strain is not kept for', 'purpose', 'layers', core('purpose')],
  ['an unknown sex', 'sex', 'hens', oneOf('straight-run', 'cockerels', 'pullets')],
  ['negative birds', 'wantedBirds', -10, bounds(1, 5000)],
  ['no birds', 'wantedBirds', 0, bounds(1, 5000)],
  ['half a bird', 'wantedBirds', 10.5, bounds(1, 5000)],
  ['a million birds', 'wantedBirds', 1000000, bounds(1, 5000)],
  ['birds as text', 'wantedBirds', '100', NOT_A_NUMBER],
  ['birds of NaN as text', 'wantedBirds', 'NaN', NOT_A_NUMBER],
  ['birds that are null', 'wantedBirds', null, { code: 'missing' }],
  ['birds that are an object', 'wantedBirds', { count: 5 }, NOT_A_NUMBER],
  ['birds that are a list', 'wantedBirds', [100], { given: [100] }],
  ['6,001 birds ordered', 'orderedBirds', 6001, bounds(1, 6000)],
  ['arrival on 30 February', 'arrivalDate', '2027-02-30', NOT_A_DATE],
  ['arrival on a day written the other way', 'arrivalDate', '21.04.2027', NOT_A_DATE],
  ['arrival at a time of day', 'arrivalDate', '2027-04-21T00:00:00Z', NOT_A_DATE],
  ['arrival in the year 1', 'arrivalDate', '0001-01-01', NOT_A_DATE],
  ['arrival in a number of seconds', 'arrivalDate', 1808265600, NOT_A_DATE],
  ['no arrival', 'arrivalDate', LEFT_OUT, { code: 'missing' }],
  [
    'arrival before the order',
    'orderDate',
    inDays(121),
    { ...core('arrivalDate', 'out-of-bounds'), given: inDays(120), min: inDays(121) },
  ],
  ['arrival in a far year', 'arrivalDate', '2190-01-01', core('arrivalDate', 'out-of-bounds')],
  ['arrival years ago', 'arrivalDate', '1990-01-01', core('arrivalDate', 'out-of-bounds')],
  [
    'a move out before arrival',
    'moveOutDate',
    inDays(119),
    { ...core('moveOutDate', 'out-of-bounds'), min: inDays(121) },
  ],
  ['four days on the way', 'hatchToArrivalDays', 4, bounds(0, 3)],
  ['a brooder that the farm has not', 'brooderId', 'none', core('brooderId')],
  ['a pen that the farm has not', 'penId', 'none', { ...core('penId'), allowed: [] }],
  ['a brooder id that is an object', 'brooderId', { id: 'x' }, { code: 'not-allowed' }],
  ['a brooder id that is null', 'brooderId', null, { field: expect.stringMatching(/brooderId$/) }],
  ['a growth table of another strain', 'growthTableId', 'none', core('growthTableId')],
  ['an unknown schedule', 'broodingScheduleId', 'none', core('broodingScheduleId')],
  ['an unknown standard', 'spaceStandardId', 'none', core('spaceStandardId')],
  ['an unknown rule', 'moveOutRuleId', 'none', core('moveOutRuleId')],
  ['a weight factor of 5', 'weightFactor', 5, bounds(0.3, 1.6)],
  ['a feed factor of 0', 'feedFactor', 0, bounds(0.5, 2)],
  ['a waste of 51 %', 'wastePercent', 51, bounds(0, 50)],
  ['a loss of 100 %', 'firstWeekLossPercent', 100, bounds(0, 90)],
  ['a negative loss', 'laterLossPercent', -1, bounds(0, 90)],
  ['leaving at 27 days', 'leaveAgeDays', 27, bounds(28, 365)],
  ['a bird of 50 kg', 'targetLiveKg', 50, bounds(0.4, 8)],
  ['unknown processing', 'processing', 'none', oneOf('home', 'hired')],
  ['a dressed share in percent', 'dressingShare', 72, bounds(0.4, 0.9)],
  ['no moves', 'movesPerDay', 0, bounds(0.1, 4)],
  ['61 days of withdrawal', 'medicatedWithdrawalDays', 61, bounds(0, 60)],
  ['a bag of 0 kg', 'bagKg', 0, bounds(1, 1500)],
  ['prices as text', 'prices', '3.10', {}],
  ['prices that are a list', 'prices', ['3.10'], { field: expect.stringMatching(/^prices/) }],
  ['prices that are an empty list', 'prices', [], {}],
  ['a price that is a number', 'prices.perBird', 3.1, NOT_A_NUMBER],
  ['a price as 1e5', 'prices.perBird', '1e5', NOT_A_NUMBER],
  ['a negative price', 'prices.perBird', '-3', NOT_A_NUMBER],
  ['a bag price that is a number', 'prices.feedPerBag', { starter: 24.5 }, BAG],
  ['bag prices that are a list', 'prices.feedPerBag', ['24.50'], {}],
  ['a price it does not know', 'prices.perFeather', '0.30', { code: 'not-allowed' }],
  ['a field it does not know', 'wantedBird', 100, { code: 'not-allowed' }],
];

describeRefusals({
  what: 'a new batch',
  path: (farm) => `${farm.path}/batches`,
  valid: () => batchBody({ prices: {} }),
  bad: BAD,
});

describeRefusals({
  what: 'a new laying batch',
  path: (farm) => `${farm.path}/batches`,
  valid: () => batchBody({ purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' }),
  bad: [['cockerels for laying', 'sex', 'cockerels', core('sex', 'conflict')]],
});
