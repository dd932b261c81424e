import { addDays, daysBetween, daysOfYear, type PlainDate } from '../calendar/plain-date.js';
import type { DailySeries } from '../explain/daily-series.js';
import { expectedWeather, type DailyWeather } from '../weather/climate.js';
import { ownFeedOf, ownFeedOfHens } from './feed-opened.js';
import { birdWordsOf, type BirdWords } from './bird-words.js';
import { layDaysOf, type LayDays } from './lay-days.js';
import { feedOfHens } from './feed-of-hens.js';
import { lifeOf, type Life } from './life.js';
import type { DatedPhase } from './feed-phases.js';
import { phasesFed } from './last-feed.js';
import { expectedNights, nightsOfPlace } from './expected-nights.js';
import { goesBy } from './move-out.js';
import { formatValue } from '../units/format.js';
import type { Unit } from '../units/unit.js';
import type { MoveOutRule } from '../tables/bird-tables.js';
import type { NightSurety } from '../tables/night-table.js';
import type { Nights } from '../weather/night-chances.js';
import { tablesForStrain } from '../tables/for-kind.js';
import type { PlanRequest } from './request.js';

/** What every section of a plan works from. */
export interface PlanContext extends PlanRequest {
  readonly life: Life;
  /** What the young are called, in all that is said of them. */
  readonly words: BirdWords;
  /** Undefined for a batch that is not for eggs. */
  readonly lay: LayDays | undefined;
  readonly phases: readonly DatedPhase[];
  readonly dayOfYear: Int16Array;
  readonly weather: ReturnType<typeof expectedWeather>;
  readonly nights: Nights;
  readonly moveOutRule: MoveOutRule;
  readonly nightSurety: NightSurety;
  readonly moveOutDay: number | undefined;
  /** Days they would have had outdoors, where those are too few to be worth a move. */
  readonly tooFewDaysOut?: number;
  /** Last day index in the brooder, exclusive: the move, or the end when there is none. */
  readonly brooderDays: number;
  readonly dateOf: (dayIndex: number) => PlainDate;
  /** A number or date as this farm reads it, for sentences. */
  readonly say: (value: number | string, unit: Unit) => string;
}

/** @param keptToAgeDays of meat birds; by their weight or age when left out */
export function contextTo(asked: PlanRequest, keptToAgeDays?: number): PlanContext {
  const tables = tablesForStrain(asked.tables, asked.batch.strainId);
  const request = tables === asked.tables ? asked : { ...asked, tables };
  return withHensFeed(withOwnFeed(contextOf(request, keptToAgeDays)));
}

/** The same batch, with the feed of its growing birds as the bags say. Water is not corrected. */
function withOwnFeed(context: PlanContext): PlanContext {
  const { feedOpenings = [], life } = context;
  const ownFeed = feedOpenings.length === 0 ? undefined : ownFeedOf(context, feedOpenings);
  if (!ownFeed) return context;
  const scaled = (kg: Float64Array): Float64Array => kg.map((each) => each * ownFeed.factor);
  return {
    ...context,
    life: {
      ...life,
      ownFeed,
      flockFeedKg: scaled(life.flockFeedKg),
      cockerelFeedKg: scaled(life.cockerelFeedKg),
    },
  };
}

/** The same batch, with the feed of its hens as the bags say that were opened since the first egg. */
function withHensFeed(context: PlanContext): PlanContext {
  const { feedOpenings = [], life, lay, batch } = context;
  if (!lay) return context;
  const firstEgg = addDays(batch.arrivalDate, lay.firstDay);
  if (!feedOpenings.some(({ date }) => firstEgg <= date)) return context;
  const { kg } = feedOfHens(context, lay.firstDay, lay.hens.length);
  // Cockerels that are still there eat of the same bags.
  const flockKg = kg.map((hens, k) => hens + (life.cockerelFeedKg[lay.firstDay + k] ?? 0));
  const hensFeed = ownFeedOfHens(context, feedOpenings, flockKg);
  return hensFeed ? { ...context, life: { ...life, hensFeed } } : context;
}

