import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import { fromFarm, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { outOfItself } from './grass-again.js';
import { toldStays, type PastureContext } from './pasture-context.js';
import { baleOf, type Chosen } from './surplus.js';

export const hayFedSinceFormulas = {
  left: {
    id: 'hay-in-store',
    title: 'Hay in store',
    words:
      'What was counted, less what was fed since: on each day since then on which a herd was on no paddock, as it was told or else as it was planned, what it needs, and the hay of cattle kept apart. A herd of which nothing was told this season is taken to have gone out when the grass usually stands tall enough. Bales told since are fed once the store is empty.',
    symbols: 'H_store = max(0, H_counted − H_fed)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hay that is there now, of what was counted, and of bales told since. */
export interface HayLeft {
  readonly inStore: NumberQuantity;
  /** Fed since of bales that were told, kg. */
  readonly fedOfBaledKg: number;
  readonly issues: readonly PlanIssue[];
}

/** What is left of the hay that was counted; undefined where none was. */
export function hayLeft(
  context: PastureContext,
  chosen: Chosen,
  { hayPerDryKg, baledKg }: { readonly hayPerDryKg: number; readonly baledKg: number },
): HayLeft | undefined {
  const { choices, say, today } = context;
  const { hayInStoreKg: countedKg, hayInStoreOn: countedOn } = choices;
  if (countedKg === undefined) return undefined;
  const fedKg = countedOn === undefined ? 0 : fedSinceKg(context, chosen, countedOn) * hayPerDryKg;
  const storeKg = Math.max(0, countedKg - fedKg);
  const isReckoned = 0 < fedKg;
  const inStore = quantity(
    isReckoned ? 'Hay in store, reckoned' : 'Hay in store',
    storeKg,
    'kg',
    hayFedSinceFormulas.left,
    [
      fromFarm('Counted in store', countedKg, 'kg', 'H_counted'),
      ...(countedOn === undefined ? [] : [fromFarm('Counted on', countedOn, 'date')]),
      ...(isReckoned ? [input('Fed since', fedKg, 'kg', 'H_fed')] : []),
    ],
    isReckoned ? { mark: 'assumed', rows: [context.order, context.tables.pasture.hay] } : {},
  );
  const fedOfBaledKg = Math.min(baledKg, fedOfLaterBalesKg(context, chosen, hayPerDryKg));
  const bale = baleOf(context);
  const isMuch = bale.kg <= Math.min(fedKg, countedKg);
  return {
    ...{ inStore, fedOfBaledKg },
    issues: isMuch
      ? [
          issue(
            storeKg < bale.kg ? 'act' : 'note',
            'hay-count-again',
            `How much hay lies in store? Of ${say(countedKg, 'kg')} counted on ${say(countedOn!, 'date')}, about ${say(Math.min(fedKg, countedKg), 'kg')} are taken as fed by ${say(today, 'date')}, which leaves ${storeKg < bale.kg ? 'none' : say(storeKg, 'kg')}. Count it and type it under Hay; bales bought since are not in it until then.`,
            [inStore],
          ),
        ]
      : [],
  };
}

/** Feed of days from one on to the day before today, kg of dry matter. */
function fedSinceKg(context: PastureContext, chosen: Chosen, from: PlainDate): number {
  const { span, herds, herdDays, today } = context;
  const stays = toldStays(context);
  const outFrom = outOfItself(chosen.problem);
  let kg = 0;
  herds.forEach((herd, h) => {
    const { demandKg, grassKg } = herdDays[h]!;
    const own = stays.filter(({ herdId }) => herdId === herd.id);
    const isTold = own.some(({ to }) => to === undefined || span.first <= to);
    for (let on = from; on < today; on = addDays(on, 1)) {
      const day = daysBetween(span.first, on);
      // What they are on the first day of the grazing year they are taken to have been before it.
      const at = Math.max(0, day);
      if (demandKg.length <= at) return;
      const isOut =
        isTold || day < 0 ? own.some((stay) => isIn(stay, on)) : (outFrom ?? Infinity) <= day;
      kg += isOut ? demandKg[at]! - grassKg[at]! : demandKg[at]!;
    }
  });
  return kg;
}

const isIn = (
  { from, to }: { readonly from: PlainDate; readonly to?: PlainDate },
  on: PlainDate,
): boolean => from <= on && (to === undefined || on <= to);

/** Hay fed when what was counted was gone and bales had come home that were told since, kg. */
function fedOfLaterBalesKg(context: PastureContext, chosen: Chosen, hayPerDryKg: number): number {
  const { choices, mowings = [] } = context;
  const { hayInStoreKg = 0, hayInStoreOn } = choices;
  if (hayInStoreOn === undefined) return 0;
  const later = mowings.filter(({ bales, date }) => 0 < (bales ?? 0) && hayInStoreOn < date);
  if (later.length === 0) return 0;
  const first = later.map(({ date }) => date).sort()[0]!;
  const sinceKg = fedSinceKg(context, chosen, first) * hayPerDryKg;
  const beforeKg = fedSinceKg(context, chosen, hayInStoreOn) * hayPerDryKg - sinceKg;
  return Math.max(0, sinceKg - Math.max(0, hayInStoreKg - beforeKg));
}
