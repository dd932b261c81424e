import { formatMeasured, formatPrice, formatValue, type Reader } from '../units/format.js';
import type { Unit } from '../units/unit.js';
import type { CauseOfDeath } from './head-count.js';
import { sayRowChanged } from './say-row-changed.js';
import type { ToldFact } from './told-fact.js';
import { averageOf } from './weighing.js';

/** What a cause of death is called. */
export const CAUSE_WORDS: Readonly<Record<CauseOfDeath, string>> = {
  'not-known': 'not known',
  chilled: 'chilled',
  heat: 'heat',
  'piled-up': 'piled up and smothered',
  predator: 'a predator',
  sick: 'sick',
  hurt: 'hurt',
  'weak-legs': 'weak legs',
  other: 'something else',
};

export const BOUGHT_WORDS = {
  feed: 'Feed',
  bedding: 'Bedding',
  hay: 'Hay',
  minerals: 'Minerals',
  gas: 'Gas',
  other: 'Something else',
} as const;

/** What one of them is called, and more of them; bedding comes in anything. */
const SOLD_BY: Readonly<Partial<Record<keyof typeof BOUGHT_WORDS, readonly [string, string]>>> = {
  feed: ['bag', 'bags'],
  hay: ['bale', 'bales'],
  minerals: ['bag', 'bags'],
  gas: ['bottle', 'bottles'],
};

export const GONE_WORDS = { sold: 'sold', given: 'given away' } as const;
/** What became of cattle. */
export const LEFT_WORDS = {
  ...GONE_WORDS,
  died: 'died',
  'put-down': 'put down',
  slaughtered: 'slaughtered',
} as const;

/**
 * A told fact in a few words, without its day and without what it happened to.
 *
 * @param nameOf what a paddock or cow is called, by its id
 */
