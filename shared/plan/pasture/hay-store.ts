import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  from,
  fromFarm,
  fromJudgement,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
  type QuantityInput,
} from '../../explain/quantity.js';
import type { GrazingProblem } from '../../pasture/grazing-problem.js';
import type { SeasonBooks } from '../../pasture/season-books.js';
import { massOf } from '../../pasture/sward.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { found, type Found } from '../found.js';
import { baledOf } from './baled.js';
import { fedByHand } from './fed-by-hand.js';
import {
  fedUntilOutKg,
  hayByWinter,
  hayByWinterFormulas,
  toBuyKg,
  type HayByWinter,
} from './hay-by-winter.js';
import { hayOver } from './hay-over.js';
import { hayUntold, type UntoldCut } from './hay-untold.js';
import type { PastureContext } from './pasture-context.js';
import { leftOn, onHayDay } from './on-hay-day.js';
import { YEAR } from './pasture-span.js';
import { balesOf, surplusOf, type Chosen } from './surplus.js';
import { winterGrass, winterGrassFormulas } from './winter-grass.js';

export const hayStoreFormulas = {
  own: {
    id: 'hay-own',
    title: 'Hay of your own',
    words: 'Hay of all cuts of the plan, as it comes home.',
    symbols: 'H_own = Σ H_cut',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  nextWinter: {
    id: 'hay-next-winter',
    title: 'Hay from the end of the plan to grass again',
    words:
      'What the herds need on the last day of the plan, for each day until the day of the next year on which they turn out in this one, as hay with what is lost in store and at the feeder. What they eat of the grass meanwhile is taken off. Cattle that come, go or grow in those days are not in it.',
    symbols: 'H = (F_day·days − G) ÷ (dm·(1 − l_store)·(1 − l_feed))',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  untilPlan: {
    id: 'hay-until-plan',
    title: 'Hay from today to the plan',
    words:
      'Between two seasons the plan begins ahead of today. Until then the herds are on hay: what they need on its first day, for each of the days.',
    symbols: 'H = F_day·days ÷ (dm·(1 − l_store)·(1 − l_feed))',
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
  runsOut: {
    id: 'hay-runs-out',
    title: 'Hay runs out',
    words: 'First day on which what lies in store and has come home is fed.',
    symbols: 'H_store + H_home(t) < H_fed(t)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** Hay over the whole year: what is there, what is made, what the next winter takes, what to buy. */
export interface HayStorePart {
  /** From today to the first day of the plan, where that lies ahead. */
  readonly untilPlan?: NumberQuantity;
  readonly inStore?: NumberQuantity;
  /** Of bales that were told since. */
  readonly baled?: NumberQuantity;
  /** Of cuts before today whose bales nobody told. */
  readonly taken?: NumberQuantity;
  /** Of these, what nobody told of at all. */
  readonly untoldCuts?: readonly UntoldCut[];
  readonly own?: NumberQuantity;
  /** Left out where the grass that stands then feeds them until there is more. */
  readonly nextWinter?: NumberQuantity;
  readonly toBuy: NumberQuantity;
  readonly balesToBuy: NumberQuantity;
  /** Where some is to be bought for this winter, and some for the next. */
  readonly byWinter?: HayByWinter;
  /** Where hay is taken as made: what is to be bought if none of it was. */
  readonly toBuyUnmade?: NumberQuantity;
  readonly balesUnmade?: NumberQuantity;
  /** Only where it is known what lies in store. */
  readonly runsOut?: Quantity;
}

/** Days at the end of the plan whose need stands for the days after it. */
const LAST_DAYS = 7;

/** @param hayPerDryKg hay as it lies in store for a kilogram of dry matter eaten */
export function planHayStore(
  context: PastureContext,
  chosen: Chosen,
  { toStore, hayPerDryKg }: { toStore: NumberQuantity; hayPerDryKg: number },
): Found<HayStorePart> {
  const { choices, tables, span } = context;
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
  const { hayInStoreKg } = choices;
  const inStore =
    hayInStoreKg === undefined
      ? undefined
      : quantity('Hay in store', hayInStoreKg, 'kg', hayStoreFormulas.buy, [
          fromFarm('In store', hayInStoreKg, 'kg', 'H_store'),
        ]);
  const baled = baledOf(context);
  const untold = hayUntold(context, chosen.books);
  const baledKg = baled?.value ?? 0;
  const homeKg = baledKg + (untold?.hay.value ?? 0);
  const needKg = (untilPlan?.value ?? 0) + toStore.value + (nextWinter?.value ?? 0);
  const fedKg = fedUntilOutKg(context, chosen, hayPerDryKg);
  const untilOutKg = (untilPlan?.value ?? 0) + (fedKg ?? 0);
  const buyKg = (takenKg = 0) => {
    const thereKg = (hayInStoreKg ?? 0) + baledKg + takenKg;
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
      { mark: inStore ? 'own-record' : 'assumed', rows: [tables.pasture.hay] },
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
            { mark: inStore ? 'own-record' : 'assumed', rows: [context.order, tables.pasture.hay] },
          ),
        );
  const toBuyUnmade =
    untold && buy('Hay to buy, if none taken as made was made', hayStoreFormulas.unmade, undefined);
  const beforeKg = untilPlan?.value ?? 0;
  const runsOut = runsOutOn(context, chosen, { hayPerDryKg, beforeKg, baledKg: homeKg });
  const runsOutUnmade = untold && runsOutOn(context, chosen, { hayPerDryKg, beforeKg, baledKg });
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
            hayStoreFormulas.runsOut,
            [from(inStore!, 'H_store'), ...(own ? [from(own, 'H_home')] : [])],
            { rows: [context.order] },
          ),
        }),
  };
  return found(part, {
    issues: [
      ...hayOver(context, chosen, {
        own,
        overKg: (hayInStoreKg ?? 0) + homeKg + ownKg + toBuy.value - needKg,
      }),
      ...toBuyIssue(context, part, {
        ...{ runsOutDay: runsOut, unmadeDay: runsOutUnmade },
        today: daysBetween(span.first, context.today),
      }),
      ...(untold ? [untold.issue] : []),
    ],
  });
}

