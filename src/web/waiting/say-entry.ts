import type { RowDescription } from '../../../shared/farm/field.js';
import { toldProgressFields } from '../../../shared/farm/job.js';
import type { ToldKind } from '../../../shared/farm/told-fact.js';
import { TOLD_KINDS } from '../../../shared/farm/told-kinds.js';
import { formatDate } from '../../../shared/units/dates.js';
import { wordsOfRow } from '../api/row-words.js';
import { sayValue } from '../api/say-value.js';
import { seenName } from '../api/seen-rows.js';
import type { Entry } from '../kept/entry.js';
import { sayMoment, type Place } from './say-moment.js';

/** What a fact says, as far as it is read aloud. */
interface SaidOf {
  readonly kind: ToldKind;
  readonly about: string;
  readonly on?: string;
  readonly details: object;
}

/** A kind of fact as it is called in a list: “Eggs counted”. */
export const sayKind = (kind: ToldKind): string => {
  const words = NAMES[kind] ?? kind.replaceAll('-', ' ');
  return words.slice(0, 1).toUpperCase() + words.slice(1);
};
/** Where the name of a kind is not what one would say. */
const NAMES: Partial<Record<ToldKind, string>> = {
  'work-progress': 'work',
  'chore-done': 'done',
  'grass-reading': 'grass height',
  'ground-check': 'ground',
  'herd-move': 'moved',
};

/** What it is about: the name of the batch, paddock, herd or work, where it is known. */
const nameOf = (about: string, name?: string): string | undefined => name ?? seenName(about);

/** What an entry tells, in a line. */
export function sayEntry({ message, name }: Entry, place: Place): string {
  if (message.does === 'work') {
    const { key, undo: _undo, ...details } = message.said;
    return sayFact({ kind: 'work-progress', about: key, details }, place, name);
  }
  if (message.does === 'take-back') {
    if ('id' in message.of) return 'Taken back';
    const { kind, about, on } = message.of;
    const what = nameOf(about, name) ?? sayKind(kind);
    return `${what}: taken back${on === undefined ? '' : `, ${formatDate(on, place)}`}`;
  }
  return message.facts.map((fact) => sayFact(fact, place, name)).join('; ');
}

/** A fact in a line: what of it, which day, and its values in the farm's units. */
export function sayFact({ kind, about, on, details }: SaidOf, place: Place, name?: string): string {
  const what = [nameOf(about, name), sayKind(kind)].filter((part) => part !== undefined);
  const values = sayDetails(kind, details, place);
  const day = on === undefined ? undefined : formatDate(on, place);
  return `${[what.join(', '), day].filter(Boolean).join(', ')}${values === '' ? '' : `: ${values}`}`;
}

export function sayDetails(kind: ToldKind, details: object, place: Place): string {
  const words = wordsOfRow(fieldsOf(kind), place);
  return (
    Object.entries(details)
      // The key of the work that told it is nothing to read.
      .filter(([field, value]) => field !== 'work' && value !== undefined)
      .map(([field, value]) =>
        field === 'photos'
          ? sayPhotos(value as readonly string[])
          : `${words.labelOf(field) ?? field} ${sayValue(field, value, words)}`,
      )
      .join(', ')
  );
}

const sayPhotos = ({ length }: readonly string[]): string =>
  length === 1 ? 'with a photo' : `with ${length} photos`;

/** What describes the details of a kind; work may hold more than is told of it at once. */
export const fieldsOf = (kind: ToldKind): RowDescription =>
  kind === 'work-progress' ? toldProgressFields : TOLD_KINDS[kind].details;

/** Who told something and when: “Anna, Tue, Nov 24, 7:05 AM”. */
export const sayTeller = (
  { saidBy, toldAt }: { saidBy?: string; toldAt: string },
  place: Place,
): string => `${saidBy ?? 'Somebody else'}, ${sayMoment(toldAt, place)}`;
