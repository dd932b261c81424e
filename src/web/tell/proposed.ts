import Big from 'big.js';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { bagPrice } from '../../../shared/farm/feed-product.js';
import type { Product } from '../../../shared/farm/product.js';
import type { ToldKind } from '../../../shared/farm/told-fact.js';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { LastTold } from '../../../shared/plan/today/last-told.js';
import { minorDigits } from '../../../shared/units/format.js';

type Draft = Readonly<Record<string, unknown>>;
export type Feed = Extract<Product, { kind: 'feed' }>;

/** What is known that a number most likely is. */
export interface Known {
  readonly line?: AnimalLine | undefined;
  readonly lastTold: readonly LastTold[];
  /** Rain that is forecast of today. */
  readonly rainTodayMm?: number | undefined;
}

interface Asked extends Known {
  readonly kind: ToldKind;
  readonly about: string;
  /** What is filled in so far. */
  readonly draft: Draft;
  readonly feeds: readonly Feed[];
  readonly today: PlainDate;
  readonly currency: string;
  readonly sayDate: (on: PlainDate) => string;
}

/** Numbers that stand in a form until others are typed, and of each where it is from. */
export interface Proposal {
  readonly values: Draft;
  readonly said: Readonly<Record<string, string>>;
}

const NOTHING: Proposal = { values: {}, said: {} };
/** A price that was paid since then holds still; an older one is worth less than the list. */
const RECENT_DAYS = 60;
/** Milk of longer ago is of other grass, and of other cows. */
const MILK_DAYS = 7;

/** What is proposed of something that is told: as planned, as forecast or as it was told last. */
export function proposalOf(asked: Asked): Proposal {
  switch (asked.kind) {
    case 'eggs-counted':
      return ofEggs(asked);
    case 'water-drunk':
      return ofWater(asked);
    case 'milked':
      return ofMilk(asked);
    case 'rained':
      return ofRain(asked);
    case 'bought':
      return ofPurchase(asked);
    case 'eggs-gone':
    case 'gone':
      return ofSale(asked);
    default:
      return NOTHING;
  }
}

const proposed = (field: string, value: unknown, said: string): Proposal => ({
  values: { [field]: value },
  said: { [field]: said },
});

/** A laid egg is counted whole; of several days there are so many more. */
function ofEggs({ line, draft: { days } }: Asked): Proposal {
  if (line?.kind !== 'batch' || !line.eggs) return NOTHING;
  const perDay = Number(line.eggs.value);
  return proposed(
    'eggs',
    Math.round(perDay * (typeof days === 'number' ? days : 1)),
    'By the plan: change it to what you counted.',
  );
}

const ofWater = ({ line }: Asked): Proposal =>
  line?.kind === 'batch' && line.water
    ? proposed('liters', line.water.value, 'By the plan: change it to what you filled in.')
    : NOTHING;

function ofMilk({ line, lastTold, about, today, sayDate }: Asked): Proposal {
  const last = lastOf(lastTold, 'milked', (each) => each.about === about);
  if (last && addDays(today, -MILK_DAYS) <= last.on)
    return proposed(
      'liters',
      last.details.liters,
      `As on ${sayDate(last.on)}: change it to what you milked.`,
    );
  if (line?.kind !== 'herd' || line.milkKg === undefined) return NOTHING;
  // A liter is taken as a kilogram: nobody reads a pail closer.
  const liters = Number(line.milkKg.toPrecision(2));
  return proposed('liters', liters, 'By the plan: change it to what you milked.');
}

function ofRain({ rainTodayMm, lastTold, sayDate }: Asked): Proposal {
  if (rainTodayMm !== undefined)
    return proposed('mm', rainTodayMm, 'By the forecast: change it to what the gauge shows.');
  const last = lastOf(lastTold, 'rained', () => true);
  return last
    ? proposed(
        'mm',
        last.details.mm,
        `As on ${sayDate(last.on)}: change it to what the gauge shows.`,
      )
    : NOTHING;
}

/** What was bought last of its kind, at what it cost then; else at what the list of the place has. */
function ofPurchase({ lastTold, draft, feeds, today, currency, sayDate }: Asked): Proposal {
  const alike = (name: unknown) =>
    lastOf(
      lastTold,
      'bought',
      ({ details }) => details.what === draft['what'] && (name === ANY || details.name === name),
    );
  const last = alike('name' in draft ? draft['name'] : ANY);
  const name = 'name' in draft ? draft['name'] : last?.details.name;
  const feed = draft['what'] === 'feed' ? feeds.find((each) => each.name === name) : undefined;
  const amount = 'amount' in draft ? draft['amount'] : undefined;
  const eachKg = feed?.bagKg ?? last?.details.eachKg;
  const paid = last?.details.money === undefined ? undefined : last;
  const isRecent = paid !== undefined && addDays(today, -RECENT_DAYS) <= paid.on;
  const money = (each: Big | string): string | undefined =>
    typeof amount === 'number'
      ? new Big(each).times(amount).toFixed(minorDigits(currency))
      : undefined;
  const byList = feed && (typeof amount === 'number' ? bagPrice(feed, amount) : undefined);
  const each =
    paid && (isRecent || byList === undefined)
      ? new Big(paid.details.money!).div(paid.details.amount)
      : byList;
  const from = last?.details.from;
  return {
    values: {
      ...(name === undefined || 'name' in draft ? {} : { name }),
      ...(eachKg === undefined ? {} : { eachKg }),
      ...(each === undefined ? {} : { money: money(each) }),
      ...(from === undefined ? {} : { from }),
    },
    said: {
      ...(last && !('name' in draft) ? { name: `As on ${sayDate(last.on)}.` } : {}),
      ...(each === undefined
        ? {}
        : {
            money:
              paid && each !== byList
                ? `As paid on ${sayDate(paid.on)}: change it to what you paid.`
                : 'By your price list: change it to what you paid.',
          }),
      ...(last && from !== undefined ? { from: `As on ${sayDate(last.on)}.` } : {}),
    },
  };
}

/** As much an egg or a bird as they brought last; what is given away brings nothing. */
function ofSale({ kind, about, lastTold, draft, currency, sayDate }: Asked): Proposal {
  if (draft['how'] !== 'sold') return NOTHING;
  const last =
    kind === 'gone'
      ? lastOf(lastTold, 'gone', (each) => each.about === about)
      : lastOf(lastTold, 'eggs-gone', () => true);
  if (last?.details.money === undefined) return NOTHING;
  const [field, before] =
    last.kind === 'gone'
      ? (['birds', last.details.birds] as const)
      : (['eggs', last.details.eggs] as const);
  const now = field in draft ? draft[field] : before;
  if (typeof now !== 'number') return NOTHING;
  const as = `As on ${sayDate(last.on)}`;
  return {
    values: {
      ...(field in draft ? {} : { [field]: now }),
      money: new Big(last.details.money).div(before).times(now).toFixed(minorDigits(currency)),
    },
    said: {
      ...(field in draft ? {} : { [field]: `${as}.` }),
      money: `${as}: change it to what they brought.`,
    },
  };
}

const ANY = Symbol('any');

function lastOf<Kind extends LastTold['kind']>(
  all: readonly LastTold[],
  kind: Kind,
  isMeant: (fact: Extract<LastTold, { kind: Kind }>) => boolean,
): Extract<LastTold, { kind: Kind }> | undefined {
  return all
    .filter((each): each is Extract<LastTold, { kind: Kind }> => each.kind === kind)
    .filter(isMeant)
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
    .at(-1);
}
