import type { PlainDate } from '../calendar/plain-date.js';
import { formatMonth } from '../units/dates.js';

interface Named {
  readonly id?: string;
  readonly name: string;
  readonly arrivalDate: PlainDate;
}

/** What a batch is called in lists with others: with its month where another has the same name. */
export function nameAmong(batch: Named, all: readonly Named[]): string {
  const alike = all.filter(({ name }) => name === batch.name);
  return alike.length < 2 ? batch.name : `${batch.name}, ${formatMonth(batch.arrivalDate)}`;
}

/** A name for a new batch that no other has: its month says which, then a number. */
export function freeName(
  first: string,
  arrivalDate: PlainDate | undefined,
  taken: readonly string[],
): string {
  const names = [first, ...(arrivalDate ? [`${first}, ${formatMonth(arrivalDate)}`] : [])];
  const free = names.find((name) => !taken.includes(name));
  if (free !== undefined) return free;
  let number = 2;
  while (taken.includes(`${names.at(-1)!} ${number}`)) number++;
  return `${names.at(-1)!} ${number}`;
}
