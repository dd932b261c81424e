import { daysBetween, type PlainDate } from '../../calendar/plain-date.js';
import type { GroundCheck } from '../../farm/ground-check.js';
import type { Judgements } from '../../tables/judgements.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { OWN_DEFAULT, weakestMark, type Sourced } from '../../explain/formula.js';
import type { Farm } from '../../farm/farm.js';
import type { Soil } from '../../tables/pasture-tables.js';
import type { Climate } from '../../weather/climate.js';
import type { DayRun } from '../../weather/day-run.js';
import { referenceEvapotranspirationMm } from '../../weather/evapotranspiration.js';
import { soilWater, type RootZone } from '../../weather/soil-water.js';

/** Soil of the garden, or the usual one where none is given. */
const soilOf = ({ farm, tables }: { farm: Farm; tables: Tables }): Soil =>
  rowById(tables.soils, farm.gardenSoilId ?? tables.work.workableGround.usualSoilId);

/** What workable days rest on; soil and rain are assumed where nobody gave them. */
export const groundRows = ({
  farm,
  tables,
  climate,
}: {
  farm: Farm;
  tables: Tables;
  climate: Climate;
}): Sourced[] => {
  const { sources, mark } = soilOf({ farm, tables });
  const isGiven = farm.gardenSoilId !== undefined;
  return [
    tables.work.wetDay,
    tables.work.workableGround,
    { sources, mark: isGiven ? mark : weakestMark(mark, 'assumed') },
    // Without any rain known, days count as dry.
    ...(climate.meanRainMm === undefined ? [OWN_DEFAULT] : []),
  ];
};

/** How dry ground has to be, and what says so. */
export interface DryEnough {
  /** Water missing from the worked layer, mm. */
  readonly fromMm: number;
  readonly usualMm: number;
  /** Ground checks that were held against the figure. */
  readonly checks: number;
  /** The household's own record once its checks moved the figure, else the table. */
  readonly support: Sourced;
}

/** How dry the household's own ground has to be, by what it found on days of which the rain is known. */
export function dryEnough(
  { work, judgements }: Tables,
  looks: Parameters<typeof fitFromMm>[1],
): DryEnough {
  const { drierThanFieldCapacityMm: usualMm, sources, mark } = work.workableGround;
  const fromMm = fitFromMm(usualMm, looks, judgements.work);
  return {
    fromMm,
    usualMm,
    checks: looks.length,
    support: fromMm === usualMm ? { sources, mark } : { sources: [], mark: 'own-record' },
  };
}

/** The layer that is worked, as a root zone of FAO-56 with the soil of the garden. */
export function workedLayer({ farm, tables }: { farm: Farm; tables: Tables }): RootZone {
  const { layerM, kc, depletionShare } = tables.work.workableGround;
  const { fieldCapacity, wiltingPoint } = soilOf({ farm, tables });
  return { fieldCapacity, wiltingPoint, rootDepthM: layerM, depletionShare, kc };
}

/** What the household saw of its ground, in days of a run. */
interface Seen {
  readonly day: number;
  readonly isWorkable: boolean;
}

export const seenIn = (looks: readonly GroundCheck[], first: PlainDate, days: number): Seen[] =>
  looks
    .map(({ date, isWorkable }) => ({ day: daysBetween(first, date), isWorkable }))
    .filter(({ day }) => 0 < day && day < days)
    .sort((a, b) => a.day - b.day);

/**
 * Water missing from the worked layer at the end of each day, mm, by the FAO-56 balance. Where
 * the ground was looked at and found other than reckoned, the balance goes on from what was seen:
 * fit ground lacks at least the threshold; ground too wet lacks half of it, the middle of what
 * that can mean.
 */
export function layerDepletionMm(
  zone: RootZone,
  { run, dayOfYear, latitudeDeg }: { run: DayRun; dayOfYear: Int16Array; latitudeDeg: number },
  { seen, fitFromMm }: { seen: readonly Seen[]; fitFromMm: number },
): Float64Array {
  const referenceMm = referenceEvapotranspirationMm(latitudeDeg, { dayOfYear, ...run });
  const depletionMm = new Float64Array(dayOfYear.length);
  let from = 0;
  let start = 0;
  const follow = (to: number): void => {
    const part = {
      rainMm: run.rainMm.subarray(from, to),
      referenceMm: referenceMm.subarray(from, to),
    };
    depletionMm.set(soilWater(zone, part, start).depletionMm, from);
    from = to;
    start = depletionMm[to - 1] ?? 0;
  };
  for (const { day, isWorkable } of seen) {
    follow(day);
    if (isWorkable) start = Math.max(start, fitFromMm);
    else if (fitFromMm <= start) start = fitFromMm / 2;
    depletionMm[day - 1] = start;
  }
  follow(dayOfYear.length);
  return depletionMm;
}

/**
 * How dry below field capacity the household's own ground has to be, mm: the figure nearest to
 * the usual one that goes against as few of its looks as can be, between shares of it that are judged.
 * A look that asks for more than that says that the balance is off, not the figure.
 *
 * @param looks what was found, with the water missing from the layer that morning
 */
export function fitFromMm(
  usualMm: number,
  looks: readonly { readonly depletionMm: number; readonly isWorkable: boolean }[],
  { groundLeastShare, groundMostShare }: Judgements['work'],
): number {
  /** A hair more than was too wet. */
  const ABOVE = 0.1;
  const against = (mm: number): number =>
    looks.filter((look) => look.isWorkable !== mm <= look.depletionMm).length;
  const candidates = looks
    .map((look) => look.depletionMm + (look.isWorkable ? 0 : ABOVE))
    .filter(
      (mm) => groundLeastShare.value * usualMm <= mm && mm <= groundMostShare.value * usualMm,
    );
  return candidates.reduce((best, mm) => {
    const better = against(mm) - against(best);
    const isNearer = Math.abs(mm - usualMm) < Math.abs(best - usualMm);
    return better < 0 || (better === 0 && isNearer) ? mm : best;
  }, usualMm);
}
