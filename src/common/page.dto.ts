import { whole } from '../../shared/farm/bounds.js';
import { number, optional, row } from '../../shared/farm/field.js';
import { dtoOf } from './dto-of.js';
import { numbersIn } from './numbers-in.js';

/** Which part of a long list is asked for. */
export const pageFields = {
  skip: optional(
    number('Skip', whole(0, 1e7, 'count', 'Give how many to leave out at the start.')),
  ),
  take: optional(number('Take', whole(1, 1000, 'count', 'Give how many are wanted at once.'))),
} as const;

export class PageDto extends dtoOf(row('Page', pageFields)) {}

/** A query with its numbers read. */
export const withNumbers = (query: Readonly<Record<string, unknown>>): object =>
  numbersIn(query, PAGE_FIELDS);

const PAGE_FIELDS = ['skip', 'take'];
