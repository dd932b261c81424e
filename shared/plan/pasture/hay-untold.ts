import type { PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { fromTable, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import type { SeasonBooks, Topping } from '../../pasture/season-books.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { listed } from '../../units/listed.js';
import { countedOn } from './baled.js';
import type { PastureContext } from './pasture-context.js';
import { balesMade } from './surplus.js';

export const hayUntoldFormulas = {
  untold: {
    id: 'hay-untold',
    title: 'Hay taken as made',
    words:
      'Grass that was to be mown before today, of which nobody told how many bales it gave, as it comes home by the plan: since what lies in store was counted; where nothing was counted, since the season began.',
    symbols: 'H_taken = Σ W_cut·s ÷ dm',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** A paddock that was to be mown on a day that is past. */
export interface UntoldCut {
  readonly paddockId: string;
  readonly on: PlainDate;
}

/** Hay of the days before the plan whose bales nobody told: counted all the same, and asked about. */
export interface HayUntold {
  readonly hay: NumberQuantity;
  /** Of these, what nobody told of at all. */
  readonly cuts: readonly UntoldCut[];
  readonly issue: PlanIssue;
}

/** Undefined where all that was mown was told, or counted in the store since. */
export function hayUntold(context: PastureContext, books: SeasonBooks): HayUntold | undefined {
  const { paddocks, say, dateOf, mowings = [] } = context;
  const { harvestShare, dryMatterShare } = context.tables.pasture.hay;
  const since = countedOn(context);
  if (since === undefined) return undefined;
  const isLater = ({ day }: Topping): boolean => since < dateOf(day);
  const untold = books.assumedCuts.filter(isLater);
  const uncounted = books.toldCuts.filter(isLater).filter(({ paddock, day }) => {
    const told = mowings.filter(
      (each) => each.paddockId === paddocks[paddock]!.id && each.date === dateOf(day),
    );
    return told.every(({ bales, isLeftLying }) => bales === undefined && isLeftLying !== true);
  });
  const cuts = [...untold, ...uncounted];
  const cutKg = cuts.reduce((sum, { kg }) => sum + kg, 0);
  if (cutKg <= 0) return undefined;
  const hay = quantity(
    'Hay taken as made',
    (cutKg * harvestShare) / dryMatterShare,
    'kg',
    hayUntoldFormulas.untold,
    [
      input('Cuts', cuts.length, 'count'),
      input('Grass cut, dry matter', cutKg, 'kg', 'ΣW_cut'),
      fromTable(context.tables.pasture.hay, 'Brought home', harvestShare, 'share', 's'),
      fromTable(context.tables.pasture.hay, 'Dry share of hay', dryMatterShare, 'share', 'dm'),
    ],
    { mark: 'assumed', rows: [context.order] },
  );
  const bales = say(balesMade(context, hay, 'Bales taken as made').value, 'bales');
  const of = (of: readonly Topping[]): string => namesByDay(context, of);
  const text = [
    0 < untold.length
      ? `By the plan ${of(untold)} to be mown, and nobody told whether that was done.`
      : undefined,
    0 < uncounted.length
      ? `${of(uncounted)} mown, and nobody told how many bales ${uncounted.length === 1 ? 'it' : 'they'} gave.`
      : undefined,
    `Until somebody does, about ${bales} of hay, ${say(hay.value, 'kg')}, count as made. Tell it under “What was mown”, or count what lies in store and type it under Hay; where it was not mown, walk the paddock and type its height.`,
  ].filter((each) => each !== undefined);
  return {
    hay,
    cuts: untold.map(({ paddock, day }) => ({ paddockId: paddocks[paddock]!.id, on: dateOf(day) })),
    issue: issue(0 < untold.length ? 'act' : 'note', 'hay-untold', text.join(' '), [hay]),
  };
}

/** “Oak and Pond (10 June) and Hill (3 July) were”. */
function namesByDay({ paddocks, say, dateOf }: PastureContext, cuts: readonly Topping[]): string {
  const days = new Map<PlainDate, string[]>();
  for (const { paddock, day } of cuts) {
    const date = dateOf(day);
    days.set(date, [...(days.get(date) ?? []), paddocks[paddock]!.name]);
  }
  const each = [...days].map(([date, names]) => `${listed(names, 'and')} (${say(date, 'date')})`);
  return `${listed(each, 'and')} ${cuts.length === 1 ? 'was' : 'were'}`;
}
