import type { Formula } from '../../explain/formula.js';
import { datedFact, input, type Quantity } from '../../explain/quantity.js';
import { issue } from '../../problems/plan-issue.js';
import { found, joined, type Findings, type Found } from '../found.js';
import { lastGrowingDay } from './autumn.js';
import { datesOf, type HerdDates } from './herd-dates.js';
import type { PastureContext } from './pasture-context.js';
import type { SeasonSward } from './season-swards.js';
import { planStockpile, type StockpilePart } from './stockpile.js';
import type { Chosen } from './surplus.js';
import { weatherUsed } from '../outside-weather.js';

export const turningFormulas = {
  ready: {
    id: 'grass-ready',
    title: 'First paddock ready',
    words:
      'First morning of the year’s growth on which a paddock that is not closed stands at its ready height, as the herds were and are planned to be: what they graze lower is ready later.',
    symbols: 'min{t: h(t) ≥ h_in}',
    sources: ['GRAZING_25', 'GRAZING_73'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

export interface TurningPart {
  readonly ready?: Quantity;
  readonly growthEnds: string;
  readonly herds: readonly HerdDates[];
  readonly stockpile?: StockpilePart;
}

/** Turn-out, calving, arrivals, the last grazing and what to shut for fall. */
export function planTurning(context: PastureContext, chosen: Chosen): Found<TurningPart> {
  const { span, grass, dateOf, tables } = context;
  const ready = firstReady(context, chosen);
  const end = lastGrowingDay(grass.swards, span, tables);
  const stockpile = planStockpile(context, end);
  const herds = context.herds.map((_, h) => datesOf(context, chosen, h));
  const part: TurningPart = {
    ...(ready === undefined
      ? {}
      : {
          ready: datedFact(
            'First paddock at its ready height',
            dateOf(ready.day),
            turningFormulas.ready,
            [
              input('Paddock', ready.name, 'text'),
              input('Ready height', ready.readyHeightCm, 'cm', 'h_in'),
              weatherUsed(context.climate),
            ],
            { rows: [context.growth] },
          ),
        }),
    growthEnds: dateOf(end),
    herds: herds.map((each) => each.part),
    ...(stockpile ? { stockpile } : {}),
  };
  return found(
    part,
    joined([
      { cautions: ['turn-out'] },
      ofLegumes(context),
      { cautions: ['nitrate-frost'] },
      ...herds,
    ]),
  );
}

/** The caution from a judged share on; more legumes than publications advise are named. */
function ofLegumes({ grass, tables, say }: PastureContext): Partial<Findings> {
  const limit = tables.pasture.bloatLegumeShare;
  const { bloatCautionShare } = tables.judgements.grass;
  const hasBloat = grass.swards.some((s) => bloatCautionShare.value <= s.forage.legumeShare.value);
  const over = grass.swards.filter((s) => limit.value < s.forage.legumeShare.value);
  return {
    cautions: hasBloat ? ['bloat'] : [],
    issues:
      over.length === 0
        ? []
        : [
            issue(
              'note',
              'legumes-over-limit',
              `${over.map(({ paddock }) => paddock.name).join(', ')}: more than ${say(limit.value, 'share')} of the stand is clover or alfalfa, the most that is advised against bloat. Never turn hungry cattle in, least of all when it is wet.`,
              [limit, ...over.map(({ forage }) => forage.legumeShare)],
            ),
          ],
  };
}

/** By the books of the days before the plan, too: once it was, it does not move on. */
function firstReady(
  { span, grass, tables }: PastureContext,
  { books }: Chosen,
): { day: number; name: string; readyHeightCm: number } | undefined {
  const growsKgPerHa = tables.judgements.grass.growsKgPerHa.value;
  const grows = ({ growth }: SeasonSward, day: number): boolean => growsKgPerHa <= growth[day]!;
  let isYear = false;
  for (let day = 1; day < span.to; day++) {
    isYear ||= grass.swards.some((each) => grows(each, day));
    if (!isYear) continue;
    for (const [p, { sward, paddock, kgPerHaCm }] of grass.swards.entries()) {
      const isReady = sward.turnInKgPerHa <= books.massKgPerHa[p]![day - 1]!;
      if (isReady && sward.isClosed[day] === 0)
        return { day, name: paddock.name, readyHeightCm: sward.turnInKgPerHa / kgPerHaCm };
    }
  }
  return undefined;
}