function nextWinterOf(
  context: PastureContext,
  { problem, books }: Chosen,
  hayPerDryKg: number,
): NumberQuantity | undefined {
  const { span, herdDays, dateOf, tables } = context;
  let need = 0;
  for (const { demandKg } of herdDays)
    for (let i = Math.max(span.from, span.to - LAST_DAYS); i < span.to; i++) need += demandKg[i]!;
  if (need <= 0) return undefined;
  const turnOut = turnOutOf(problem, books) ?? span.from;
  const until = addDays(dateOf(turnOut), YEAR);
  const days = daysBetween(dateOf(span.to - 1), until) - 1;
  if (days <= 0) return undefined;
  const perDayKg = need / Math.min(LAST_DAYS, span.to - span.from);
  const left = tables.judgements.grass.leftBeforeWinterDays;
  const onHay = context.paddocks.map((paddock) => onHayDay(span, context, paddock) !== undefined);
  const grassKg = winterGrass(problem, books, {
    ...{ perDayKg, days },
    left: context.paddocks.map((paddock) => leftOn(span, context, paddock)),
  });
  if (perDayKg * days <= grassKg) return undefined;
  const grass = quantity('Of grass meanwhile', grassKg, 'kg', winterGrassFormulas.winterGrass, [
    input('Need of a day, dry matter', perDayKg, 'kg', 'F_day'),
    input('Days', days, 'day', 'days'),
    ...(onHay.includes(true) ? [input('On hay since', context.choices.onHaySince!, 'date')] : []),
    ...(onHay.includes(false) ? [fromJudgement(left)] : []),
  ]);
  return hayOfDays(context, 'Hay from then to grass again', hayStoreFormulas.nextWinter, {
    ...{ perDayKg, days, hayPerDryKg, grass },
    until: input('Grass again about', until, 'date'),
  });
}
/**
 * Day on which herds go out in spring: of a plan that begins later, as it was told, else when what winter
 * leaves and what usually grows come to the first pass.
 */
function turnOutOf(
  { swards, usualGrowth, past, growsKgPerHa, to }: GrazingProblem,
  books: SeasonBooks,
): number | undefined {
  const [first] = books.stays;
  if (first?.start === 'turn-out') return first.from;
  let growsFrom = Infinity;
  let tallFrom = Infinity;
  swards.forEach(({ start, firstPassKgPerHa }, p) => {
    let kgPerHa = massOf(start);
    for (let day = 0; day < to && day < tallFrom; day++) {
      const grown = usualGrowth[p]![day]!;
      if (growsKgPerHa <= grown) growsFrom = Math.min(growsFrom, day);
      kgPerHa += grown;
      if (growsFrom <= day && firstPassKgPerHa <= kgPerHa) tallFrom = day;
    }
  });
  const told = past.filter((stay) => growsFrom <= stay.from).map((stay) => stay.from);
  const day = Math.min(...(told.length === 0 ? [tallFrom] : told));
  return day === Infinity ? first?.from : day;
}

/** Hay from today to the plan: what the herds need on its first day, for each day until then. */
function untilPlanOf(context: PastureContext, hayPerDryKg: number): NumberQuantity | undefined {
  const { span, herdDays, dateOf, today } = context;
  const days = daysBetween(today, dateOf(span.from));
  const perDay = herdDays.reduce((sum, { demandKg }) => sum + demandKg[span.from]!, 0);
  if (days <= 0 || perDay <= 0) return undefined;
  return hayOfDays(context, 'Hay from today until then', hayStoreFormulas.untilPlan, {
    perDayKg: perDay,
    ...{ days, hayPerDryKg },
    until: input('The plan begins on', dateOf(span.from), 'date'),
  });
}

