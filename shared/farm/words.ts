import { isPlainDate, isTimeZone } from '../calendar/plain-date.js';
import { isPrice } from '../money/money.js';
import { whole } from './bounds.js';
import { list, number, optional, text, word, type WordForm } from './field.js';

const CURRENCIES = new Set(Intl.supportedValuesOf('currency'));
const ID = /^[A-Za-z0-9-]{1,64}$/;
const WORK_KEY = /^[A-Za-z0-9/.-]{1,200}$/;

const DATE: WordForm = {
  name: 'date',
  holds: isPlainDate,
  wrong: {
    code: 'not-a-date',
    fix: 'Write year-month-day, such as 2027-04-21, between 1900 and 2199.',
  },
  schema: { format: 'date', example: '2027-04-21' },
};
const MONTH_DAY: WordForm = {
  name: 'month-day',
  holds: (value) => typeof value === 'string' && isPlainDate(`2024-${value}`),
  wrong: { code: 'not-a-date', fix: 'Write month-day, such as 05-20.' },
  schema: { pattern: '^\\d\\d-\\d\\d$', example: '05-20' },
};
const INSTANT: WordForm = {
  name: 'instant',
  holds: (value) =>
    typeof value === 'string' &&
    /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/.test(value) &&
    !Number.isNaN(Date.parse(value)),
  wrong: {
    code: 'not-a-date',
    fix: 'Write an instant in UTC to the thousandth, such as 2027-04-21T10:05:00.000Z.',
  },
  schema: { format: 'date-time', example: '2027-04-21T10:05:00.000Z' },
};
const ID_FORM: WordForm = {
  name: 'id',
  holds: (value) => typeof value === 'string' && ID.test(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['letters, digits and dashes, 1 to 64'],
    fix: 'Use the id as the service gave it.',
  },
  schema: { pattern: ID.source, example: 'shed-brooder' },
};
const WORK_KEY_FORM: WordForm = {
  name: 'work-key',
  holds: (value) => typeof value === 'string' && WORK_KEY.test(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['letters, digits, dots, dashes and slashes, 1 to 200'],
    fix: 'Use the key as the plan of work gave it.',
  },
  schema: { pattern: WORK_KEY.source, example: 'batch/spring/clean' },
};
const PRICE: WordForm = {
  name: 'price',
  holds: isPrice,
  wrong: {
    code: 'not-a-number',
    fix: 'Write a price as decimal text, such as "24.50", without a sign or currency.',
  },
  schema: { pattern: '^\\d{1,9}(\\.\\d{1,6})?$', example: '24.50' },
};
const TIME_ZONE: WordForm = {
  name: 'time-zone',
  holds: isTimeZone,
  wrong: {
    code: 'not-allowed',
    allowed: ['an IANA time zone'],
    fix: 'Write it as in "America/New_York".',
  },
  schema: { example: 'America/New_York' },
};
const CURRENCY: WordForm = {
  name: 'currency',
  holds: (value) => typeof value === 'string' && CURRENCIES.has(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['an ISO 4217 code'],
    fix: 'Write three letters, such as USD, EUR or GBP.',
  },
  schema: { pattern: '^[A-Z]{3}$', example: 'USD' },
};

const COUNTRY: WordForm = {
  name: 'country',
  holds: (value) => typeof value === 'string' && /^[A-Z]{2}$/.test(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['an ISO 3166 code'],
    fix: 'Write two letters, such as US, CA, GB or DE.',
  },
  schema: { pattern: '^[A-Z]{2}$', example: 'US' },
};
const REGION: WordForm = {
  name: 'region',
  holds: (value) => typeof value === 'string' && /^[A-Za-z0-9-]{1,8}$/.test(value),
  wrong: {
    code: 'not-allowed',
    allowed: ['the code of a state, province or county'],
    fix: 'Write its code, such as VT, or leave it out.',
  },
  schema: { pattern: '^[A-Za-z0-9-]{1,8}$', example: 'VT' },
};

/** A calendar date, year-month-day. */
export const date = (label: string) => word(label, DATE);
/** An instant in UTC, as the service tells the time. */
export const instant = (label: string) => word(label, INSTANT);
/** A month and day, in no particular year. */
export const monthDay = (label: string) => word(label, MONTH_DAY);
/** Whoever did a piece of work, by name: “Anna and Ben”. */
export const doneBy = () => text('Who did it', MOST_OF_NAMES);
/** Letters of all their names. */
export const MOST_OF_NAMES = 160;
/** The id of a row, its own or another's. */
export const id = (label = 'Id') => word(label, ID_FORM);
/** How often a row was changed; a change says which one it was made from. */
export const version = () =>
  number('Version', whole(1, 1e9, 'count', 'Send the version as it came with the row.'));
/** What every row has that is kept by itself; a client may leave it out, or say what it saw last. */
export const OWN = {
  id: optional(id()),
  version: optional(version()),
} as const;
/** What nobody said of a row: the paths of those of its fields that the program filled in. */
export const ASSUMED = {
  assumed: optional(list('Assumed', text('Field', 100), 100, 'fields')),
} as const;

/** What names a piece of work: what it belongs to, that one's id, and its own. */
export const workKey = (label: string) => word(label, WORK_KEY_FORM);
/** Decimal text in the farm's currency, never a float. */
export const price = (label: string) => word(label, PRICE);
export const timeZone = (label: string) => word(label, TIME_ZONE);
/** ISO 3166 code. */
export const country = (label: string) => word(label, COUNTRY);
/** Code of a state, province or county of a country. */
export const region = (label: string) => word(label, REGION);
/** ISO 4217 code. */
export const currency = (label: string) => word(label, CURRENCY);