function contextOf(request: PlanRequest, keptToAgeDays: number | undefined): PlanContext {
  const { batch, tables, weighings = [], headChanges, eggCounts, today } = request;
  const conditions = { weighings, headChanges, eggCounts, today, keptToAgeDays };
  const usual = lifeOf(batch, tables, conditions);
  const first = aroundLife(request, usual);
  // Growing birds outdoors answer to the air: worked out once the day of the move is known.
  const outdoorC = outdoorAir(first, usual);
  if (!outdoorC) return first;
  const life = lifeOf(batch, tables, { ...conditions, outdoorC });
  return life.days === usual.days ? { ...first, life } : aroundLife(request, life);
}

/**
 * Average air of each day outdoors; undefined when there is none. A target can lie past the plan's.
 * From the first egg on the air is in the feed and the lay of hens, and not counted again.
 */
function outdoorAir(
  { moveOutDay, weather }: PlanContext,
  { days, arrivalAgeDays, firstEggAgeDays = Infinity }: Life,
): Float64Array | undefined {
  if (moveOutDay === undefined) return undefined;
  return Float64Array.from({ length: Math.min(days, firstEggAgeDays - arrivalAgeDays) }, (_, i) =>
    i < moveOutDay ? Number.NaN : (weather.minC[i]! + weather.maxC[i]!) / 2,
  );
}

function aroundLife(request: PlanRequest, life: Life): PlanContext {
  const { arrivalDate } = request.batch;
  const dayOfYear = daysOfYear(arrivalDate, life.days);
  const forecastByIndex = forecastIndex(request.climate.forecast, arrivalDate, life.days);
  const weather = expectedWeather(
    request.climate,
    forecastByIndex ? { dayOfYear, forecastByIndex } : { dayOfYear },
  );
  const nights = expectedNights(
    nightsOfPlace(request.climate, request.farm, request.tables),
    dayOfYear,
    request.climate.forecast,
    { today: request.today, arrivalDate, tables: request.tables },
  );
  const count = request.tables.judgements.birds.moveOutNights.value;
  const first = { nights, count };
  const {
    rule: moveOutRule,
    surety: nightSurety,
    day: moveOutDay,
    tooFewDaysOut,
  } = goesBy(request.batch, life, request.tables, first);
  const reader = { ...request.farm, today: request.today };
  return {
    ...request,
    life,
    words: birdWordsOf(request.tables, request.batch),
    lay: layDaysOf(request.batch, life, request),
    phases: phasesFed(request, life),
    dayOfYear,
    weather,
    nights,
    moveOutRule,
    nightSurety,
    moveOutDay,
    ...(tooFewDaysOut === undefined ? {} : { tooFewDaysOut }),
    brooderDays: moveOutDay ?? life.days - 1,
    dateOf: (dayIndex) => addDays(arrivalDate, dayIndex),
    say: (value, unit) => formatValue(value, unit, reader),
  };
}

function forecastIndex(
  forecast: readonly DailyWeather[] | undefined,
  arrivalDate: PlainDate,
  days: number,
): ReadonlyMap<number, DailyWeather> | undefined {
  if (!forecast || forecast.length === 0) return undefined;
  const byIndex = new Map<number, DailyWeather>();
  for (const day of forecast) {
    const index = daysBetween(arrivalDate, day.date);
    if (0 <= index && index < days) byIndex.set(index, day);
  }
  return byIndex;
}

/** Whether meat birds are kept past their growth table: said once for a plan, and of those days. */
export const isPastTable = ({ batch, life }: PlanContext): boolean =>
  batch.purpose === 'meat' && life.lastTableAgeDays < life.lastAgeDays;

/** Said of a day's weight or feed from the first day past the growth table on. */
export function outsideFromDay(context: PlanContext): DailySeries['outside'] {
  if (!isPastTable(context)) return undefined;
  const { lastTableAgeDays, arrivalAgeDays } = context.life;
  return {
    fromDay: lastTableAgeDays - arrivalAgeDays + 1,
    text: `The growth table ends at ${lastTableAgeDays} days of age.`,
  };
}
