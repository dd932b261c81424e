import { whole } from '../../shared/farm/bounds.js';
import { number, optional, row } from '../../shared/farm/field.js';
import { dtoOf } from './dto-of.js';

/** Which part of a long list is asked for. */
export const pageFields = {
  skip: optional(
    number('Skip', whole(0, 1e7, 'count', 'Give how many to leave out at the start.')),
  ),
  take: optional(number('Take', whole(1, 1000, 'count', 'Give how many are wanted at once.'))),
} as const;

export class PageDto extends dtoOf(row('Page', pageFields)) {}

/** A query with its numbers read: it comes as text. What is no number is left for the rules. */
export const withNumbers = (query: Readonly<Record<string, unknown>>): object =>
  Object.fromEntries(
    Object.entries(query).map(([name, text]) => [
      name,
      PAGE_FIELDS.includes(name) && typeof text === 'string' && /^\d{1,9}$/.test(text)
        ? Number(text)
        : text,
    ]),
  );

const PAGE_FIELDS = ['skip', 'take'];
