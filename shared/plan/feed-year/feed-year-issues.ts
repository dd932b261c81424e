import { addDays } from '../../calendar/plain-date.js';
import type { FarmPicture } from '../../farm/picture.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { formatValue } from '../../units/format.js';
import { listed } from '../../units/listed.js';
import type { Unit } from '../../units/unit.js';
import type { FedAnimals } from './feed-animals.js';
import type { FeedKind } from './feed-kind.js';
import type { HerdPurchase } from './herd-costs.js';
import type { YearBuying } from './year-buying.js';

interface Year {
  readonly plans: FedAnimals;
  readonly year: YearBuying;
  readonly feeds: readonly FeedKind[];
  readonly herds: readonly HerdPurchase[];
}

type Say = (value: number | string, unit: Unit) => string;

/** What cannot be met, and what is not known, in words. */
export function feedYearIssues(picture: FarmPicture, all: Year): PlanIssue[] {
  const reader = { ...picture.farm, today: picture.today };
  const say: Say = (value, unit) => formatValue(value, unit, reader);
  return [
    ...shortIssues(picture, all, say),
    ...storeIssues(all, say),
    ...staleIssues(all, say),
    ...unknownIssues(all, say),
  ];
}

function shortIssues({ today }: FarmPicture, { year }: Year, say: Say): PlanIssue[] {
  const { plan, feeds, sources } = year;
  const first = new Map<number, { day: number; kg: number }>();
  for (const { item, day, kg } of plan.short) {
    const known = first.get(item);
    first.set(item, { day: known?.day ?? day, kg: (known?.kg ?? 0) + kg });
  }
  return [...first].map(([item, { day, kg }]) => {
    const { name, bought } = feeds[item]!;
    const next = Math.min(
      ...bought.map(({ source }) => {
        const open = sources[source]!.days.days.indexOf(1);
        return open < 0 ? Infinity : open;
      }),
    );
    const until =
      next === Infinity
        ? 'Nobody sells it on any day of the year: look at where you buy.'
        : `The next trip can be ${say(addDays(today, next), 'date')}. Borrow ${say(kg, 'kg')}, or go sooner.`;
    return issue(
      'act',
      'feed-short',
      `${name} runs out ${day <= 0 ? 'today' : say(addDays(today, day), 'date')}. ${until}`,
    );
  });
}

function storeIssues({ year }: Year, say: Say): PlanIssue[] {
  const { storeKg, feeds, plan, problem } = year;
  if (storeKg === Infinity) return [];
  const nowKg = feeds.reduce(
    (sum, { stock }) => sum + stock.reduce((all, { kg }) => all + kg, 0),
    0,
  );
  if (storeKg < nowKg)
    return [
      issue(
        'act',
        'store-over-now',
        `The store takes ${say(storeKg, 'kg')}, and ${say(nowKg, 'kg')} lies in it by what was told. Count the bags, or find another dry place.`,
      ),
    ];
  if (plan.overKg < LEAST_OVER_KG) return [];
  const largest = Math.max(
    ...problem.items.flatMap(({ offers }) => offers.map(({ bagKg }) => bagKg)),
  );
  const more = storeKg < largest ? 'It takes less than one bag.' : 'More trips would not help.';
  return [
    issue(
      'act',
      'store-too-small-for-year',
      `On the fullest day ${say(plan.overKg, 'kg')} finds no room in the store, which takes ${say(storeKg, 'kg')}. ${more} Find another dry place, or smaller bags.`,
    ),
  ];
}

const LEAST_OVER_KG = 0.5;

function staleIssues({ year }: Year, say: Say): PlanIssue[] {
  return year.feeds.flatMap(({ name, stock }, i) =>
    year.problem.items[i]!.stock.flatMap(({ kg, untilDay }, k) =>
      untilDay < 0
        ? [
            issue(
              'note',
              'feed-stale',
              `${say(kg, 'kg')} of ${name} from ${say(stock[k]!.on, 'date')} is too old by now: smell it before you feed it. It is not counted.`,
            ),
          ]
        : [],
    ),
  );
}

function unknownIssues({ plans, year, feeds, herds }: Year, say: Say): PlanIssue[] {
  const nobody = year.feeds.filter(({ of }) => of.feeds.length === 0).map(({ name }) => name);
  const unpriced = [
    ...feeds.filter(({ cost }) => !cost).map(({ name }) => name),
    ...herds.filter(({ cost }) => !cost).map(({ name }) => name.toLowerCase()),
  ].filter((name) => !nobody.includes(name));
  const hands = year.sources.filter(
    ({ hasNoHands, supplier }) => hasNoHands && supplier?.comes !== 'delivered',
  );
  const used = hands.filter((source) =>
    year.plan.trips.some((trip) => year.sources[trip.supplier] === source),
  );
  return [
    ...(nobody.length === 0
      ? []
      : [
          issue(
            'note',
            'feed-not-sold',
            `Nothing you buy is ${listed(nobody.map((name) => name[0]!.toLowerCase() + name.slice(1)))}. Add what you buy, so that it is on the list with its price.`,
          ),
        ]),
    ...(unpriced.length === 0
      ? []
      : [
          issue(
            'note',
            'feed-no-price',
            `The money leaves out ${listed(unpriced)}: no price is given.`,
          ),
        ]),
    ...used.map(({ name, tripH }) =>
      issue(
        'note',
        'feed-no-hands',
        `Nobody has ${say(tripH, 'h')} on any day for a trip to ${name}. The days below only go by when it is open.`,
      ),
    ),
    ...(year.unknown === 0
      ? []
      : [
          issue(
            'note',
            'feed-bought-unknown',
            `${year.unknown === 1 ? 'One purchase of feed has' : `${year.unknown} purchases of feed have`} a name that no feed of yours has, and so is not counted as in store. Give it the name of the feed in the record.`,
          ),
        ]),
    ...(plans.unplanned.length === 0
      ? []
      : [
          issue(
            'note',
            'feed-unplanned',
            `${listed(plans.unplanned)} cannot be planned, so their feed is missing here.`,
          ),
        ]),
  ];
}
