import { LEFT_OUT, type BadValue } from '../support/bad-values.js';
import { newFarm } from '../support/factories.js';
import { describeRefusals } from '../support/refusals.js';

const YEAR = newFarm().monthlyMaxC;
const NOT_A_NUMBER = { code: 'not-a-number' } as const;
const NOT_A_DATE = { code: 'not-a-date' } as const;
const CHARACTERS = { code: 'out-of-bounds', min: 1, max: 80 } as const;
const TWELVE = { code: 'out-of-bounds', min: 12, max: 12, unit: 'numbers' } as const;
const holiday = (given: string) => ({ ...NOT_A_DATE, field: 'noDeliveryDates.0', given });
const AIR = { code: 'out-of-bounds', min: -60, max: 60, unit: 'degC' } as const;

const BAD: readonly BadValue[] = [
  ['no name', 'name', LEFT_OUT, { code: 'missing' }],
  ['a name that is null', 'name', null, { code: 'missing' }],
  ['an empty name', 'name', '', CHARACTERS],
  ['a name of blanks', 'name', '   ', CHARACTERS],
  ['a name of 81 characters', 'name', 'x'.repeat(81), CHARACTERS],
  ['a name that is a number', 'name', 7, CHARACTERS],
  ['a name that is a list', 'name', ['Farm'], CHARACTERS],
  ['a name with a zero byte, which PostgreSQL cannot keep', 'name', 'Farm\u0000', {}],
  ['a latitude past the pole', 'latitudeDeg', 90.1, { code: 'out-of-bounds', min: -90, max: 90 }],
  ['a latitude as text', 'latitudeDeg', '42.9', NOT_A_NUMBER],
  ['a latitude of NaN as text', 'latitudeDeg', 'NaN', NOT_A_NUMBER],
  ['a latitude that is true', 'latitudeDeg', true, NOT_A_NUMBER],
  ['a latitude that is null', 'latitudeDeg', null, { code: 'missing' }],
  ['no longitude', 'longitudeDeg', LEFT_OUT, { code: 'missing' }],
  [
    'a longitude past the date line',
    'longitudeDeg',
    -180.5,
    { code: 'out-of-bounds', min: -180, max: 180 },
  ],
  [
    'a height above every farm',
    'elevationM',
    9000,
    { code: 'out-of-bounds', min: -430, max: 6000 },
  ],
  ['an unknown time zone', 'timeZone', 'America/Nowhere', { code: 'not-allowed' }],
  ['an empty time zone', 'timeZone', '', { code: 'not-allowed' }],
  ['the time zone of whatever machine it runs on', 'timeZone', 'local', { code: 'not-allowed' }],
  ['unknown units', 'units', 'imperial', { code: 'not-allowed', allowed: ['metric', 'us'] }],
  ['units that are a number', 'units', 1, { code: 'not-allowed', allowed: ['metric', 'us'] }],
  ['a currency in small letters', 'currency', 'usd', { code: 'not-allowed' }],
  ['an unknown currency', 'currency', 'ABC', { code: 'not-allowed' }],
  ['a price that is a number', 'electricityPricePerKWh', 0.19, NOT_A_NUMBER],
  ['a price as 1e5', 'electricityPricePerKWh', '1e5', NOT_A_NUMBER],
  ['a negative price', 'gasPricePerL', '-3', NOT_A_NUMBER],
  ['a price with a comma', 'gasPricePerL', '0,80', NOT_A_NUMBER],
  ['a price with its currency', 'gasPricePerL', '$0.80', NOT_A_NUMBER],
  ['an empty price', 'gasPricePerL', '', NOT_A_NUMBER],
  ['a price of seven decimals', 'gasPricePerL', '0.1234567', NOT_A_NUMBER],
  ['a month of 500 °C', 'monthlyMaxC.0', 500, AIR],
  ['a month of −61 °C', 'monthlyMinC.11', -61, AIR],
  ['eleven months', 'monthlyMaxC', YEAR.slice(1), { ...TWELVE, given: 11 }],
  ['thirteen months', 'monthlyMaxC', [...YEAR, 0], { ...TWELVE, given: 13 }],
  ['a month as text', 'monthlyMaxC.0', '-1.5', NOT_A_NUMBER],
  ['a month that is null', 'monthlyMaxC.0', null, { code: 'missing' }],
  ['no months', 'monthlyMinC', LEFT_OUT, { code: 'missing' }],
  [
    'a July whose low is above its high',
    'monthlyMinC',
    newFarm().monthlyMinC.map((c, month) => (month === 6 ? 27 : c)),
    { field: 'monthlyMinC.6', code: 'out-of-bounds', given: 27, max: 26.1, unit: 'degC' },
  ],
  ['a frost on 30 February', 'lastFrost', '02-30', NOT_A_DATE],
  ['a frost in month 13', 'firstFrost', '13-01', NOT_A_DATE],
  ['a frost without its zero', 'lastFrost', '5-20', NOT_A_DATE],
  ['a frost with its year', 'lastFrost', '2027-05-20', NOT_A_DATE],
  ['a frost that is a number', 'firstFrost', 928, NOT_A_DATE],
  ['a holiday on 30 February', 'noDeliveryDates', ['2027-02-30'], holiday('2027-02-30')],
  ['a holiday on 29 February 2027', 'noDeliveryDates', ['2027-02-29'], holiday('2027-02-29')],
  [
    '201 holidays',
    'noDeliveryDates',
    Array(201).fill('2027-05-31'),
    { code: 'out-of-bounds', given: 201, max: 200, unit: 'dates' },
  ],
  ['holidays as text', 'noDeliveryDates', '2027-05-31', { code: 'not-allowed' }],
  ['a field it does not know', 'color', 'red', { code: 'not-allowed' }],
  ['an id of the client', 'id', 'my-farm', { code: 'not-allowed' }],
  ['a revision of the client', 'revision', 99, { code: 'not-allowed' }],
  [
    'leave to fetch weather, which has its own address',
    'weatherFetch',
    true,
    { code: 'not-allowed' },
  ],
];

describeRefusals({
  what: 'a new farm',
  path: () => '/api/farms',
  valid: () => newFarm(),
  bad: BAD,
});

describeRefusals({
  what: 'a change of a farm',
  verb: 'put',
  path: (farm) => farm.path,
  valid: () => newFarm(),
  bad: BAD,
});
