import { listed } from '../../units/listed.js';
import type { SheetPage } from './sitter-sheet.js';
import type { SheetStop } from './sheet-stops.js';

/**
 * What was on the page of the day before and is over: whoever read it then goes on doing it, unless
 * it is said. Amounts that change and work that was done are not meant, nor a chore that a later page
 * has again.
 *
 * @param later the pages after this one
 * @returns sentences
 */
export function overOnPage(
  page: SheetPage,
  before: SheetPage | undefined,
  later: readonly SheetPage[],
): string[] {
  if (!before) return [];
  const isBack = before.away.filter((name) => page.home.includes(name));
  const comes = [page, ...later].flatMap(({ chores, others, jobs }) => [
    ...[...chores, ...others, ...jobs].map(choreKey),
  ]);
  const stops = before.stops.flatMap((was) => overOf(was, page));
  // Of animals that are gone that is enough.
  const gone = new Set(
    before.stops.filter(({ id }) => !page.stops.some((stop) => stop.id === id)).map((s) => s.name),
  );
  const chores = before.chores
    .filter((chore) => !comes.includes(choreKey(chore)))
    .filter(({ of }) => of === undefined || !gone.has(of))
    .map(({ name, of }) => `${name}${of === undefined ? '' : `, ${of}`}: not any more.`);
  return [
    ...(0 < isBack.length
      ? [`${listed(isBack)} ${isBack.length === 1 ? 'is' : 'are'} back at home.`]
      : []),
    ...stops,
    ...chores,
  ];
}

const choreKey = ({ name, of }: { readonly name: string; readonly of?: string }): string =>
  `${of ?? ''}: ${name}`;

function overOf(was: SheetStop, { stops, date }: SheetPage): string[] {
  const now = stops.find(({ id }) => id === was.id);
  if (!now) return [`${was.name}: no longer on the round.`];
  // Whoever reads that it is over eats of it: only days of a label say so, not that none is asked for.
  const free = (was.keptOut ?? [])
    .filter(({ what, until = date }) => until < date && !now.keptOut?.some((k) => k.what === what))
    .map(({ what }) => what);
  return [
    ...(was.isHeated && !now.isHeated ? [`${was.name}: no heat any more.`] : []),
    ...(free.length === 0
      ? []
      : [`${was.name}: the wait after medicine is over for ${listed(free)}.`]),
    ...(was.mayCalve && !now.mayCalve ? [`${was.name}: no calf is waited for any more.`] : []),
  ];
}
