import { dayOfYear, type PlainDate } from '../calendar/plain-date.js';
import { dayLengthH } from '../calendar/day-length.js';
import { dailySeries } from '../explain/daily-series.js';
import { fromRow, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { facilityOf, type Facility } from '../farm/facility.js';
import type { Farm } from '../farm/farm.js';
import { lastsByDayH, refillFormulas, roundsToFill } from '../poultry/refills.js';
import type { UsualHold } from '../tables/bird-tables.js';
import type { Round } from '../tables/task-template.js';
import type { Tables } from '../tables/tables.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';
import { refillWords } from './refill-words.js';
import { hotWaterL } from './water.js';

export type HolderKind = 'drinkers' | 'feeders';

/** Drinkers or feeders in one home of a batch, on the day on which they last shortest. */
export interface RefillPart {
  readonly kind: HolderKind;
  readonly from: PlainDate;
  /** The last day in that home. */
  readonly to: PlainDate;
  readonly home: string;
  /** The brooder; false after the move, and of chicks with their hen. */
  readonly isBrooder: boolean;
  readonly holds: NumberQuantity;
  /** Share of that day’s need. */
  readonly share: NumberQuantity;
  /** Nobody has said what they hold. */
  readonly isAssumed: boolean;
  readonly said: string;
}

interface Home {
  readonly facility: Facility | undefined;
  readonly name: string;
  readonly fromDay: number;
  /** First day that is no longer in it. */
  readonly toDay: number;
}

/** Field of the home that says it, and the unit it is in. */
export const HOLDERS = {
  drinkers: { path: 'drinkersHoldL', unit: 'L', name: 'Drinkers' },
  feeders: { path: 'feedersHoldKg', unit: 'kg', name: 'Feeders' },
} as const;

/**
 * How long drinkers and feeders of a batch last when they are full, by day, and how often they are
 * filled at least on the day on which they last shortest. Water is that of a hot day.
 *
 * @param feedKg what the flock eats, by day after arrival
 */
export function planRefills(context: PlanContext, feedKg: Float64Array): Found<RefillPart[]> {
  const homes = homesOf(context);
  const waterL = hotWaterL(context);
  const hot = dailySeries(
    'water-hot-day',
    'Drinking water on a hot day',
    'L',
    refillFormulas.hotWater,
    waterL,
    [
      { label: 'Drinking water in the day', symbol: 'V', series: 'water-day' },
      { label: 'Hot day', symbol: 'T_hot', series: 'day-hot' },
    ],
  );
  const both = (
    [
      ['drinkers', waterL, 'water-hot-day'],
      ['feeders', feedKg, 'feed-day'],
    ] as const
  ).map(([kind, need, series]) => ofKind(context, { kind, need, series, homes }));
  return found(
    both.flatMap(({ part }) => part),
    { series: [hot, ...both.flatMap((each) => each.series)] },
  );
}

function homesOf({ batch, facilities, life, brooderDays, moveOutDay }: PlanContext): Home[] {
  const brooder = facilityOf(facilities, 'brooder', batch.brooderId);
  const out =
    (batch.purpose === 'meat' ? facilityOf(facilities, 'field-pen', batch.penId) : undefined) ??
    facilityOf(facilities, 'coop', batch.coopId);
  const first = life.isUnderHen ? 'With the hen' : 'In the brooder';
  return [
    { facility: brooder, name: brooder?.name ?? first, fromDay: 0, toDay: brooderDays },
    ...(moveOutDay === undefined
      ? []
      : [
          {
            facility: out,
            name: out?.name ?? 'After the move',
            fromDay: moveOutDay,
            toDay: life.days,
          },
        ]),
  ].filter(({ fromDay, toDay }) => fromDay < toDay);
}

/** What is typed of a home; undefined where nobody has said it. */
function ownHold({ facility }: Home, kind: HolderKind): number | undefined {
  const said = facility as Partial<Record<'drinkersHoldL' | 'feedersHoldKg', number>> | undefined;
  return said?.[HOLDERS[kind].path];
}

/** After the move birds have those of grown ones. */
const usualEach = ({ rows }: UsualHold, { life, moveOutDay }: PlanContext, day: number): number => {
  const isOut = moveOutDay !== undefined && moveOutDay <= day;
  const ageDays = life.arrivalAgeDays + day;
  return (isOut ? rows.at(-1)! : (rows.findLast((row) => row.fromDay <= ageDays) ?? rows[0]!)).each;
};

function ofKind(
  context: PlanContext,
  {
    kind,
    need,
    series,
    homes,
  }: { kind: HolderKind; need: Float64Array; series: string; homes: readonly Home[] },
): Found<RefillPart[]> {
  const { tables, life } = context;
  const { unit, name } = HOLDERS[kind];
  const usual = tables.space.holds[kind];
  const homeOf = (day: number): Home | undefined =>
    homes.findLast(({ fromDay }) => fromDay <= day) ?? homes[0];
  const holds = need.map((_, day) => {
    const home = homeOf(day);
    return (home && ownHold(home, kind)) ?? life.placed * usualEach(usual, context, day);
  });
  const shares = need.map((each, day) => (0 < each ? holds[day]! / each : 0));
  const isAssumed = homes.some((home) => ownHold(home, kind) === undefined);
  const rows = isAssumed ? [usual] : [];
  return found(
    homes.flatMap((home) => worstOf(context, { kind, home, holds, shares, need })),
    {
      series: [
        dailySeries(
          `${kind}-hold`,
          `${name} hold`,
          unit,
          refillFormulas.holds,
          holds,
          [input('Birds placed', life.placed, 'count', 'N')],
          { rows },
        ),
        dailySeries(
          `${kind}-share`,
          `${name} hold, of the day’s need`,
          'share',
          refillFormulas.share,
          shares,
          [
            { label: `${name} hold`, symbol: 'H', series: `${kind}-hold` },
            { label: 'Needed in the day', symbol: 'V', series },
          ],
        ),
      ],
    },
  );
}

function worstOf(
  context: PlanContext,
  {
    kind,
    home,
    holds,
    shares,
    need,
  }: {
    kind: HolderKind;
    home: Home;
    holds: Float64Array;
    shares: Float64Array;
    need: Float64Array;
  },
): RefillPart[] {
  const { life, dateOf, tables, say } = context;
  const days = Array.from({ length: home.toDay - home.fromDay }, (_, i) => home.fromDay + i).filter(
    (day) => 0 < need[day]!,
  );
  if (days.length === 0) return [];
  const worst = days.reduce((least, day) => (shares[day]! < shares[least]! ? day : least));
  const { unit, name, path } = HOLDERS[kind];
  const own = ownHold(home, kind);
  const usual = tables.space.holds[kind];
  const held =
    own === undefined
      ? [
          input('Birds placed', life.placed, 'count', 'N'),
          fromTable(usual, 'A bird, usually', usualEach(usual, context, worst), unit, 'h'),
        ]
      : [fromRow(home.facility!, path as never, `${name} hold`, own, unit)];
  const holding = quantity(`${name} hold`, holds[worst]!, unit, refillFormulas.holds, held);
  const on = dateOf(worst);
  const isAssumed = own === undefined;
  const rounds = fillRounds(context, {
    share: shares[worst]!,
    isIn: isInBrooder(context, worst),
    on,
  });
  return [
    {
      ...{ kind, from: dateOf(home.fromDay), to: dateOf(home.toDay - 1), home: home.name },
      isBrooder: isInBrooder(context, home.fromDay),
      holds: holding,
      share: quantity(
        `${name} hold, of the day’s need`,
        shares[worst]!,
        'share',
        refillFormulas.share,
        [
          ...held,
          input('Needed in the day', need[worst]!, unit, 'V'),
          input('Date', on, 'date'),
          input('Age', life.arrivalAgeDays + worst, 'day'),
        ],
      ),
      isAssumed,
      said: refillWords({
        kind,
        share: shares[worst]!,
        ...rounds,
        holds: say(holds[worst]!, unit),
        isAssumed,
        at: ` at ${say(life.arrivalAgeDays + worst, 'day')} of age`,
      }),
    },
  ];
}

const isInBrooder = ({ life, brooderDays }: PlanContext, day: number): boolean =>
  life.hasBrooder && day < brooderDays;

const HOURS = 24;

/** How long they last by day, and the rounds on which they are filled. */
export function fillRounds(
  { farm, tables }: { readonly farm: Pick<Farm, 'latitudeDeg'>; readonly tables: Tables },
  { share, isIn, on }: { share: number; isIn: boolean; on: PlainDate },
): { lastsH: number; rounds: readonly Round[] } {
  const { latitudeDeg } = farm;
  // Under brooding light they eat and drink by night as well.
  const lightH = isIn ? HOURS : dayLengthH({ latitudeDeg, dayOfYear: dayOfYear(on) });
  const lastsH = lastsByDayH(share, lightH);
  return { lastsH, rounds: roundsToFill(lastsH, tables.judgements.birds.roundsApartH.value) };
}
