import type { BatchChoice } from '../../farm/batch-choice.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { formatPrice, formatValue, type Reader } from '../../units/format.js';

/** A choice in a few words: “25 birds”, “Two batches, 4 weeks apart”. */
export function labelOf(
  choice: BatchChoice,
  { strains, feedPrograms }: Pick<Tables, 'strains' | 'feedPrograms'>,
  reader: Reader,
): string {
  const nameOf = (rows: readonly { id: string; name: string }[], id: string): string =>
    rows.some((each) => each.id === id) ? rowById(rows, id).name : id;
  const {
    wantedBirds,
    strainId,
    feedProgramId,
    arrivalDate,
    leaveAgeDays,
    twoWeeksApart,
    ownMixPerBag,
  } = choice;
  const weeks = twoWeeksApart === 1 ? '1 week' : `${twoWeeksApart} weeks`;
  const words = [
    ...(wantedBirds === undefined ? [] : [wantedBirds === 1 ? '1 bird' : `${wantedBirds} birds`]),
    ...(strainId === undefined ? [] : [nameOf(strains, strainId)]),
    ...(feedProgramId === undefined ? [] : [nameOf(feedPrograms, feedProgramId)]),
    ...(arrivalDate === undefined ? [] : [`They come ${formatValue(arrivalDate, 'date', reader)}`]),
    ...(leaveAgeDays === undefined
      ? []
      : [`Processed at ${formatValue(leaveAgeDays, 'day', reader)}`]),
    ...(ownMixPerBag === undefined
      ? []
      : [`Your own mix at ${formatPrice(ownMixPerBag, reader.currency)} a bag`]),
    ...(twoWeeksApart === undefined ? [] : [`Two batches, ${weeks} apart`]),
  ];
  return words.length === 0 ? 'As planned' : words.join(', ');
}
