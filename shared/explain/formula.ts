/** How well a value or a formula is supported. */
export type Mark =
  'published' | 'second-hand' | 'from-memory' | 'common-practice' | 'computed' | 'estimate';

export const MARK_MEANING: Record<Mark, string> = {
  published: 'Read in the named source.',
  'second-hand': 'Read in a copy, quotation, blog or forum post.',
  'from-memory': 'Remembered from a known publication, not seen again. Check before relying on it.',
  'common-practice': 'A habit of the trade; common practice, no source.',
  computed: 'Worked out by the formula given, from the inputs shown.',
  estimate: 'A planning guess that you are meant to change.',
};

/** From the best supported to the least: the weakest link decides the mark of a result. */
const STRENGTH: readonly Mark[] = [
  'published',
  'computed',
  'second-hand',
  'common-practice',
  'from-memory',
  'estimate',
];

export function weakestMark(...marks: readonly Mark[]): Mark {
  return marks.reduce((a, b) => (STRENGTH.indexOf(a) < STRENGTH.indexOf(b) ? b : a), 'published');
}

/** A formula in words and in symbols, with where it was published. */
export interface Formula {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly symbols: string;
  readonly sources: readonly string[];
  readonly mark: Mark;
}
