import { daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  from,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import { found, type Found } from '../found.js';
import { baledLeft, baledOf } from './baled.js';
import { hayLeft } from './hay-fed-since.js';
import { fedUntilOutKg, hayByWinter, hayByWinterFormulas, toBuyKg } from './hay-by-winter.js';
import { hayOver } from './hay-over.js';
import { nextWinterOf, untilPlanOf } from './hay-outside-plan.js';
import { hayRunsOutFormulas, runsOutOn } from './hay-runs-out.js';
import type { HayStorePart } from './hay-store-part.js';
import { toBuyIssue } from './hay-to-buy.js';
import { hayUntold } from './hay-untold.js';
import type { PastureContext } from './pasture-context.js';
import { balesOf, surplusOf, type Chosen } from './surplus.js';

export const hayStoreFormulas = {
  own: {
    id: 'hay-own',
    title: 'Hay of your own',
    words: 'Hay of all cuts of the plan, as it comes home.',
    symbols: 'H_own = Σ H_cut',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  unmade: {
    id: 'hay-to-buy-unmade',
    title: 'Hay to buy, if nothing of it was made',
    words:
      'Hay to buy, where none of the hay was made that is taken as made because nobody told of it.',
    symbols: 'H_buy = H_out + max(0, H_now + H + H_winter − H_store − H_baled − H_own − H_out)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  buy: {
    id: 'hay-to-buy',
    title: 'Hay to buy',
    words:
      'What is needed from today to grass, beside it, and through the next winter, less what lies in store, what was baled since that was counted or is taken as made, and what you make. What you make in summer is not taken off what is fed before turn-out. Where nothing is typed as in store, nothing is counted.',
    symbols:
      'H_buy = H_out + max(0, H_now + H + H_winter − H_store − H_baled − H_taken − H_own − H_out)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** @param hayPerDryKg hay as it lies in store for a kilogram of dry matter eaten */
export function planHayStore(
  context: PastureContext,
  chosen: Chosen,
  { toStore, hayPerDryKg }: { toStore: NumberQuantity; hayPerDryKg: number },
): Found<HayStorePart> {
  const { tables, span } = context;
  const cuts = surplusOf(context, chosen);
  const ownKg = cuts.reduce((sum, { hay }) => sum + hay.value, 0);
  const own =
    cuts.length === 0
      ? undefined
      : quantity(
          'Hay you make',
          ownKg,
          'kg',
          hayStoreFormulas.own,
          [input('Cuts', cuts.length, 'count'), ...cuts.slice(0, 6).map(({ hay }) => from(hay))],
          { rows: [context.order] },
        );
  const nextWinter = nextWinterOf(context, chosen, hayPerDryKg);
  const untilPlan = untilPlanOf(context, hayPerDryKg);
  const told = baledOf(context);
  const left = hayLeft(context, chosen, { hayPerDryKg, baledKg: told?.value ?? 0 });
  const inStore = left?.inStore;
  const baled = told && baledLeft(told, left?.fedOfBaledKg ?? 0);
  const untold = hayUntold(context, chosen.books);
  const storeKg = inStore?.value ?? 0;
  const baledKg = baled?.value ?? 0;
  const homeKg = baledKg + (untold?.hay.value ?? 0);
  const needKg = (untilPlan?.value ?? 0) + toStore.value + (nextWinter?.value ?? 0);
  const fedKg = fedUntilOutKg(context, chosen, hayPerDryKg);
  const untilOutKg = (untilPlan?.value ?? 0) + (fedKg ?? 0);
  const buyKg = (takenKg = 0) => {
    const thereKg = storeKg + baledKg + takenKg;
    return toBuyKg({ untilOutKg, needKg, thereKg, ownKg });
  };
  const there = (taken: NumberQuantity | undefined): QuantityInput[] => [
    inStore ? from(inStore, 'H_store') : input('In store, nothing typed', 0, 'kg', 'H_store'),
    ...(baled ? [from(baled, 'H_baled')] : []),
    ...(taken ? [from(taken, 'H_taken')] : []),
  ];
  const buy = (label: string, formula: Formula, taken: NumberQuantity | undefined) =>
    quantity(
      label,
      buyKg(taken?.value).all,
      'kg',
      formula,
      [
        ...(untilPlan ? [from(untilPlan, 'H_now')] : []),
        from(toStore, 'H'),
        ...(nextWinter ? [from(nextWinter, 'H_winter')] : []),
        ...there(taken),
        ...(own ? [from(own, 'H_own')] : []),
        ...(0 < untilOutKg ? [input('Fed until turn-out', untilOutKg, 'kg', 'H_spring')] : []),
      ],
      { mark: inStore?.mark === 'computed' ? 'own-record' : 'assumed', rows: [tables.pasture.hay] },
    );
  const toBuy = buy('Hay to buy, usual weather', hayStoreFormulas.buy, untold?.hay);
  // Where none is still to go out, there is no turn-out to part it by.
  const byWinter =
    fedKg === undefined || untilOutKg < 1
      ? undefined
      : hayByWinter(
          context,
          toBuy,
          quantity(
            'Hay to buy until turn-out, usual weather',
            buyKg(untold?.hay.value).untilOut,
            'kg',
            hayByWinterFormulas.untilOut,
            [
              ...(untilPlan ? [from(untilPlan, 'H_now')] : []),
              input('Fed in the plan before turn-out', fedKg, 'kg', 'H_spring'),
              ...there(untold?.hay),
            ],
            {
              mark: inStore?.mark === 'computed' ? 'own-record' : 'assumed',
              rows: [context.order, tables.pasture.hay],
            },
          ),
        );
  const toBuyUnmade =
    untold && buy('Hay to buy, if none taken as made was made', hayStoreFormulas.unmade, undefined);
  const beforeKg = untilPlan?.value ?? 0;
  const runsOut = runsOutOn(context, chosen, {
    hayPerDryKg,
    beforeKg,
    storeKg: inStore && storeKg + homeKg,
  });
  const runsOutUnmade =
    untold &&
    runsOutOn(context, chosen, {
      ...{ hayPerDryKg, beforeKg, storeKg: inStore && storeKg + baledKg },
    });
  const part: HayStorePart = {
    ...(untilPlan ? { untilPlan } : {}),
    ...(inStore ? { inStore } : {}),
    ...(baled ? { baled } : {}),
    ...(untold ? { taken: untold.hay, untoldCuts: untold.cuts } : {}),
    ...(own ? { own } : {}),
    ...(nextWinter ? { nextWinter } : {}),
    toBuy,
    balesToBuy: balesOf(context, toBuy, 'Bales to buy, usual weather'),
    ...(byWinter ? { byWinter } : {}),
    ...(toBuyUnmade
      ? {
          toBuyUnmade,
          balesUnmade: balesOf(
            context,
            toBuyUnmade,
            'Bales to buy, if none taken as made was made',
          ),
        }
      : {}),
    ...(runsOut === undefined
      ? {}
      : {
          runsOut: datedFact(
            'Hay runs out',
            context.dateOf(runsOut),
            hayRunsOutFormulas.runsOut,
            [from(inStore!, 'H_store'), ...(own ? [from(own, 'H_home')] : [])],
            { rows: [context.order] },
          ),
        }),
  };
  return found(part, {
    issues: [
      ...hayOver(context, chosen, {
        own,
        overKg: storeKg + homeKg + ownKg + toBuy.value - needKg,
      }),
      ...toBuyIssue(context, part, {
        ...{ runsOutDay: runsOut, unmadeDay: runsOutUnmade },
        today: daysBetween(span.first, context.today),
        isWithoutGrass: chosen.books.stays.length === 0,
      }),
      ...(untold ? [untold.issue] : []),
      ...(left?.issues ?? []),
    ],
  });
}
