import { applyDecorators } from '@nestjs/common';
import { ApiProperty } from '@nestjs/swagger';
import { Type } from 'class-transformer';
import { ValidateBy, ValidateIf, ValidateNested, type ValidationArguments } from 'class-validator';
import { isPlainDate, isTimeZone } from '../../shared/calendar/plain-date.js';
import { BOUNDS, type BoundName, type Bounds } from '../../shared/farm/bounds.js';
import { isPrice } from '../../shared/money/money.js';
import { describeProblem, type FieldProblem } from '../../shared/problems/field-problem.js';

/** What a rule knows of a problem before the path and the value are known. */
export type ProblemPart = Omit<FieldProblem, 'field' | 'given'>;

/**
 * A class-validator rule that carries its problem as data: the error filter fills in the path and
 * the value, and wording stays in one place.
 */
function rule(
  name: string,
  isValid: (value: unknown) => boolean,
  part: ProblemPart,
): PropertyDecorator {
  return ValidateBy(
    {
      name,
      validator: {
        validate: isValid,
        defaultMessage: (args?: ValidationArguments) =>
          describeProblem({ field: args?.property ?? '', given: args?.value, ...part }),
      },
    },
    { context: part },
  );
}

/** A field that may be left out. Null is not the same: it is refused, so that nothing is lost in silence. */
export const Optional = (): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ required: false }),
    ValidateIf((_object, value) => value !== undefined),
  );

const isPlainObject = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A list of objects, each checked by its own class. */
export const NestedList = (type: () => new () => object, most: number): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: () => [type()], maxItems: most }),
    rule('nestedList', (v) => Array.isArray(v) && v.length <= most && v.every(isPlainObject), {
      code: 'not-allowed',
      allowed: [`a list of up to ${most} objects`],
      fix: 'Give a list in square brackets, with each entry in braces.',
    }),
    ValidateNested({ each: true }),
    Type(type),
  );

/** A list whose entries are checked where they are used. */
export const AnyList = (most: number): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: 'array', items: {}, maxItems: most }),
    rule('anyList', (v) => Array.isArray(v) && v.length <= most, {
      code: 'not-allowed',
      allowed: [`a list of up to ${most} entries`],
      fix: 'Give a list in square brackets.',
    }),
  );

/** An object that must be there and is checked by its own class. */
export const Nested = (type: () => new () => object): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: () => type() }),
    rule('nested', isPlainObject, {
      code: 'not-allowed',
      allowed: ['an object'],
      fix: 'Give this part as an object in braces.',
    }),
    ValidateNested(),
    Type(type),
  );

/** An object whose fields are checked where it is used. */
export const AnyObject = (): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: Object }),
    rule('anyObject', isPlainObject, {
      code: 'not-allowed',
      allowed: ['an object'],
      fix: 'Give this part as an object in braces.',
    }),
  );

/** A number within named bounds. */
export function Within(name: BoundName): PropertyDecorator {
  const { min, max, unit, fix, integer } = BOUNDS[name] as Bounds;
  return applyDecorators(
    ApiProperty({
      minimum: min,
      maximum: max,
      type: integer ? 'integer' : 'number',
      // How a freezer's room is shown to people does not matter to a client.
      description: `${unit === 'freezerL' ? 'L' : unit}. ${fix}`,
    }),
    rule(
      'within',
      (value) =>
        typeof value === 'number' &&
        Number.isFinite(value) &&
        min <= value &&
        value <= max &&
        (!integer || Number.isInteger(value)),
      { code: 'out-of-bounds', min, max, unit, fix: integer ? `${fix} Whole numbers only.` : fix },
    ),
  );
}

// eslint-disable-next-line no-control-regex -- control characters are what is looked for
const CONTROL = /[\u0000-\u001f\u007f]/;

/** Notes of up to 1,000 characters, line breaks allowed. */
export const LongText = (): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ minLength: 1, maxLength: 1000 }),
    rule(
      'longText',
      (v) =>
        typeof v === 'string' &&
        v.trim().length > 0 &&
        v.length <= 1000 &&
        !CONTROL.test(v.replaceAll(/[\r\n\t]/g, ' ')),
      {
        code: 'out-of-bounds',
        min: 1,
        max: 1000,
        unit: 'characters',
        fix: 'Write 1 to 1,000 characters; leave the field out when there is nothing to say.',
      },
    ),
  );

/** Text of 1 to 80 characters, not only blanks. */
export const ShortText = (
  fix = 'Write 1 to 80 characters, without line breaks or control characters.',
): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ minLength: 1, maxLength: 80 }),
    rule(
      'shortText',
      (v) => typeof v === 'string' && v.trim().length > 0 && v.length <= 80 && !CONTROL.test(v),
      {
        code: 'out-of-bounds',
        min: 1,
        max: 80,
        unit: 'characters',
        fix,
      },
    ),
  );

