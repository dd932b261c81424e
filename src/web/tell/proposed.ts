import Big from 'big.js';
import { addDays, type PlainDate } from '../../../shared/calendar/plain-date.js';
import { bagPrice } from '../../../shared/farm/feed-product.js';
import type { Product } from '../../../shared/farm/product.js';
import type { ToldKind } from '../../../shared/farm/told-fact.js';
import type { AnimalLine } from '../../../shared/plan/today/animal-lines.js';
import type { LastTold } from '../../../shared/plan/today/last-told.js';
import { asRead } from '../../../shared/units/as-read.js';
import { minorDigits } from '../../../shared/units/format.js';
import type { UnitSystem } from '../../../shared/units/unit.js';

type Draft = Readonly<Record<string, unknown>>;
export type Feed = Extract<Product, { kind: 'feed' }>;

/** What is known that a number most likely is. */
export interface Known {
  readonly line?: AnimalLine | undefined;
  /** Rain that is forecast of today. */
  readonly rainTodayMm?: number | undefined;
}

interface Asked extends Known {
  readonly kind: ToldKind;
  readonly about: string;
  readonly lastTold: readonly LastTold[];
  /** What is filled in so far. */
  readonly draft: Draft;
  readonly feeds: readonly Feed[];
  readonly today: PlainDate;
  /** The day that is told; undefined while none is chosen. */
  readonly on: PlainDate | undefined;
  readonly holds: HoldsDays;
  readonly units: UnitSystem;
  readonly currency: string;
  readonly sayDate: (on: PlainDate) => string;
}

/** Numbers that stand in a form until others are typed, and of each where it is from. */
export interface Proposal {
  readonly values: Draft;
  readonly said: Readonly<Record<string, string>>;
}

/** For how many days what was told last still says what the next is like. */
export interface HoldsDays {
  /** A price that was paid; an older one is worth less than the list. */
  readonly price: number;
  /** Milk of longer ago is of other grass, and of other cows. */
  readonly milk: number;
}

export const NOTHING: Proposal = { values: {}, said: {} };

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

const ofWater = ({ line, units }: Asked): Proposal =>
  line?.kind === 'batch' && line.water
    ? proposed(
        'liters',
        asRead(Number(line.water.value), 'L', units),
        'By the plan: change it to what you filled in.',
      )
    : NOTHING;

function ofMilk({ line, lastTold, about, on, holds, units, sayDate }: Asked): Proposal {
  const isNear = (last: PlainDate): boolean =>
    on !== undefined && addDays(on, -holds.milk) <= last && last <= on;
  const last = lastOf(lastTold, 'milked', (each) => each.about === about && isNear(each.on));
  if (last)
    return proposed(
      'liters',
      last.details.liters,
      `As on ${sayDate(last.on)}: change it to what you milked.`,
    );
  if (line?.kind !== 'herd' || line.milkKg === undefined) return NOTHING;
  // A liter is taken as a kilogram: nobody reads a pail closer.
  const liters = asRead(line.milkKg, 'L', units);
  return proposed('liters', liters, 'By the plan: change it to what you milked.');
}

/** What fell on another day is no forecast any more, and what the gauge held then was emptied. */
function ofRain({ rainTodayMm, today, on, units }: Asked): Proposal {
  if (rainTodayMm === undefined || on !== today) return NOTHING;
  const mm = asRead(rainTodayMm, 'mm', units);
  return mm === 0 && 0 < rainTodayMm
    ? NOTHING
    : proposed('mm', mm, 'By the forecast: change it to what the gauge shows.');
}

/** What was bought last of its kind, at what it cost then; else at what the list of the place has. */
function ofPurchase(asked: Asked): Proposal {
  const { lastTold, draft, feeds, currency, sayDate } = asked;
  const alike = (name: unknown) =>
    lastOf(
      lastTold,
      'bought',
      ({ details }) => details.what === draft['what'] && (name === ANY || details.name === name),
    );
  const last = alike('name' in draft ? draft['name'] : ANY);
  const name = 'name' in draft ? draft['name'] : last?.details.name;
  // Of what has neither a kind nor a name nobody knows that it is the same thing.
  if (name === undefined && draft['what'] === 'other') return NOTHING;
  const feed = draft['what'] === 'feed' ? feeds.find((each) => each.name === name) : undefined;
  const eachKg = feed?.bagKg ?? last?.details.eachKg;
  const amount = draft['amount'];
  const each =
    typeof amount === 'number'
      ? priceOf(last, feed, {
          ...asked,
          amount,
          eachKg: 'eachKg' in draft ? draft['eachKg'] : eachKg,
        })
      : undefined;
  const from = last?.details.from;
  return {
    values: {
      ...(name === undefined || 'name' in draft ? {} : { name }),
      ...(eachKg === undefined ? {} : { eachKg }),
      ...(each && typeof amount === 'number'
        ? { money: new Big(each.price).times(amount).toFixed(minorDigits(currency)) }
        : {}),
      ...(from === undefined ? {} : { from }),
    },
    said: {
      ...(last && !('name' in draft) ? { name: `As on ${sayDate(last.on)}.` } : {}),
      ...(each
        ? {
            money: each.paidOn
              ? `As paid on ${sayDate(each.paidOn)}: change it to what you paid.`
              : 'By your price list: change it to what you paid.',
          }
        : {}),
      ...(last && from !== undefined ? { from: `As on ${sayDate(last.on)}.` } : {}),
    },
  };
}

/** What one of them costs: a bag of another size has another price, also by its weight. */
function priceOf(
  last: Purchase | undefined,
  feed: Feed | undefined,
  {
    amount,
    eachKg,
    today,
    holds,
  }: Pick<Asked, 'today' | 'holds'> & { readonly amount: number; readonly eachKg: unknown },
): { readonly price: Big | string; readonly paidOn?: PlainDate } | undefined {
  const byList = feed && feed.bagKg === eachKg ? bagPrice(feed, amount) : undefined;
  const isPaid =
    last?.details.money !== undefined &&
    last.details.eachKg === eachKg &&
    // Of more bags, or fewer, the list has another price: then what was paid is none of these.
    (feed === undefined || bagPrice(feed, last.details.amount) === bagPrice(feed, amount)) &&
    (byList === undefined || addDays(today, -holds.price) <= last.on);
  if (isPaid)
    return { price: new Big(last.details.money!).div(last.details.amount), paidOn: last.on };
  return byList === undefined ? undefined : { price: byList };
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

type Purchase = Extract<LastTold, { kind: 'bought' }>;

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
