import type { PlainDate } from '../calendar/plain-date.js';
import type { RowWasChanged } from './told-fact.js';
import type { Treatment } from './treated.js';

/** A named cow that came from one herd into another. */
interface Moved {
  readonly cowId: string;
  readonly on: PlainDate;
  readonly from: string;
  readonly to: string;
}

/**
 * Medicines with those of named cows that have left the treated herd since: what was given to all of
 * it, or to some that nobody named, goes along with each of them.
 *
 * @param changes of rows in the order of their telling
 */
export function withThoseMoved(
  treatments: readonly Treatment[],
  changes: readonly RowWasChanged[],
): Treatment[] {
  const moves = changes.flatMap(movesOf);
  const ids = [...new Set(moves.map(({ cowId }) => cowId))];
  return treatments.flatMap((treatment) => {
    if (treatment.cowId !== undefined) return [treatment];
    const gone = ids.flatMap((cowId): Treatment[] => {
      const own = moves.filter((move) => move.cowId === cowId);
      const now = own.at(-1)!.to;
      if (!wereIn(own, treatment.date).includes(treatment.about) || now === treatment.about)
        return [];
      const { id = treatment.date } = treatment;
      return [{ ...treatment, id: `${id}/${cowId}`, about: now, cowId, wentAlong: true }];
    });
    return [treatment, ...gone];
  });
}

/** Herds a cow was in on a day: both of them on a day on which she changed over. */
function wereIn(own: readonly Moved[], day: PlainDate): string[] {
  const ofDay = own.filter(({ on }) => on === day);
  const before = own.findLast(({ on }) => on < day)?.to;
  const after = own.find(({ on }) => day < on)?.from;
  return [...ofDay.flatMap(({ from, to }) => [from, to]), ...[before ?? after ?? []].flat()];
}

const movesOf = ({ about: cowId, on, details: { of, fields = [] } }: RowWasChanged): Moved[] =>
  of !== 'cow'
    ? []
    : fields.flatMap(({ field, before, after }) =>
        field === 'herdId' && typeof before === 'string' && typeof after === 'string'
          ? [{ cowId, on, from: before, to: after }]
          : [],
      );
