import { nested, record, row } from '../farm/field.js';
import { MARK, MAY_BE_EMPTY, maybe, NAME, SOURCES, WORDS } from './figures.js';

export const cautions = record(
  'Cautions',
  nested(
    'Caution',
    row('Caution', {
      title: NAME,
      line: maybe(WORDS),
      text: WORDS,
      sources: maybe(SOURCES),
      mark: maybe(MARK),
    }),
  ),
  100,
);

export const sources = record(
  'Sources',
  nested(
    'Source',
    row('Source', {
      publisher: NAME,
      title: WORDS,
      year: MAY_BE_EMPTY,
      url: MAY_BE_EMPTY,
      mark: MARK,
      note: maybe(WORDS),
    }),
  ),
  1000,
);
