import { daysBetween, daysOfYear, type PlainDate } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import { defaultRow, rowById, type Tables } from '../../tables/tables.js';
import type { DailyWeather } from '../../weather/climate.js';
import { runsOfYears } from '../../weather/day-run.js';
import { chanceOfDryRun, hasDryRun } from '../../weather/dry-run.js';
import { chanceBelow } from '../../weather/night-chances.js';
import { nightsOfPlace } from '../expected-nights.js';
import { placeFrost } from '../place-frost.js';
import { isLookedFor } from '../work/of-place.js';
import { gardenDates } from './garden-dates.js';
import { frostsOf, nightRows, turnsOf, type Frost } from './year-frost.js';
import { halfMonthsOf, type YearSpan } from './year-span.js';

export const yearFormulas = {
  coldNights: {
    id: 'nights-too-cold',
    title: 'Nights too cold for young birds',
    words:
      'Share of the nights of half a month that are colder than birds stand when they first go out.',
    symbols: 's = Σ P(T_night < T_rule) ÷ n',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  dryRun: {
    id: 'odds-of-dry-days',
    title: 'Odds of dry days in a row',
    words:
      'Share of years in which half a month holds as many dry days one after the other as hay needs: counted in a daily record of ten years or more, else from the usual rain and how wet days follow each other. These are odds, not a forecast.',
    symbols: 'p = P(n dry days in a row)',
    sources: ['RICHARDSON'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

type WeatherPlace = Pick<FarmPicture, 'farm' | 'climate' | 'today' | 'batches' | 'jobs'>;

/** A figure of half a month. */
export interface HalfMonth {
  readonly from: PlainDate;
  readonly until: PlainDate;
  readonly of: NumberQuantity;
}

/** The weather of a strip: what it usually is, and its odds. Nothing of it is a forecast. */
export interface YearWeather {
  /** Days with frost in most years, and those around them with frost in some. */
  readonly frosts: readonly Frost[];
  /** Last and first frosts within the strip, usual and safe. */
  readonly turns: readonly Quantity[];
  /** Soil warm enough, hives that can be opened, bloom past the frost: what the jobs ask for. */
  readonly garden: readonly Quantity[];
  /** Share of nights that are too cold for birds that first go out. */
  readonly coldNights: readonly HalfMonth[];
  /** Chance of dry days in a row; left out where no rain is known. */
  readonly dryRuns?: readonly HalfMonth[];
}

/** @param history daily record of the place, in date order; may be empty */
export function yearWeather(
  place: WeatherPlace,
  tables: Tables,
  history: readonly DailyWeather[],
  span: YearSpan,
): YearWeather {
  const frost = placeFrost(place, tables);
  const halves = halfMonthsOf(span, place.today);
  const dryRuns = dryRunsOf(place, tables, history, halves);
  return {
    frosts: frostsOf(frost, span),
    turns: turnsOf(place, tables, frost, span),
    garden: gardenDates(place, tables, span, (event) => isLookedFor(event, place.jobs)),
    coldNights: coldNightsOf(place, tables, halves),
    ...(dryRuns ? { dryRuns } : {}),
  };
}

function coldNightsOf(
  place: WeatherPlace,
  tables: Tables,
  halves: readonly YearSpan[],
): HalfMonth[] {
  const year = nightsOfPlace(place.climate, place.farm, tables);
  const { table, limitC } = youngBirdsStand(place, tables);
  return halves.map(({ from, until, days }) => {
    const nights = [...daysOfYear(from, days)];
    const sum = nights.reduce((all, day) => all + chanceBelow(year, day - 1, limitC), 0);
    return {
      from,
      until,
      of: quantity(
        'Nights too cold for young birds',
        sum / days,
        'share',
        yearFormulas.coldNights,
        [
          fromTable(table, 'What they stand when they go out', limitC, 'degC', 'T_rule'),
          input('Nights', days, 'count', 'n'),
        ],
        { rows: nightRows(tables) },
      ),
    };
  });
}

/** The low that birds of this farm stand when they first go out: of those who stand the least. */
function youngBirdsStand({ batches }: WeatherPlace, { strains, moveOut }: Tables) {
  const tables = batches.map(({ strainId }) =>
    rowById(moveOut, rowById(strains, strainId).moveOut),
  );
  return (0 < tables.length ? tables : moveOut.slice(0, 1))
    .map((table) => ({ table, limitC: defaultRow(table.rules).nightLowC }))
    .reduce((a, b) => (a.limitC < b.limitC ? b : a));
}

function dryRunsOf(
  { climate }: WeatherPlace,
  tables: Tables,
  history: readonly DailyWeather[],
  halves: readonly YearSpan[],
): HalfMonth[] | undefined {
  const { meanRainMm } = climate;
  const { fewestYears } = tables.judgements.work;
  const { dryingDays } = tables.judgements.grazing;
  const { wetDay } = tables.work;
  if (!meanRainMm) return undefined;
  const first = halves[0]!.from;
  const measured = runsOfYears(history, first, daysBetween(first, halves.at(-1)!.until));
  const isMeasured = fewestYears.value <= measured.length;
  return halves.map(({ from, until, days }) => {
    const start = daysBetween(first, from);
    const isDry = ({ rainMm }: { rainMm: Float64Array }): boolean =>
      hasDryRun(rainMm.subarray(start, start + days), dryingDays.value, wetDay.rainMm);
    const chance = isMeasured
      ? measured.filter(isDry).length / measured.length
      : chanceOfDryRun(
          [...daysOfYear(from, days)].map((day) => meanRainMm[day - 1]!),
          dryingDays.value,
          wetDay,
        );
    return {
      from,
      until,
      of: quantity(`${dryingDays.value} dry days in a row`, chance, 'chance', yearFormulas.dryRun, [
        fromJudgement(dryingDays, 'n'),
        input('Days', days, 'day'),
        isMeasured
          ? input('Years of your record', measured.length, 'count')
          : fromTable(wetDay, 'Rain of a wet day', wetDay.meanRainMm, 'rainMm'),
      ]),
    };
  });
}
