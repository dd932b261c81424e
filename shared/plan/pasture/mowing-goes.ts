import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { GO_LETTERS, goInKey, type MowingWork } from '../../farm/mowing.js';
import type { Cut, SeasonBooks, Topping } from '../../pasture/season-books.js';
import type { PastureContext } from './pasture-context.js';

/** Paddocks that are mown, or topped, in one go. */
export interface MowingGo {
  readonly kind: 'mowing' | 'topping';
  /** Among its kind, from 0: its work is ticked by it. */
  readonly number: number;
  readonly date: PlainDate;
  /** Indices of the paddocks. */
  readonly paddocks: readonly number[];
  /** What is cut, kg of dry matter. */
  readonly kg: number;
}

/** Toppings within so many days of the first are made in one go; so long the hay of a cut is worked on. */
const ONE_GO_DAYS = 7;

const TEMPLATES = { mowing: 'hay.mow', topping: 'grass.top' } as const;

/** Of a go, for the ids of its tasks. */
export const goOf = ({ kind, number }: Pick<MowingGo, 'kind' | 'number'>): string =>
  `${GO_LETTERS[kind]}${number}`;

/** What is cut of a go of one kind: its first day, and paddocks with what is cut of them. */
interface Go {
  readonly day: number;
  readonly cuts: readonly Topping[];
  /** Nobody told of it, and its days are over. */
  readonly isOver?: true;
}

/**
 * All that is mown or topped, in goes: what was ticked in the last days, as hay lies for some, what
 * was to be done and still may be, and what is planned. No number is given again that was ticked
 * once, or that was of a go whose days are over.
 */
export function mowingGoes(context: PastureContext, books: SeasonBooks): MowingGo[] {
  const over = byGo(books.assumedCuts).map((go): Go => ({ ...go, isOver: true }));
  return [
    ...goesOf(context, 'mowing', [...over, ...byGo(books.cuts)], books.toldCuts),
    ...goesOf(context, 'topping', inOneGo(books.toppings), books.toldCuts),
  ];
}

function goesOf(
  { dateOf, mowings = [], paddocks, today }: PastureContext,
  kind: MowingGo['kind'],
  planned: readonly Go[],
  told: readonly Topping[],
): MowingGo[] {
  const ticked = new Map<number, MowingGo>();
  for (const { work, date, paddockId } of mowings) {
    const number = work === undefined ? undefined : goInKey(work, kind);
    if (number === undefined) continue;
    const before = ticked.get(number);
    const paddock = paddocks.findIndex(({ id }) => id === paddockId);
    const cut = told.find((each) => each.paddock === paddock && dateOf(each.day) === date);
    ticked.set(number, {
      ...{ kind, number, date },
      paddocks: [...(before?.paddocks ?? []), ...(paddock === -1 ? [] : [paddock])],
      kg: (before?.kg ?? 0) + (cut?.kg ?? 0),
    });
  }
  const recent = [...ticked.values()].filter(
    (go) => today <= addDays(go.date, ONE_GO_DAYS) && 0 < go.paddocks.length,
  );
  let number = 0;
  const ahead = planned.flatMap(({ day, cuts, isOver }): MowingGo[] => {
    while (ticked.has(number)) number++;
    const go = {
      ...{ kind, number: number++, date: dateOf(day) },
      paddocks: cuts.map(({ paddock }) => paddock),
      kg: cuts.reduce((sum, { kg }) => sum + kg, 0),
    };
    return isOver ? [] : [go];
  });
  return [...recent, ...ahead];
}

/** Cuts of hay by the goes that they are made in. */
function byGo(cuts: readonly Cut[]): Go[] {
  const days = new Map<number, Cut[]>();
  for (const cut of cuts) days.set(cut.goFrom, [...(days.get(cut.goFrom) ?? []), cut]);
  return [...days].sort(([a], [b]) => a - b).map(([day, of]): Go => ({ day, cuts: of }));
}

/** Toppings of the same week together. */
function inOneGo(toppings: readonly Topping[]): Go[] {
  const goes: { day: number; cuts: Topping[] }[] = [];
  for (const cut of [...toppings].sort((a, b) => a.day - b.day)) {
    const last = goes.at(-1);
    if (last && cut.day < last.day + ONE_GO_DAYS) last.cuts.push(cut);
    else goes.push({ day: cut.day, cuts: [cut] });
  }
  return goes;
}

/** The work by which paddocks are mown or topped, with the first herd. */
export const mowingWorkOf = (
  { herds, paddocks }: PastureContext,
  goes: readonly MowingGo[],
): MowingWork[] =>
  herds.slice(0, 1).flatMap(({ id }) =>
    goes.map((go): MowingWork => ({
      key: `herd/${id}/${id}.${goOf(go)}.${TEMPLATES[go.kind]}`,
      from: go.date,
      paddockIds: go.paddocks.map((paddock) => paddocks[paddock]!.id),
      isLeftLying: go.kind === 'topping',
    })),
  );
