import { together } from '../../explain/quantity.js';
import { addDays, daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { Sourced } from '../../explain/formula.js';
import type { Herd } from '../../farm/herd.js';
import type { HerdDays } from '../../pasture/herd-demand.js';
import { withNamedCows, type PlannedHerd } from '../../pasture/named-cows.js';
import type { Grazing } from '../../farm/herd-places.js';
import type { GrazingProblem, Mown, Stay } from '../../pasture/grazing-problem.js';
import { formatValue } from '../../units/format.js';
import type { Unit } from '../../units/unit.js';
import { valuesOf } from '../../tables/judgements.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { lastGrowingDay, withAutumnKept } from './autumn.js';
import { withBedsClosed } from './closed-beds.js';
import { withPensClosed } from './closed-pens.js';
import { wasteOf } from './hay-waste.js';
import { keptHerdDays } from './kept-herd-days.js';
import { growthRows, orderRows } from './pasture-support.js';
import type { PastureRequest } from './pasture-request.js';
import { pastureSpan, type PastureSpan } from './pasture-span.js';
import { energyByDay } from './pasture-energy.js';
import { seasonSwards, type SeasonSward, type SeasonSwards } from './season-swards.js';
import type { DayRun } from '../../weather/day-run.js';
import { seasonWeather, type SeasonWeather } from './season-weather.js';

/** What every part of a pasture plan works from. */
export interface PastureContext extends PastureRequest {
  /** Herds with the named cows that differ from their groups taken out of them. */
  readonly herds: readonly PlannedHerd[];
  readonly span: PastureSpan;
  readonly weather: SeasonWeather;
  readonly grass: SeasonSwards;
  readonly herdDays: readonly HerdDays[];
  /** Net energy of what cattle eat on each day: of grass while it grows, else of hay. */
  readonly energyMcalPerKg: Float64Array;
  /** What growth and standing grass rest on: no date or mass that hangs on them is better. */
  readonly growth: Sourced;
  /** The same with all that the order of moves is chosen by. */
  readonly order: Sourced;
  readonly areaM2: number;
  readonly dateOf: (index: number) => PlainDate;
  readonly say: (value: number | string, unit: Unit) => string;
}

/** @param drawn weather to play the days by that nobody knows yet; left out, the usual one */
export function pastureContext(
  asked: PastureRequest,
  drawn?: (dayOfYear: Int16Array) => DayRun,
): PastureContext {
  const span = pastureSpan(asked);
  const weather = seasonWeather(asked, span, drawn);
  const kept = { ...asked, paddocks: withPensClosed(withBedsClosed(asked, span), asked) };
  const open = seasonSwards(kept, span, weather);
  const paddocks = withAutumnKept(kept, span, lastGrowingDay(open.swards, span, asked.tables));
  const { tables } = asked;
  const herds = asked.herds.map((herd) => withNamedCows(herd, asked.cows));
  const request = { ...asked, paddocks, herds };
  const { minC, maxC } = weather.expected;
  const grass = paddocks === kept.paddocks ? open : seasonSwards(request, span, weather);
  const energyMcalPerKg = energyByDay(grass.swards, span.days, tables);
  const ofGrowth = growthRows(request, weather, grass);
  const reader = { ...request.farm, today: request.today };
  return {
    ...request,
    span,
    weather,
    grass,
    energyMcalPerKg,
    growth: together(ofGrowth),
    order: together([...ofGrowth, ...orderRows(request)]),
    herdDays: herds.map((herd, h) =>
      keptHerdDays(asked.herds[h]!, herd, tables, {
        first: span.first,
        days: span.days,
        from: span.from,
        minC,
        maxC,
        hotC: weather.hotC,
        energyMcalPerKg,
      }),
    ),
    areaM2: paddocks.reduce((sum, p) => sum + p.areaM2, 0),
    dateOf: (index) => addDays(span.first, index),
    say: (value, unit) => formatValue(value, unit, reader),
  };
}

/** The season to be grazed, with head scaled and land changed where a what-if asks for it. */
export function grazingProblem(
  context: PastureContext,
  change: { headShare?: number; land?: readonly SeasonSward[] } = {},
): GrazingProblem {
  const { span, tables, herds, grass } = context;
  const land = change.land ?? grass.swards;
  const { byStayDays, rankDrop } = tables.pasture.utilisation;
  return {
    swards: land.map(({ sward }) => sward),
    usualWeather: grass.usualWeather,
    usualFrom: (paddock, day) => land[paddock]!.usualFrom(day),
    usualGrowth: land.map(({ usualGrowth }) => usualGrowth),
    growthEnds: lastGrowingDay(land, span, tables),
    hayMcalPerKg: land.map(({ forage }) => forage.energyMcalPerKg.value),
    hayEatenShare: tables.pasture.hay.harvestShare / wasteOf(context),
    mownWithinDays: mownWithinDays(tables),
    takes: context.choices.makesHay === false ? 'in-turn' : 'just-ready',
    growsKgPerHa: tables.judgements.grass.growsKgPerHa.value,
    past: pastStays(context),
    mown: toldMowings(context),
    herds: herds.map((herd, h) => ({
      demandKg: scaled(context.herdDays[h]!.grassKg, change.headShare ?? 1),
      longestStayDays: herd.longestStayDays ?? tables.pasture.longestStayDays.value,
      notBefore: herd.turnOutOn
        ? daysBetween(span.first, herd.turnOutOn)
        : Math.max(span.from, firstFitDay(context)),
      startsIn: paddockOf(context, herd),
      isSeenThere: herd.inSince !== undefined && herd.inSince <= context.today,
    })),
    from: span.from,
    to: span.to,
    harvestShare: byStayDays,
    rankDrop,
    judged: valuesOf(tables.judgements.grazing),
  };
}

/**
 * Days after the first of a go of mowing by which it is taken as done where nobody told of it: those
 * that its work may wait for dry ones, and those after which any work is taken as done.
 */
export const mownWithinDays = ({ herdTaskTemplates, judgements }: Tables): number =>
  rowById(herdTaskTemplates, 'hay.mow').mayFollowDays! + judgements.work.longPastDays.value;

/**
 * First day of the plan on which any paddock grows, as what stands before it is winter's, and on
 * which the ground is not too wet. Only measured and forecast weather says so: mean rain, a little
 * every day, would keep the ground wet all spring.
 */
export function firstFitDay({ grass, span, weather, tables }: PastureContext): number {
  const wetMm = tables.pasture.wetGround.drierThanFieldCapacityMm;
  const growsKgPerHa = tables.judgements.grass.growsKgPerHa.value;
  const isWet = (day: number): boolean =>
    weather.isKnown[day] === 1 &&
    grass.swards.every((s) => s.depletionMm !== undefined && s.depletionMm[day]! < wetMm);
  for (let day = span.from; day < span.to; day++) {
    const grows = grass.swards.some(({ growth }) => growsKgPerHa <= growth[day]!);
    if (grows && !isWet(day)) return day;
  }
  return span.from;
}

const scaled = (values: Float64Array, share: number): Float64Array =>
  share === 1 ? values : values.map((value) => value * share);

/** Where herds were and are, as it was told. */
export const toldStays = ({ herds, grazings = [] }: PastureRequest): Grazing[] =>
  herds.flatMap((herd) => {
    const own = grazings.filter(({ herdId }) => herdId === herd.id);
    const { inPaddockId, inSince } = herd;
    if (0 < own.length || inPaddockId === undefined || inSince === undefined) return own;
    return [{ herdId: herd.id, paddockId: inPaddockId, from: inSince }];
  });

/** Where herds were from day 0 to the day before the plan. */
export function pastStays(context: PastureContext): Stay[] {
  const { span, herds, paddocks } = context;
  return toldStays(context).flatMap(({ herdId, paddockId, from, to }) => {
    const first = Math.max(0, daysBetween(span.first, from));
    const end = to === undefined ? span.from : Math.min(span.from, daysBetween(span.first, to) + 1);
    const paddock = paddocks.findIndex(({ id }) => id === paddockId);
    const herd = herds.findIndex(({ id }) => id === herdId);
    return paddock === -1 || end <= first
      ? []
      : [{ herd, paddock, from: first, days: end - first }];
  });
}

/** What was told of mowing from day 0 to the plan's first day. */
function toldMowings({ span, paddocks, mowings = [] }: PastureContext): Mown[] {
  return mowings.flatMap(({ paddockId, date, isLeftLying = false }) => {
    const paddock = paddocks.findIndex(({ id }) => id === paddockId);
    const day = daysBetween(span.first, date);
    return paddock === -1 || day < 0 || span.from < day ? [] : [{ paddock, day, isLeftLying }];
  });
}

function paddockOf({ paddocks }: PastureContext, { inPaddockId }: Herd): number | undefined {
  const paddock = paddocks.findIndex(({ id }) => id === inPaddockId);
  return paddock === -1 ? undefined : paddock;
}
