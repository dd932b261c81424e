import type { WorkConditions } from '../../farm/job.js';
import type { DaysOfWork } from './days-of-work.js';
import { isWetAhead, spellStarts } from './dry-spells.js';

/** Whether work asks anything of the weather or the ground of its days. */
export const asksForWeather = ({
  peopleNeeded: _people,
  daylight: _daylight,
  shopsOpen: _open,
  ...asks
}: WorkConditions): boolean => Object.values(asks).some((each) => each !== undefined && each);

/** Days that suit a job; undefined when it asks nothing of a day. */
export function suitsOf(
  conditions: WorkConditions,
  days: DaysOfWork,
  wetFromMm: number,
  isInOneGo = false,
): Uint8Array | undefined {
  if (!asksForWeather(conditions) && !conditions.shopsOpen) return undefined;
  const { dryDaysInRow, ...asks } = conditions;
  const asksForRun = dryDaysInRow !== undefined;
  const ofTheDay = { ...asks, noRain: asks.noRain === true || asksForRun };
  const fit = fitDays(ofTheDay, days, wetFromMm);
  if (!asksForRun) return fit;
  const inAnyRain = isInOneGo
    ? { inAnyRain: fitDays({ ...asks, noRain: false, dryGround: false }, days, wetFromMm) }
    : {};
  const spell = { runDays: dryDaysInRow, wetFromMm };
  return spellStarts({ fit, ...inAnyRain }, days, spell);
}

function fitDays(conditions: WorkConditions, days: DaysOfWork, wetFromMm: number): Uint8Array {
  const { beside } = days;
  if (!beside || !asksForAir(conditions)) return fitOnAll(conditions, days, wetFromMm);
  return knownFor(days, JSON.stringify([conditions, wetFromMm]), () =>
    byOdds(conditions, days, beside, wetFromMm),
  );
}

/** Days fit for what was asked of them, by days: much work asks the same. */
const fitKnown = new WeakMap<DaysOfWork, Map<string, Uint8Array>>();

function knownFor(days: DaysOfWork, key: string, find: () => Uint8Array): Uint8Array {
  let known = fitKnown.get(days);
  if (!known) fitKnown.set(days, (known = new Map()));
  let fit = known.get(key);
  if (!fit) known.set(key, (fit = find()));
  return fit;
}

/** Days on which all that is asked is so: what suits each of it suits the whole. */
function fitOnAll(asks: WorkConditions, days: DaysOfWork, wetFromMm: number): Uint8Array {
  const { length } = days.rainMm;
  const fit = new Uint8Array(length).fill(1);
  RULES.forEach(({ boundOf, isUnfit }, rule) => {
    const bound = boundOf(asks);
    if (bound === undefined) return;
    const one = knownFor(days, `${rule} ${bound} ${wetFromMm}`, () => {
      const of = new Uint8Array(length);
      for (let day = 0; day < length; day++) if (!isUnfit(days, day, bound, wetFromMm)) of[day] = 1;
      return of;
    });
    for (let day = 0; day < length; day++) fit[day]! &= one[day]!;
  });
  return fit;
}

const asksForAir = (asks: WorkConditions): boolean =>
  [asks.dayMaxAtLeastC, asks.dayMaxAtMostC, asks.nightMinAtLeastC, asks.nextNightMinAtLeastC].some(
    (bound) => bound !== undefined,
  );

/** Days fit by the odds of their warmth, as far as they are otherwise. */
function byOdds(
  conditions: WorkConditions,
  days: DaysOfWork,
  { years, fitFrom }: NonNullable<DaysOfWork['beside']>,
  wetFromMm: number,
): Uint8Array {
  const { dayMaxAtLeastC, dayMaxAtMostC, nightMinAtLeastC, nextNightMinAtLeastC, ...others } =
    conditions;
  const ofDays = (asked: WorkConditions, of: DaysOfWork): Uint8Array =>
    fitOnAll(asked, of, wetFromMm);
  const [asKnown, open] = [ofDays(conditions, days), ofDays(others, days)];
  const could = knownFor(days, JSON.stringify(['could', others, wetFromMm]), () =>
    sumOf(years.map((of) => ofDays(others, of))),
  );
  const does = sumOf(years.map((of) => ofDays(conditions, of)));
  return open.map((is, day) => {
    if (days.isForecast[day] === 1) return asKnown[day]!;
    return is === 1 && fitFrom[day]! * could[day]! < does[day]! ? 1 : 0;
  });
}