export const DateOnly = (): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ format: 'date', example: '2027-04-21' }),
    rule('dateOnly', isPlainDate, {
      code: 'not-a-date',
      fix: 'Write year-month-day, such as 2027-04-21, between 1900 and 2199.',
    }),
  );

export const OneOf = (allowed: readonly string[]): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ enum: allowed }),
    rule('oneOf', (v) => typeof v === 'string' && allowed.includes(v), {
      code: 'not-allowed',
      allowed,
      fix: 'Choose one of these.',
    }),
  );

export const PriceText = (): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: String, example: '24.50' }),
    rule('price', isPrice, {
      code: 'not-a-number',
      fix: 'Write a price as decimal text, such as "24.50", without a sign or currency.',
    }),
  );

export const TimeZoneName = (): PropertyDecorator =>
  rule('timeZone', isTimeZone, {
    code: 'not-allowed',
    allowed: ['an IANA time zone'],
    fix: 'Write it as in "America/New_York".',
  });

const currencies = new Set(Intl.supportedValuesOf('currency'));
export const CurrencyCode = (): PropertyDecorator =>
  rule('currency', (v) => typeof v === 'string' && currencies.has(v), {
    code: 'not-allowed',
    allowed: ['an ISO 4217 code'],
    fix: 'Write three letters, such as USD, EUR or GBP.',
  });

export const MonthDay = (): PropertyDecorator =>
  rule('monthDay', (v) => typeof v === 'string' && isPlainDate(`2024-${v}`), {
    code: 'not-a-date',
    fix: 'Write month-day, such as 05-20.',
  });

const isIdText = (value: unknown): boolean =>
  typeof value === 'string' && /^[A-Za-z0-9-]{1,64}$/.test(value);

export const IdText = (): PropertyDecorator =>
  rule('id', isIdText, {
    code: 'not-allowed',
    allowed: ['letters, digits and dashes, 1 to 64'],
    fix: 'Use the id as the service gave it.',
  });

/** A list of ids, as the service gave them. */
export const IdList = (most: number): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: [String], maxItems: most }),
    rule('idList', (v) => Array.isArray(v) && v.length <= most && v.every(isIdText), {
      code: 'not-allowed',
      allowed: [`a list of up to ${most} ids`],
      fix: 'Use the ids as the service gave them.',
    }),
  );

export const YesNo = (): PropertyDecorator =>
  rule('yesNo', (v) => typeof v === 'boolean', {
    code: 'not-allowed',
    allowed: ['true', 'false'],
    fix: 'Write true or false.',
  });

/** What names a piece of work: what it belongs to, that one's id, and its own. */
export const WorkKey = (): PropertyDecorator =>
  rule('workKey', (v) => typeof v === 'string' && /^[A-Za-z0-9/.-]{1,200}$/.test(v), {
    code: 'not-allowed',
    allowed: ['letters, digits, dots, dashes and slashes, 1 to 200'],
    fix: 'Use the key as the plan of work gave it.',
  });

/** Seven numbers within bounds, Monday first. */
export const SevenDays = (name: BoundName): PropertyDecorator =>
  numbersEach(name, 7, 'Give seven numbers, Monday first.');

/** Twelve numbers within bounds, January first. */
export const TwelveMonths = (name: BoundName): PropertyDecorator =>
  numbersEach(name, 12, 'Give twelve monthly means, January first; check °C against °F.');

function numbersEach(name: BoundName, count: number, fix: string): PropertyDecorator {
  const { min, max, unit } = BOUNDS[name];
  return applyDecorators(
    ApiProperty({ type: [Number], minItems: count, maxItems: count }),
    rule(
      'numbersEach',
      (v) =>
        Array.isArray(v) &&
        v.length === count &&
        v.every((each) => typeof each === 'number' && min <= each && each <= max),
      { code: 'out-of-bounds', min, max, unit, fix },
    ),
  );
}

/** A list of plain dates. */
export const DateList = (most: number): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: [String], maxItems: most }),
    rule('dateList', (v) => Array.isArray(v) && v.length <= most && v.every(isPlainDate), {
      code: 'not-a-date',
      fix: `Give up to ${most} dates, each year-month-day.`,
    }),
  );

/** Price text by feed phase. */
export const PriceRecord = (): PropertyDecorator =>
  applyDecorators(
    ApiProperty({ type: Object, example: { starter: '24.50' } }),
    rule(
      'priceRecord',
      (v) =>
        typeof v === 'object' &&
        v !== null &&
        !Array.isArray(v) &&
        Object.keys(v).length <= 12 &&
        Object.values(v).every(isPrice),
      { code: 'not-a-number', fix: 'Give each phase a price as decimal text, such as "24.50".' },
    ),
  );
