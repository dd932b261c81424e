import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { Entry } from '../../pasture/season-books.js';
import type { BirdMove } from './manure.js';
import type { Move } from './moves.js';
import type { HerdPart } from './herd-part.js';
import { mowingLaid, type DaysOfMowing } from './mowing-laid.js';
import type { PasturePlan } from './pasture-plan.js';
import type { Surplus } from './surplus.js';

export const seasonRowFormulas = {
  hayADay: {
    id: 'hay-a-day',
    title: 'Feed on a day without grass',
    words:
      'What the herd needs on the days of the row, all of it fed, over the days. Dry matter: what is lost in store and at the feeder comes on top.',
    symbols: 'f = Σ need ÷ n',
    sources: ['NRC_BEEF_1996', 'NRC_DAIRY_2001'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

interface Dated {
  readonly from: string;
  readonly to: string;
}

/** A herd in a paddock; `hayKg` is all it is fed beside it, those in quarantine included. */
export interface GrazeRow extends Dated {
  readonly kind: 'graze';
  readonly move: Move;
  readonly hayKg: number;
}

/** Days in a row on which a herd is on no paddock and fed all it needs. */
export interface HayRow extends Dated {
  readonly kind: 'hay';
  readonly herdId: string;
  readonly days: number;
  readonly hayKg: number;
  readonly perDay: NumberQuantity;
}

/** A paddock is shut, so that its grass can be mown on the day in `cut`. */
export interface ShutRow extends Dated {
  readonly kind: 'shut';
  readonly cut: Surplus;
}

/** It is mown, and stays shut while the hay dries: from the day that its work has, where it has one. */
export interface MowRow extends Dated {
  readonly kind: 'mow';
  /** The plan of the work has laid that day. */
  readonly isLaid: boolean;
  readonly cut: Surplus;
}

/** It is cut down because it goes rank. */
export interface TopRow extends Dated {
  readonly kind: 'top';
  readonly paddockId: string;
}

/** Birds in a paddock after the herd. */
export interface BirdsRow extends Dated {
  readonly kind: 'birds';
  readonly move: BirdMove;
}

export type SeasonRow = GrazeRow | HayRow | ShutRow | MowRow | TopRow | BirdsRow;

/** What comes first of several rows that begin on one day. */
const ORDER: readonly SeasonRow['kind'][] = ['mow', 'top', 'shut', 'graze', 'hay', 'birds'];

/**
 * All that happens on the land from the first day of a plan to its last, in the order of its days:
 * stays on grass, days on hay, mowing, and birds behind the herds.
 *
 * The feed of all rows together is the plan's `hayByDay`.
 *
 * @param mowing days of the plan of the work, on which paddocks are mown then
 */
export function seasonRows(plan: PasturePlan, mowing?: DaysOfMowing): SeasonRow[] {
  const rows: SeasonRow[] = [
    ...plan.herds.flatMap((herd) => [...grazeRows(plan, herd), ...hayRows(plan, herd)]),
    ...plan.surplus.flatMap((cut): SeasonRow[] => {
      const laid = mowingLaid(plan, mowing, cut);
      const on = laid ?? cut.cutOn;
      const to = addDays(shutUntil(plan, cut), daysBetween(cut.cutOn, on));
      return [
        { kind: 'shut', from: cut.shutFrom, to: on, cut },
        { kind: 'mow', from: on, to, cut, isLaid: laid !== undefined },
      ];
    }),
    ...plan.toppings.map(({ paddockId, on }): TopRow => ({
      ...{ kind: 'top', from: on, to: on },
      paddockId,
    })),
    ...plan.birds.map((move): BirdsRow => ({ kind: 'birds', from: move.from, to: move.to, move })),
  ];
  const rank = (row: SeasonRow): number => ORDER.indexOf(row.kind);
  return rows.sort((a, b) => (a.from === b.from ? rank(a) - rank(b) : a.from < b.from ? -1 : 1));
}

const movesOfHerd = (plan: PasturePlan, herd: HerdPart): readonly Move[] =>
  plan.moves.filter((move) => move.herdId === herd.id);

function grazeRows(plan: PasturePlan, herd: HerdPart): GrazeRow[] {
  return movesOfHerd(plan, herd).map((move) => {
    const first = daysBetween(plan.from, move.from);
    const fed = herd.hayByDay.slice(first, first + move.days);
    return { kind: 'graze', from: move.from, to: move.to, move, hayKg: sumOf(fed) };
  });
}

function hayRows(plan: PasturePlan, herd: HerdPart): HayRow[] {
  const isGrazing = herd.hayByDay.map(() => false);
  for (const move of movesOfHerd(plan, herd)) {
    const first = daysBetween(plan.from, move.from);
    isGrazing.fill(true, first, first + move.days);
  }
  const rows: HayRow[] = [];
  let first = 0;
  while (first < isGrazing.length) {
    const isFed = (day: number): boolean => !isGrazing[day]! && 0 < (herd.hayByDay[day] ?? 0);
    let end = first;
    while (isFed(end)) end++;
    if (first < end) rows.push(hayRow(plan, herd, first, end));
    first = end + 1;
  }
  return rows;
}

function hayRow(plan: PasturePlan, herd: HerdPart, first: number, end: number): HayRow {
  const fed = herd.hayByDay.slice(first, end);
  const [from, to] = [addDays(plan.from, first), addDays(plan.from, end - 1)];
  const hayKg = sumOf(fed);
  return {
    kind: 'hay',
    from,
    to,
    herdId: herd.id,
    days: end - first,
    hayKg,
    perDay: quantity(
      `${herd.name}: feed a day, dry matter`,
      hayKg / (end - first),
      'kg',
      seasonRowFormulas.hayADay,
      [
        input('From', from, 'date'),
        input('To', to, 'date'),
        input('Need of these days', hayKg, 'kg', 'Σ need'),
        input('Days', end - first, 'day', 'n'),
        input('Least on a day', Math.min(...fed), 'kg'),
        input('Most on a day', Math.max(...fed), 'kg'),
      ],
      { rows: [herd.need, plan.order] },
    ),
  };
}

/** Last day of the days for which mowing keeps a paddock shut. */
function shutUntil(plan: PasturePlan, { paddockId, cutOn }: Surplus): string {
  const { closedDays: closed } = plan.paddocks.find((paddock) => paddock.id === paddockId)!;
  const round = closed.findLast(
    ({ from, to, why }) => why === 'hay' && from <= cutOn && cutOn <= to,
  );
  return round?.to ?? cutOn;
}

/** Tenths that are added up stay tenths. */
const sumOf = (values: readonly number[]): number =>
  Math.round(values.reduce((a, b) => a + b, 0) * 10) / 10;

const nameOf = (rows: readonly { id: string; name: string }[], id: string): string =>
  rows.find((row) => row.id === id)?.name ?? '';

/** The herd went in before the plan began. */
export const isThere = ({ move }: GrazeRow): boolean => move.start === 'out-already';

/** What happens, in a few words: who goes where, or what is done to which paddock. */
export function rowTitle({ herds, paddocks }: PasturePlan, row: SeasonRow): string {
  switch (row.kind) {
    case 'graze':
      return `${nameOf(herds, row.move.herdId)} ${isThere(row) ? 'still in' : 'into'} ${nameOf(paddocks, row.move.paddockId)}`;
    case 'hay':
      return `${nameOf(herds, row.herdId)} on hay`;
    case 'shut':
      return `Close ${nameOf(paddocks, row.cut.paddockId)} for hay`;
    case 'mow':
      return `Mow ${nameOf(paddocks, row.cut.paddockId)}`;
    case 'top':
      return `Top ${nameOf(paddocks, row.paddockId)}`;
    case 'birds':
      return `${row.move.name} into ${nameOf(paddocks, row.move.paddockId)}`;
  }
}

/** Less than this beside a stay is not worth a walk with a bale, kg. */
const LITTLE_HAY_KG = 0.5;

/** Why a herd goes in lower than at the ready height. */
const LOW_NOTES: Partial<Record<Entry, readonly string[]>> = {
  'first-pass': ['first quick pass'],
  'leaf-stage': ['ready by its leaves'],
  'at-rest': ['nothing grows now'],
  dormant: ['last round'],
};

/** What is to be minded about it. */
export function rowNotes(row: SeasonRow): string[] {
  if (row.kind === 'birds') return row.move.isWet ? ['ground may be wet'] : [];
  if (row.kind !== 'graze') return [];
  return [
    ...(LOW_NOTES[row.move.entry] ?? []),
    ...(1 < row.move.strips ? [`in ${row.move.strips} strips, back fence`] : []),
    ...(row.move.isRank ? ['rank'] : []),
    ...(LITTLE_HAY_KG < row.hayKg ? ['feed hay too'] : []),
  ];
}
