/** How well a value or a formula is supported. */
export type Mark =
  | 'own-record'
  | 'published'
  | 'second-hand'
  | 'from-memory'
  | 'common-practice'
  | 'computed'
  | 'estimate'
  | 'assumed';

/** From the best supported for this farm to the least. */
export const MARK_MEANING: Record<Mark, string> = {
  'own-record': 'Measured, counted, logged or set by you on this farm.',
  published: 'Read in the named source.',
  computed: 'Worked out by the formula given, from the inputs shown.',
  'second-hand': 'Read in a copy, quotation, blog or forum post.',
  'common-practice': 'A habit of the trade; common practice, no source.',
  'from-memory': 'Remembered from a known publication, not seen again. Check before relying on it.',
  estimate: 'A planning guess that you are meant to change.',
  assumed: 'Nobody has told: the program’s own default stands in. Put in what is so on your farm.',
};

/** Place of each mark from the best supported to the least. */
const PLACE = Object.fromEntries(
  Object.keys(MARK_MEANING).map((mark, place) => [mark, place]),
) as Record<Mark, number>;

const STRONGEST: Mark = 'own-record';

/** Whether a mark is less well supported than another. */
export const isWeaker = (mark: Mark, than: Mark): boolean => PLACE[than] < PLACE[mark];

/** The weakest link decides the mark of a result; of nothing at all it is the strongest. */
export function weakestMark(...marks: readonly Mark[]): Mark {
  let weakest = STRONGEST;
  for (const mark of marks) if (isWeaker(mark, weakest)) weakest = mark;
  return weakest;
}

/** Where a value comes from and how well it is supported. Every table row carries both. */
export interface Sourced {
  readonly sources: readonly string[];
  readonly mark: Mark;
}

/** Stands in where nobody told and no publication helps. */
export const OWN_DEFAULT: Sourced = { sources: ['OWN_DEFAULT'], mark: 'assumed' };

/**
 * Mark of a mean of the farm's own records and a figure they are drawn toward: that of the
 * heavier of the two.
 *
 * @param own how many records there are
 * @param prior what they are drawn toward, and how many records it counts for
 */
export const markOfBlend = (own: number, prior: { weight: number; mark: Mark }): Mark =>
  prior.weight <= own ? STRONGEST : prior.mark;

/** A formula in words and in symbols, with where it was published. */
export interface Formula {
  readonly id: string;
  readonly title: string;
  readonly words: string;
  readonly symbols: string;
  readonly sources: readonly string[];
  /** How well the formula itself is supported; what it is fed with carries marks of its own. */
  readonly mark: Mark;
}
