import { daysBetween } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import type { Batch } from '../farm/batch.js';
import { normalQuantile } from '../maths/normal.js';
import type { MoveOutRule } from '../tables/bird-tables.js';
import type { NightSurety } from '../tables/night-table.js';
import { defaultRow, rowById, type Tables } from '../tables/tables.js';
import { chanceBelow, chanceOfColdNight, type Nights } from '../weather/night-chances.js';
import type { Life } from './life.js';

export const moveOutFormulas = {
  moveOut: {
    id: 'move-out-date',
    title: 'First day out of the brooder',
    words:
      'First day from the rule’s age on, from which each of the first nights is warm enough for birds of its age as often as the household wants: its average low lies that far above what they stand. Single nights are what chicks meet; half of them are colder than the average. Fully feathered birds stand colder nights in a dry shelter (a planning guess). Wind and rain are not in it.',
    symbols: 'min{t ≥ age: T_night − z·SD ≥ T_rule, t … t + n − 1}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  onArrival: {
    id: 'into-the-coop',
    title: 'Day into the coop',
    words:
      'Started pullets are feathered: they go into their coop on the day they come, without a brooder and without heat.',
    symbols: 't_in = t_arrival',
    sources: [],
    mark: 'computed',
  },
  coldNight: {
    id: 'move-out-cold-night',
    title: 'Chance of a night that is too cold',
    words:
      'Chance that at least one of the first nights falls below what birds of that age stand. Nights follow each other: a warm week stays warm, so it is less than for nights that know nothing of each other.',
    symbols: 'p = 1 − P(T_t ≥ T_rule) · Π P(T_i, T_i+1 ≥ T_rule) ÷ P(T_i ≥ T_rule)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  coldNights: {
    id: 'move-out-cold-nights',
    title: 'Nights that are too cold',
    words:
      'Chances of each of the first nights to fall below what birds of that age stand, added up: so many of them are too cold in an average year.',
    symbols: 'n = Σ Φ((T_rule − T_night) ÷ SD)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  harden: {
    id: 'harden-off-from',
    title: 'Day to begin hardening off',
    words:
      'Some days before the move: heat off by day, then at night, and short outings in dry, still weather. Chicks that had two cool spells early died half as often in later cold (trial at 15 °C).',
    symbols: 't_out − n',
    sources: ['HARDENING_TRIAL'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

export function moveOutRuleOf(batch: Batch, life: Life, tables: Tables): MoveOutRule {
  const { rules } = rowById(tables.moveOut, life.strain.moveOut);
  const rule =
    batch.moveOutRuleId === undefined ? defaultRow(rules) : rowById(rules, batch.moveOutRuleId);
  if (!life.isUnderHen) return rule;
  // The hen keeps them warm until she leaves them.
  return { ...rule, fromDay: Math.max(rule.fromDay, tables.hatching.withHen.days) };
}

/** How sure each of the first nights must be warm enough: as chosen, else as is usual. */
export const nightSuretyOf = ({ nightSuretyId }: Batch, { nights }: Tables): NightSurety =>
  nightSuretyId === undefined
    ? defaultRow(nights.surety.choices)
    : rowById(nights.surety.choices, nightSuretyId);

/** What a move is held against: the nights to come, and how many of them are asked. */
export interface FirstNights {
  readonly nights: Nights;
  /** How many nights after the move are looked at. */
  readonly count: number;
}

/** What a batch goes out by. */
export interface GoesBy {
  readonly rule: MoveOutRule;
  readonly surety: NightSurety;
  readonly day: number | undefined;
  /** Days they would have had outdoors, where those are too few to be worth a move. */
  readonly tooFewDaysOut?: number;
}

/**
 * What a batch goes out by: what the household chose, else the surest way that keeps the birds no
 * longer than some days past the age from which they may, else the way that has them out first.
 * Cold nights of it are met with a tarp and heat at hand, not with weeks more in a brooder.
 */
export function goesBy(batch: Batch, life: Life, tables: Tables, first: FirstNights): GoesBy {
  const chosen = {
    rule: moveOutRuleOf(batch, life, tables),
    surety: nightSuretyOf(batch, tables),
  };
  const dayOf = (rule: MoveOutRule, { share }: NightSurety): number | undefined =>
    moveOutIndex(batch, life, rule, first, share);
  const dated = (way: Pick<GoesBy, 'rule' | 'surety'>): GoesBy => ({
    ...way,
    day: dayOf(way.rule, way.surety),
  });
  const isChosen = batch.moveOutRuleId !== undefined || batch.nightSuretyId !== undefined;
  if (isChosen || batch.moveOutDate !== undefined || life.isStarted) return dated(chosen);
  const { mostHeldDays, leastDaysOut } = tables.judgements.birds;
  const latest = Math.max(0, chosen.rule.fromDay - life.arrivalAgeDays) + mostHeldDays.value;
  let best: GoesBy | undefined;
  for (const way of unchosenWays(batch, life, tables, chosen)) {
    const next = dated(way);
    if (next.day !== undefined && next.day <= latest) {
      if (next.rule.takes === undefined) return next;
      // Nobody said that these are hardened: they grow their feathers first, while nights allow it.
      const fromDay = latest + life.arrivalAgeDays;
      return dayOf({ ...next.rule, fromDay }, next.surety) === latest
        ? { ...next, day: latest }
        : next;
    }
    if ((next.day ?? Infinity) < (best?.day ?? Infinity)) best = next;
  }
  if (best?.day === undefined) return { ...chosen, day: undefined };
  const daysOut = life.days - 1 - best.day;
  return batch.purpose === 'meat' && daysOut < leastDaysOut.value
    ? { ...best, day: undefined, tooFewDaysOut: daysOut }
    : best;
}

/** The ways a household that chose none can go by, the surest first; heat out there it must choose. */
function unchosenWays(
  batch: Batch,
  life: Life,
  tables: Tables,
  usual: Pick<GoesBy, 'rule' | 'surety'>,
): Pick<GoesBy, 'rule' | 'surety'>[] {
  const { choices } = tables.nights.surety;
  const bolder = choices
    .filter(({ share }) => 0 < share && share < usual.surety.share)
    .sort((a, b) => b.share - a.share)
    .map((surety) => ({ rule: usual.rule, surety }));
  const ofTheirOwn = rowById(tables.moveOut, life.strain.moveOut)
    .rules.filter(({ takes }) => takes !== undefined)
    .map(({ id }) => ({
      rule: moveOutRuleOf({ ...batch, moveOutRuleId: id }, life, tables),
      surety: usual.surety,
    }));
  return [usual, ...bolder, ...ofTheirOwn];
}

/**
 * Day index (after arrival) of the move, or undefined when no nights are warm enough in time.
 * A date the household fixed wins.
 *
 * @param share in which each of the first nights must be warm enough, 0.01 to 0.99; 0 asks no night
 */
export function moveOutIndex(
  batch: Batch,
  life: Life,
  rule: MoveOutRule,
  first: FirstNights,
  share: number,
): number | undefined {
  // Grown birds go into their home on the day they come, whatever the night.
  if (life.isStarted) return 0;
  if (batch.moveOutDate !== undefined) {
    const fixed = daysBetween(batch.arrivalDate, batch.moveOutDate);
    return fixed < life.days ? fixed : undefined;
  }
  const z = zOf(share);
  const { lowC, sdC } = first.nights;
  const earliest = Math.max(0, rule.fromDay - life.arrivalAgeDays);
  // Days in a row, up to this one, whose nights are warm enough.
  let held = 0;
  for (let i = earliest; i < life.days; i++) {
    const isWarm =
      share === 0 || nightLowAt(rule, life.arrivalAgeDays + i) <= lowC[i]! - z * sdC[i]!;
    held = isWarm ? held + 1 : 0;
    if (held === first.count || (0 < held && i === life.days - 1)) {
      const moved = i - held + 1;
      return moved < life.days - 1 ? moved : undefined;
    }
  }
  return undefined;
}

const quantiles = new Map<number, number>();
/** Standard deviations below the average that a share of nights stays above. */
function zOf(share: number): number {
  let z = quantiles.get(share);
  if (z === undefined) quantiles.set(share, (z = normalQuantile(share)));
  return z;
}

/** Chance that at least one of the first nights from a day on is too cold for birds of its age. */
export const chanceOfColdFirstNights = (
  life: Life,
  rule: MoveOutRule,
  { nights, count }: FirstNights,
  day: number,
  { nights: { likeness } }: Tables,
): number =>
  chanceOfColdNight(
    nights,
    { from: day, to: Math.min(day + count, life.days) },
    (night) => nightLowAt(rule, life.arrivalAgeDays + night),
    likeness.value,
  );

/** Chance of a night, by days after arrival, to be too cold for birds of its age. */
export const chanceOf = (life: Life, rule: MoveOutRule, nights: Nights, night: number): number =>
  chanceBelow(nights, night, nightLowAt(rule, life.arrivalAgeDays + night));

/** How many of the first nights from a day on are too cold for birds of their age, on average. */
export function coldFirstNights(
  life: Life,
  rule: MoveOutRule,
  { nights, count }: FirstNights,
  day: number,
): number {
  let sum = 0;
  for (let night = day; night < Math.min(day + count, life.days); night++)
    sum += chanceOf(life, rule, nights, night);
  return sum;
}

/** Chance of each night from the move on to be too cold for birds of its age; 0 before it. */
export const coldNightByDay = (
  life: Life,
  rule: MoveOutRule,
  nights: Nights,
  moveDay: number,
): Float64Array =>
  Float64Array.from({ length: life.days }, (_, night) =>
    night < moveDay ? 0 : chanceOf(life, rule, nights, night),
  );

/** Night low that the rule asks for at an age: fully feathered birds in a dry shelter stand more. */
export function nightLowAt(rule: MoveOutRule, ageDays: number): number {
  return rule.later.findLast((row) => row.fromDay <= ageDays)?.nightLowC ?? rule.nightLowC;
}

/** Whether the rule's night low at an age is that for older birds. */
export const isLaterRule = (rule: MoveOutRule, ageDays: number): boolean =>
  rule.later.some((row) => row.fromDay <= ageDays);
