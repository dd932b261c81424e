import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import { GO_LETTERS, goInKey, type MowingWork } from '../../farm/mowing.js';
import type { SeasonBooks, Topping } from '../../pasture/season-books.js';
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

/** Cuts within so many days of the first are made in one go; so long the hay of one is worked on. */
const ONE_GO_DAYS = 7;

const TEMPLATES = { mowing: 'hay.mow', topping: 'grass.top' } as const;

/** Of a go, for the ids of its tasks. */
export const goOf = ({ kind, number }: Pick<MowingGo, 'kind' | 'number'>): string =>
  `${GO_LETTERS[kind]}${number}`;

/**
 * All that is mown or topped, in goes: what was ticked in the last days, as hay lies for some, and
 * what is planned. No number is given again that was ticked once.
 */
export function mowingGoes(context: PastureContext, books: SeasonBooks): MowingGo[] {
  return [
    ...goesOf(context, 'mowing', books.cuts, books.toldCuts),
    ...goesOf(context, 'topping', books.toppings, books.toldCuts),
  ];
}

function goesOf(
  { dateOf, mowings = [], paddocks, tables, today }: PastureContext,
  kind: MowingGo['kind'],
  planned: readonly Topping[],
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
  let [number, free] = [0, -Infinity];
  const mostM2 = kind === 'mowing' ? tables.judgements.grazing.hayAtOnceM2.value : Infinity;
  return [
    ...recent,
    ...inOneGo(planned, (cut) => paddocks[cut.paddock]!.areaM2, mostM2).map((cuts): MowingGo => {
      while (ticked.has(number)) number++;
      // Who still works on the hay of one go mows the next when it is in.
      const day = Math.max(cuts[0]!.day, free);
      free = day + ONE_GO_DAYS;
      return {
        kind,
        number: number++,
        date: dateOf(day),
        paddocks: cuts.map(({ paddock }) => paddock),
        kg: cuts.reduce((sum, { kg }) => sum + kg, 0),
      };
    }),
  ];
}

/** Cuts of the same week together, as far as no more land lies in swaths at once than is allowed. */
function inOneGo(
  cuts: readonly Topping[],
  areaM2: (cut: Topping) => number,
  mostM2: number,
): Topping[][] {
  const goes: Topping[][] = [];
  let m2 = 0;
  for (const cut of [...cuts].sort((a, b) => a.day - b.day)) {
    const last = goes.at(-1);
    m2 += areaM2(cut);
    if (last && cut.day < last[0]!.day + ONE_GO_DAYS && m2 <= mostM2) last.push(cut);
    else {
      goes.push([cut]);
      m2 = areaM2(cut);
    }
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
      paddockIds: go.paddocks.map((paddock) => paddocks[paddock]!.id),
      isLeftLying: go.kind === 'topping',
    })),
  );