export function sayFact(
  fact: ToldFact,
  reader: Reader,
  nameOf: (id: string) => string | undefined,
): string {
  const say = (value: number, unit: Unit): string => formatValue(value, unit, reader);
  const birds = (n: number): string => (n === 1 ? '1 bird' : `${n} birds`);
  const money = (price: string | undefined): string =>
    price === undefined ? '' : `, ${formatPrice(price, reader.currency)}`;
  const amount = (value: number | undefined, unit: Unit, what: string): string =>
    value === undefined ? '' : `, ${say(value, unit)} ${what}`;
  switch (fact.kind) {
    case 'arrived': {
      const { birds: n, dead = 0 } = fact.details;
      return dead === 0 ? `${n} came` : `${n} came, ${dead} of them dead`;
    }
    case 'died': {
      const { birds: n, cause, isCulled } = fact.details;
      const why = cause === undefined ? '' : `: ${CAUSE_WORDS[cause]}`;
      return `${n} ${isCulled ? (n === 1 ? 'was put down' : 'were put down') : 'died'}${why}`;
    }
    case 'processed': {
      const { birds: n, liveKg, dressedKg, packs } = fact.details;
      return `${birds(n)} processed${amount(liveKg, 'kg', 'live')}${amount(dressedKg, 'kg', 'dressed')}${packs === undefined ? '' : `, ${packs} packs`}`;
    }
    case 'gone': {
      const { birds: n, how, money: paid, to } = fact.details;
      return `${birds(n)} ${GONE_WORDS[how]}${to === undefined ? '' : ` to ${to}`}${money(paid)}`;
    }
    case 'weighed':
      return `${birds(fact.details.birds)} weighed, ${say(averageOf(fact.details), 'kg')} each`;
    case 'eggs-counted': {
      const { eggs, days } = fact.details;
      return `${say(eggs, 'eggs')} in ${say(days, 'day')}`;
    }
    case 'eggs-gone':
      return `${say(fact.details.eggs, 'eggs')} ${GONE_WORDS[fact.details.how]}${money(fact.details.money)}`;
    case 'feed-opened': {
      const { bags, bagKg } = fact.details;
      return `${bags} ${bags === 1 ? 'bag' : 'bags'} opened${bagKg === undefined ? '' : ` of ${say(bagKg, 'kg')}`}`;
    }
    case 'bought': {
      const { what, name, amount: n, eachKg, money: paid, from } = fact.details;
      const each = SOLD_BY[what]?.[n === 1 ? 0 : 1];
      const of = `${each ? ` ${each}` : ''}${eachKg === undefined ? '' : ` of ${say(eachKg, 'kg')}`}`;
      return `${name ?? BOUGHT_WORDS[what]}: ${n}${of} bought${from === undefined ? '' : ` from ${from}`}${money(paid)}`;
    }
    case 'water-drunk':
      return `${say(fact.details.liters, 'L')} of water`;
    case 'brooder-seen': {
      const { underHeatC, besideC } = fact.details;
      return `${say(underHeatC, 'degC')} under the heat${besideC === undefined ? '' : `, ${say(besideC, 'degC')} beside it`}`;
    }
    case 'heat-works': {
      const { working: n } = fact.details;
      if (n === undefined) return 'the heat is mended';
      return n === 0
        ? 'the heat is out'
        : `${n} ${n === 1 ? 'heater works' : 'heaters work'} still`;
    }
    case 'rained':
      return `${say(fact.details.mm, 'mm')} of rain`;
    case 'calved': {
      const { calves, dead = 0, cowId, notInCalf } = fact.details;
      const who = cowId === undefined ? undefined : nameOf(cowId);
      if (calves + dead === 0 && notInCalf !== undefined)
        return `${who ?? (notInCalf === 1 ? '1 cow' : `${notInCalf} cows`)} not in calf`;
      return `${who === undefined ? 'Calved' : `${who} calved`}: ${calves} alive${dead === 0 ? '' : `, ${dead} dead`}`;
    }
    case 'cattle-left': {
      const { how, head, cowId, weightKg, money: paid, to } = fact.details;
      const who = (cowId === undefined ? undefined : nameOf(cowId)) ?? `${head} head`;
      return `${who} ${LEFT_WORDS[how]}${to === undefined ? '' : ` to ${to}`}${amount(weightKg, 'kg', 'live')}${money(paid)}`;
    }
    case 'treated': {
      const { product, cowId, head, meatDays, milkDays, eggDays } = fact.details;
      const who = cowId === undefined ? undefined : nameOf(cowId);
      const to = who ?? (head === undefined ? undefined : `${head} of them`);
      const wait = (days: number | undefined, what: string): string =>
        days === undefined ? '' : `, ${what} after ${say(days, 'day')}`;
      return `${product} given${to === undefined ? '' : ` to ${to}`}${wait(meatDays, 'meat')}${wait(milkDays, 'milk')}${wait(eggDays, 'eggs')}`;
    }
    case 'milked': {
      const { liters, keptOutL } = fact.details;
      return `${say(liters, 'L')} of milk${keptOutL === undefined ? '' : `, ${say(keptOutL, 'L')} of it kept out`}`;
    }
    case 'note':
      return fact.details.text ?? photoWords(fact.details.photos?.length ?? 0);
    case 'grass-reading':
      return `grass ${formatMeasured(fact.details.heightCm, 'cm', reader)}`;
    case 'ground-check':
      return fact.details.isWorkable ? 'ground dry enough' : 'ground too wet';
    case 'herd-move': {
      const { paddockId, isStill, leftHeightCm } = fact.details;
      if (isStill && paddockId !== undefined) return `still in ${nameOf(paddockId) ?? 'a paddock'}`;
      const left =
        leftHeightCm === undefined
          ? ''
          : `, ${formatMeasured(leftHeightCm, 'cm', reader)} of grass left behind them`;
      return paddockId === undefined
        ? `off grass${left}`
        : `moved to ${nameOf(paddockId) ?? 'a paddock'}${left}`;
    }
    case 'paddock-mown':
      return fact.details.isLeftLying ? 'topped' : 'mown';
    case 'row-changed':
      return sayRowChanged(fact.details, reader, nameOf);
    case 'alarm-seen':
      return 'alarm seen';
    case 'chore-done':
      return `chore done${byWhom(fact.details.doneBy)}`;
    case 'work-progress': {
      const { doneOn, doneBy, hours, struckOut } = fact.details;
      const took = hours === undefined ? '' : ` in ${say(hours, 'h')}`;
      return struckOut
        ? 'struck out'
        : doneOn === undefined
          ? `changed${took}`
          : `done${took}${byWhom(doneBy)}`;
    }
  }
}

const byWhom = (doneBy: string | undefined): string =>
  doneBy === undefined ? '' : ` by ${doneBy}`;

const photoWords = (count: number): string => (count === 1 ? 'a photo' : `${count} photos`);