/** In how many of some years each day suits. */
function sumOf(years: readonly Uint8Array[]): Uint8Array {
  const sum = new Uint8Array(years[0]?.length ?? 0);
  for (const of of years) for (let day = 0; day < sum.length; day++) sum[day]! += of[day]!;
  return sum;
}

/** Why the ground of an unfit day is so: as it was found, else by the reckoning. */
export const groundUnfit = (days: DaysOfWork, day: number): string =>
  days.isLookedAt[day] === 0 && days.isWintry[day] === 1
    ? 'ground frozen or under snow'
    : 'ground too wet';

/** One thing that work can ask of a day. */
interface Rule {
  /** What it asks; undefined where it does not. */
  readonly boundOf: (asks: WorkConditions) => number | undefined;
  readonly isUnfit: (days: DaysOfWork, day: number, bound: number, wetFromMm: number) => boolean;
  readonly words: (days: DaysOfWork, day: number, bound: number) => string;
}

const whereAsked = (isAsked: boolean | undefined): number | undefined => (isAsked ? 1 : undefined);

/** In the order in which they are said. */
const RULES: readonly Rule[] = [
  {
    boundOf: ({ shopsOpen }) => whereAsked(shopsOpen),
    isUnfit: ({ isShut }, day) => isShut[day] === 1,
    words: () => 'shops and offices are closed',
  },
  {
    boundOf: ({ noRain, dryGround, dryDaysInRow }) =>
      whereAsked(noRain || dryGround || dryDaysInRow !== undefined),
    isUnfit: ({ rainMm }, day, _, wetFromMm) => wetFromMm <= rainMm[day]!,
    words: () => 'rain',
  },
  {
    boundOf: ({ dryGround }) => whereAsked(dryGround),
    isUnfit: ({ isWorkable }, day) => isWorkable[day] === 0,
    words: groundUnfit,
  },
  {
    boundOf: ({ dayMaxAtLeastC }) => dayMaxAtLeastC,
    isUnfit: ({ maxC }, day, atLeastC) => maxC[day]! < atLeastC,
    words: () => 'too cold',
  },
  {
    boundOf: ({ dayMaxAtMostC }) => dayMaxAtMostC,
    isUnfit: ({ maxC }, day, atMostC) => atMostC < maxC[day]!,
    words: () => 'too hot',
  },
  {
    boundOf: ({ soilAtLeastC }) => soilAtLeastC,
    isUnfit: ({ soilC }, day, atLeastC) => soilC[day]! < atLeastC,
    words: () => 'soil too cold',
  },
  {
    boundOf: ({ nightMinAtLeastC }) => nightMinAtLeastC,
    isUnfit: ({ minC }, day, atLeastC) => minC[day]! < atLeastC,
    words: () => 'night too cold',
  },
  {
    boundOf: ({ nextNightMinAtLeastC }) => nextNightMinAtLeastC,
    // The night after the last day is not known, and taken to be like the one before.
    isUnfit: ({ minC }, day, atLeastC) => (minC[day + 1] ?? minC[day]!) < atLeastC,
    words: () => 'next night too cold',
  },
  {
    boundOf: ({ dryDaysInRow }) => dryDaysInRow,
    isUnfit: (days, day, runDays, wetFromMm) => isWetAhead(days, day, { runDays, wetFromMm }),
    words: (_days, _day, runDays) => `rain within ${runDays} days`,
  },
];

/** What makes a day unfit for a job, in words; undefined when it suits. */
export function unfitDay(
  conditions: WorkConditions,
  days: DaysOfWork,
  day: number,
  wetFromMm: number,
): string | undefined {
  for (const { boundOf, isUnfit, words } of RULES) {
    const bound = boundOf(conditions);
    if (bound !== undefined && isUnfit(days, day, bound, wetFromMm)) return words(days, day, bound);
  }
  return undefined;
}
