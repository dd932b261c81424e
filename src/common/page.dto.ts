import { Optional, Within } from './field-rules.js';

/** Which part of a long list is asked for. */
export class PageDto {
  @Optional() @Within('skipped') skip?: number;
  @Optional() @Within('pageSize') take?: number;
}

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
