import { markOfBlend, OWN_DEFAULT, type Sourced } from '../../explain/formula.js';
import { forageEnergyFormulas } from '../../pasture/forage-energy.js';
import { boughtHay } from '../../pasture/hay.js';
import { groupsOf } from '../../pasture/grass-kind.js';
import { swardFormulas } from '../../pasture/sward-day.js';
import { rowById } from '../../tables/tables.js';
import type { CattleGroup, Herd } from '../../farm/herd.js';
import type { PastureRequest } from './pasture-request.js';
import type { SeasonSward, SeasonSwards } from './season-swards.js';
import type { SeasonWeather } from './season-weather.js';

const OWN: Sourced = { sources: [], mark: 'own-record' };

/** What the growth of all paddocks rests on, and what stands in them. */
export function growthRows(
  { tables }: PastureRequest,
  weather: SeasonWeather,
  grass: Pick<SeasonSwards, 'swards' | 'pairs'>,
): Sourced[] {
  return [
    swardFormulas.growth,
    tables.pasture.nitrogenIndex,
    ...(grass.swards.some(({ paddock }) => paddock.stand === 'fair')
      ? [tables.pasture.coverShare]
      : []),
    ...(grass.pairs === 0 ? [] : [farmFactorRow(tables, weightOf(grass))]),
    ...grass.swards.flatMap((sward) => [
      ...rowsOfPaddock(tables, sward),
      ...(sward.heightKnown === 'nothing' ? [tables.judgements.grass.leftBeforeWinterDays] : []),
      ...(weather.expected.rainMm
        ? [sward.forage.water, rowById(tables.soils, sward.paddock.soilId)]
        : []),
    ]),
    ...(weather.expected.rainMm ? [tables.pasture.deadGrass] : []),
    // The usual weather is drawn in years.
    ...(1 < weather.expected.years.length ? [tables.work.wetDay, tables.work.dayToDay] : []),
    // Without any rain known, the soil is taken to be as wet as it usually is.
    ...(weather.expected.rainMm ? [] : [OWN_DEFAULT]),
  ];
}

/** Its own record once that outweighs what it is drawn to. */
export const farmFactorRow = (
  { pasture: { readingWeight } }: PastureRequest['tables'],
  weight: number,
): Sourced => ({
  sources: readingWeight.sources,
  mark: markOfBlend(weight, { weight: readingWeight.priorReadings, mark: readingWeight.mark }),
});

/** How many readings in full growth all of them count for. */
export const weightOf = ({ swards }: { readonly swards: readonly SeasonSward[] }): number =>
  [...new Set(swards.map(({ ownGrowth }) => ownGrowth))].reduce(
    (sum, { weight }) => sum + weight,
    0,
  );

function rowsOfPaddock(
  { grassGroups }: PastureRequest['tables'],
  { forage, paddock }: SeasonSward,
): Sourced[] {
  const { heights, massKgPerHaCm, groups } = forage;
  const { rankSources, rankMark } = heights;
  return [
    groups,
    ...groupsOf(forage, grassGroups).flatMap(({ group }) => [group, group.response]),
    paddock.massKgPerHaCm === undefined ? massKgPerHaCm : OWN,
    ...(paddock.readyHeightCm === undefined || paddock.residualHeightCm === undefined
      ? [heights]
      : []),
    { sources: rankSources, mark: rankMark },
  ];
}

/** What the order of moves is chosen by, beside the grass: needs, rests, shares eaten, judgments. */
export function orderRows({ tables, herds, paddocks }: PastureRequest): Sourced[] {
  const { utilisation, longestStayDays, wetGround } = tables.pasture;
  return [
    ...[utilisation, wetGround, tables.judgements.grass.growsKgPerHa],
    ...Object.values(tables.judgements.grazing),
    ...paddocks.map(({ forageId }) => rowById(tables.forages, forageId).restDays),
    ...(herds.every((herd) => herd.longestStayDays !== undefined) ? [] : [longestStayDays]),
    ...needRows({ tables, herds, paddocks }),
  ];
}

/** What the need of herds rests on beside its equations: energy of grass or hay, weights not given. */
export const needRows = ({
  tables,
  herds,
  paddocks,
}: Pick<PastureRequest, 'tables' | 'herds' | 'paddocks'>): Sourced[] => [
  ...(paddocks.length === 0
    ? [boughtHay(tables).energyMcalPerKg]
    : [
        ...paddocks.map(({ forageId }) => rowById(tables.forages, forageId).energyMcalPerKg),
        forageEnergyFormulas.energy,
      ]),
  ...herds.flatMap(({ groups }) =>
    groups.flatMap((group) => [
      ...usualRows(tables, group),
      ...(group.arrivesOn === undefined || group.apartDays !== undefined
        ? []
        : [tables.pasture.quarantineDays]),
    ]),
  ),
  tables.cattle.animalUnits,
];

/** Stands in for the weight, gain or milk of a group that nobody gave. */
export function usualRows(
  { cattle, judgements }: PastureRequest['tables'],
  group: CattleGroup,
): Sourced[] {
  const of = rowById(cattle.classes, group.classId);
  const isGiven =
    group.weightKg !== undefined &&
    group.gainKgPerDay !== undefined &&
    (of.milkKgPerDay === 0 || group.milkKgPerDay !== undefined);
  const { dryCowDays, midLactationWeeks, weaningDays, grainSparesShare } = judgements.grass;
  const calves = group.bredOn !== undefined || group.calvesOn !== undefined;
  return [
    ...(isGiven ? [] : [of.usual]),
    ...(of.equation === 'nrc-dairy' && 0 < (group.grainKgPerDay ?? 0) ? [grainSparesShare] : []),
    ...(of.equation === 'share' ? [of.bodyWeightShare] : []),
    ...(of.equation === 'nrc-dairy'
      ? [dryCowDays]
      : calves
        ? [weaningDays, cattle.calfAtFoot]
        : []),
    ...(of.equation === 'nrc-dairy' && group.bredOn === undefined && group.calvesOn === undefined
      ? [midLactationWeeks]
      : []),
  ];
}

/** What the water of a herd rests on: the table of its classes, and what they eat where that counts. */
export function waterRows(tables: PastureRequest['tables'], { groups }: Herd): Sourced[] {
  return groups.flatMap((group) => {
    const isMilk = rowById(tables.cattle.classes, group.classId).water === 'milk-cow';
    return isMilk
      ? [tables.cattleWater.milkCow, ...usualRows(tables, group)]
      : [tables.cattleWater, ...usualRows(tables, group)];
  });
}

/** Manure of cattle as their classes have it, and what their weights rest on. */
export const manureRows = (tables: PastureRequest['tables'], herds: readonly Herd[]): Sourced[] =>
  herds.flatMap(({ groups }) =>
    groups.flatMap((group) => [
      rowById(tables.cattle.classes, group.classId).manure,
      ...usualRows(tables, group),
    ]),
  );