/** Hay, as it lies in store, for so many days of one need. */
const hayOfDays = (
  context: PastureContext,
  label: string,
  formula: Formula,
  of: {
    perDayKg: number;
    days: number;
    hayPerDryKg: number;
    until: QuantityInput;
    /** Eaten of grass meanwhile. */
    grass?: NumberQuantity;
  },
): NumberQuantity =>
  quantity(
    label,
    (of.perDayKg * of.days - (of.grass?.value ?? 0)) * of.hayPerDryKg,
    'kg',
    formula,
    [
      input('Need of a day, dry matter', of.perDayKg, 'kg', 'F_day'),
      input('Days', of.days, 'day', 'days'),
      ...(of.grass?.value ? [from(of.grass, 'G')] : []),
      of.until,
      input('Hay for a kilogram eaten', of.hayPerDryKg, 'ratio'),
    ],
    { rows: [context.order, context.tables.pasture.hay] },
  );

/**
 * First day on which there is none left; undefined where it lasts or is not known.
 *
 * @param of hay for a kilogram eaten, what is fed before the plan begins, and what was baled
 */
function runsOutOn(
  context: PastureContext,
  chosen: Chosen,
  { hayPerDryKg, beforeKg, baledKg }: { hayPerDryKg: number; beforeKg: number; baledKg: number },
): number | undefined {
  const { span, choices, tables } = context;
  if (choices.hayInStoreKg === undefined) return undefined;
  const { hay } = tables.pasture;
  const home = new Map<number, number>();
  for (const { openFrom, kg } of chosen.books.cuts)
    home.set(openFrom, (home.get(openFrom) ?? 0) + (kg * hay.harvestShare) / hay.dryMatterShare);
  const fed = context.herds.map((_, h) => fedByHand(context, chosen, h));
  const storeKg = choices.hayInStoreKg + baledKg;
  let left = storeKg - beforeKg;
  if (left < 0) {
    const days = daysBetween(context.today, context.dateOf(span.from));
    return span.from - days + Math.floor((days * storeKg) / beforeKg);
  }
  for (let day = span.from; day < span.to; day++) {
    left += home.get(day) ?? 0;
    for (const kg of fed) left -= kg[day]! * hayPerDryKg;
    if (left < -1e-6) return day;
  }
  return undefined;
}

/** @param of days on which hay runs out: as it is counted, and if none was made that is taken as made */
function toBuyIssue(
  { say, dateOf, tables }: PastureContext,
  part: HayStorePart,
  of: {
    readonly runsOutDay: number | undefined;
    readonly unmadeDay: number | undefined;
    readonly today: number;
  },
): PlanIssue[] {
  const { byWinter, toBuy, balesToBuy, toBuyUnmade, balesUnmade, own, inStore, baled, taken } =
    part;
  const { runsOutDay, unmadeDay, today } = of;
  const isBought = 1 <= balesToBuy.value;
  const isUnsure = balesUnmade !== undefined && 1 <= balesUnmade.value;
  if (!isBought && !isUnsure) return [];
  const soonest = Math.min(runsOutDay ?? Infinity, unmadeDay ?? Infinity);
  const soon = soonest < today + tables.judgements.grass.haySoonDays.value;
  const about = (day: number): string => `about ${say(dateOf(day), 'date')}.`;
  const amount = (bales: NumberQuantity, kg: NumberQuantity): string =>
    bales.value < 1 ? 'nothing' : `about ${say(bales.value, 'bales')}, ${say(kg.value, 'kg')}`;
  const less = [
    inStore ? `${say(inStore.value, 'kg')} in store` : undefined,
    baled ? `${say(baled.value, 'kg')} baled already` : undefined,
    taken ? `${say(taken.value, 'kg')} taken as made` : undefined,
    own ? `${say(own.value, 'kg')} of your own` : undefined,
  ].filter((each) => each !== undefined);
  const text = [
    runsOutDay === undefined ? undefined : `Hay runs out ${about(runsOutDay)}`,
    `${isBought && byWinter ? `To buy in the usual weather: until turn-out ${amount(byWinter.balesUntilOut, byWinter.untilOut)}; from then through the next winter ${amount(byWinter.balesNextWinter, byWinter.nextWinter)}` : `To buy until there is grass again after the next winter, in the usual weather: ${amount(balesToBuy, toBuy)}`}${less.length === 0 ? '' : `, with ${less.join(' and ')} taken off`}.`,
    isUnsure
      ? `If none was made of the hay taken as made, it is ${amount(balesUnmade, toBuyUnmade!)}: look what lies in store before you count on less.`
      : undefined,
    unmadeDay === undefined || unmadeDay === runsOutDay
      ? undefined
      : `Without what is taken as made, hay runs out ${about(unmadeDay)}`,
    inStore ? undefined : 'Type what lies in store, so that it is taken off.',
    `Most years feed more: go by the bales for 8 of 10 years, which twenty years of weather are played for${isUnsure ? ', and which take that hay off, too' : ''}.`,
  ].filter((each) => each !== undefined);
  return [issue(soon ? 'act' : 'note', 'hay-to-buy', text.join(' '), [toBuy])];
}
