import type { Formula } from '../../explain/formula.js';
import {
  fromTable,
  input,
  quantity,
  together,
  type NumberQuantity,
} from '../../explain/quantity.js';
import type { FarmPicture } from '../../farm/picture.js';
import { seededRandom } from '../../schedule/random.js';
import type { Tables } from '../../tables/tables.js';
import { drawnRun } from '../../weather/drawn-year.js';
import { seasonFeed } from './season-feed.js';
import { chooseMoves } from './surplus.js';
import { pastureContext } from './pasture-context.js';
import { pastureOfFarm } from './pasture-of-farm.js';

export const grassYearsFormulas = {
  fed: {
    id: 'fed-in-years',
    title: 'Fed by hand, by years of weather',
    words:
      'The season walked in years of weather that are drawn from what is usual there, day after day. Each move is decided by what is known on its morning: what stands, and the usual growth of the days to come, never the weather that the year will bring. The drawn days follow each other, but whole dry months come seldomer than in truth, so that bad years are worse than this.',
    symbols: 'F_p: F(year) ≤ F_p in p of the years',
    sources: ['RICHARDSON', 'JOUVEN_2006'],
    mark: 'estimate',
  },
} satisfies Record<string, Formula>;

/** Said wherever the years stand. */
export const GRASS_YEARS =
  'Years are drawn day by day from what is usual here, and each move is decided by what is known on its morning. A plan by the usual weather feeds less than most years do: real rain comes in showers and gaps.';

/** What a season feeds by hand in so many drawn years. */
export interface GrassYears {
  readonly years: number;
  /** Enough in five, eight and nine of ten years, dry matter. */
  readonly fed: readonly { readonly inTen: number; readonly kg: NumberQuantity }[];
  readonly mown: NumberQuantity;
  /** Days on which the herds are short on grass, in the middle year and in the worst of ten. */
  readonly shortDays: NumberQuantity;
}

const YEARS = 20;
const SEED = 20_06;
const TENTHS = [5, 8, 9] as const;

/**
 * A farm's season in years of weather as they unfold.
 *
 * @throws FieldError as `planPasture` does
 */
export function grassYears(picture: FarmPicture, tables: Tables, years = YEARS): GrassYears {
  const request = pastureOfFarm(picture, tables);
  const random = seededRandom(SEED);
  const { work } = tables;
  const habit = { ...work.wetDay, dayToDay: work.dayToDay.value };
  const seasons = Array.from({ length: years }, () => {
    const context = pastureContext(request, (dayOfYear) =>
      drawnRun(request.climate, dayOfYear, habit, random),
    );
    const { books } = chooseMoves(context);
    const { allKg, shortDays } = seasonFeed(context, books);
    const mownKg = books.cuts.reduce((sum, { kg }) => sum + kg, 0);
    return { fedKg: allKg, shortDays, mownKg, rows: context.order };
  });
  const at = (of: (season: (typeof seasons)[number]) => number, inTen: number): number => {
    const sorted = seasons.map(of).sort((a, b) => a - b);
    return sorted[Math.min(years - 1, Math.ceil((inTen / 10) * years) - 1)]!;
  };
  const rows = [together([seasons[0]!.rows, work.wetDay, work.dayToDay])];
  const inputs = [
    input('Years drawn', years, 'count'),
    fromTable(work.dayToDay, 'Likeness of one day to the last', work.dayToDay.value, 'share'),
  ];
  const of = (label: string, value: number, unit: 'kg' | 'day'): NumberQuantity =>
    quantity(label, value, unit, grassYearsFormulas.fed, inputs, { rows });
  return {
    years,
    fed: TENTHS.map((inTen) => ({
      inTen,
      kg: of(
        `Feed by hand that does in ${inTen} of 10 years, dry matter`,
        at((s) => s.fedKg, inTen),
        'kg',
      ),
    })),
    mown: of(
      'Mown for hay in the middle year, dry matter',
      at((s) => s.mownKg, 5),
      'kg',
    ),
    shortDays: of(
      'Days short on grass in the worst of ten',
      at((s) => s.shortDays, 9),
      'day',
    ),
  };
}
