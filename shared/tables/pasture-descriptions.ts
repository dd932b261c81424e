import { choice, list, nested, record, row } from '../farm/field.js';
import {
  AIR_C,
  CM,
  COEFFICIENT,
  COUNT,
  DAYS,
  DIFFERENCE,
  FACTOR,
  HOURS,
  ID,
  INDEX,
  KG,
  KG_A_HA,
  LITERS,
  M,
  M2,
  MARK,
  maybe,
  YES_NO,
  MM,
  NAME,
  part,
  PER_KG,
  PERCENT,
  POINTS,
  rowOf,
  SHARE,
  SOURCED,
  SOURCES,
  spread,
  table,
  value,
  WORDS,
} from './figures.js';

const massOf = nested('Mass', row('MassOfStand', { low: KG_A_HA, high: KG_A_HA, value: KG_A_HA }));

export const forages = table('Forage', {
  id: ID,
  name: NAME,
  habit: choice('Habit', ['cool-season', 'warm-season']),
  massKgPerHaCm: part('MassPerHeight', { fair: massOf, good: massOf, excellent: massOf }),
  heights: part('Heights', {
    firstPassCm: CM,
    readyFromCm: CM,
    readyHeightCm: CM,
    residualHeightCm: CM,
    rankCm: CM,
    rankSources: SOURCES,
    rankMark: MARK,
  }),
  restDays: part('Rest', { fast: DAYS, hot: DAYS }),
  legumeShare: value('LegumeShare', SHARE),
  water: part('WaterOfForage', { kc: SHARE, rootDepthM: M, depletionShare: SHARE }),
  energyMcalPerKg: value('Energy', FACTOR),
  groups: part('GroupsOfForage', {
    shares: table('GroupShare', { id: rowOf('grassGroups'), share: SHARE }),
  }),
});

const digestible = nested('Digestible', row('Digestible', { new: SHARE, old: SHARE }));

export const grassGroups = table('GrassGroup', {
  id: ID,
  leafAreaM2PerG: PER_KG,
  bladeShare: SHARE,
  stemsFromSum: POINTS,
  stemsToSum: POINTS,
  springFactor: FACTOR,
  autumnFactor: FACTOR,
  leafLifeSum: POINTS,
  leafDigestible: digestible,
  stemDigestible: digestible,
  response: part('ResponseOfGrass', {
    lightUseGPerMJ: FACTOR,
    baseC: AIR_C,
    wakesC: AIR_C,
    fullFromC: AIR_C,
    fullToC: AIR_C,
    stopC: AIR_C,
    onsetSum: POINTS,
    lostPerMJ: PER_KG,
    ageingBaseC: AIR_C,
  }),
  ...SOURCED,
});

export const soils = table('Soil', {
  id: ID,
  name: NAME,
  fieldCapacity: SHARE,
  wiltingPoint: SHARE,
  ...SOURCED,
});

const hayMethods = table('HayMethod', {
  id: ID,
  name: NAME,
  loss: SHARE,
  low: SHARE,
  high: SHARE,
  ...SOURCED,
});

export const pasture = nested(
  'Pasture',
  row('PastureTable', {
    readingWeight: part('ReadingWeight', {
      priorReadings: COUNT,
      readingErrorKgPerHa: KG_A_HA,
      growthSpread: SHARE,
      lowFactor: FACTOR,
      highFactor: FACTOR,
    }),
    coverShare: part('CoverShare', { fair: SHARE, good: SHARE, excellent: SHARE }),
    nitrogenIndex: part('NitrogenIndex', { low: SHARE, medium: SHARE, high: SHARE }),
    deadGrass: part('DeadGrass', {
      overDays: DAYS,
      dryDivisor: POINTS,
      steepness: POINTS,
    }),
    utilisation: part('Utilisation', {
      byStayDays: list('Shares', SHARE, 31, 'shares', 1),
      rankDrop: SHARE,
      low: DIFFERENCE,
      high: DIFFERENCE,
      because: WORDS,
    }),
    longestStayDays: value('LongestStay', DAYS),
    wetGround: part('WetGround', { drierThanFieldCapacityMm: MM }),
    quarantineDays: spread('Quarantine', DAYS),
    magnesiumLeadDays: value('MagnesiumLead', DAYS),
    gradualDays: part('GradualDays', { low: DAYS, value: DAYS, high: DAYS }),
    bloatLegumeShare: value('BloatLegumeShare', SHARE),
    stockpile: part('Stockpile', { daysBeforeGrowthEnds: DAYS, low: DAYS, high: DAYS }),
    birdsBehind: part('BirdsBehind', { lagDays: DAYS }),
    nitrogenLimitKgPerHa: spread('NitrogenLimit', KG_A_HA),
    birdsOff: value('BirdsOff', DAYS),
    rawManure: part('RawManure', { touchingSoilDays: DAYS, offSoilDays: DAYS }),
    hay: part('Hay', {
      dryMatterShare: SHARE,
      harvestShare: SHARE,
      stubbleCm: CM,
      bales: table('Bale', { id: ID, name: NAME, kg: KG }),
      feeding: hayMethods,
      storing: hayMethods,
    }),
  }),
);

export const cattle = nested(
  'Cattle',
  row('CattleTable', {
    girth: nested(
      'Girth',
      row('GirthTable', {
        rule: part('GirthRule', { cubicInchesPerLb: POINTS }),
        tooHeavyKg: part('GirthError', { low: KG, high: KG, because: WORDS }),
      }),
    ),
    classes: table('CattleClass', {
      id: ID,
      name: NAME,
      equation: choice('Equation', [
        'nrc-cow-lactating',
        'nrc-cow-pregnant',
        'nrc-calf',
        'nrc-yearling',
        'nrc-dairy',
        'share',
      ]),
      weightKg: KG,
      gainKgPerDay: KG,
      milkKgPerDay: KG,
      milkFatPercent: maybe(PERCENT),
      usual: nested('Usual', row('Usual', SOURCED)),
      asksWhenDue: maybe(YES_NO),
      bodyWeightShare: spread('BodyWeightShare', SHARE),
      water: choice('Water', ['nursing-cow', 'dry-cow', 'bull', 'growing', 'milk-cow']),
      manure: part('CattleManure', { nKgPerDayPerKgLive: PER_KG, pKgPerDayPerKgLive: PER_KG }),
    }),
    calfAtFoot: part('CalfAtFoot', {
      rows: table('CalfAtFootRow', { ageDays: DAYS, kgPerDay: KG }),
    }),
    calfWeight: part('CalfWeight', { atDays: DAYS, kg: KG, gainKgPerDay: KG }),
    animalUnits: part('AnimalUnits', {
      perKgLive: PER_KG,
      dryKgPerUnitDay: KG,
      metabolicShare: SHARE,
      calfOverDays: DAYS,
      calfUnits: SHARE,
      because: WORDS,
    }),
  }),
);

const waterAtAir = { airC: AIR_C, liters: LITERS } as const;
export const cattleWater = part('CattleWater', {
  classes: record('Classes', table('CattleWaterRow', waterAtAir), 30),
  growingKg: record('Weights', KG, 30),
  heavierKg: record('Weights', KG, 30),
  hot: part('HotWeatherWater', {
    classes: record('Classes', table('CattleWaterRow', waterAtAir), 30),
    growingKg: record('Weights', KG, 30),
  }),
  milkCowInHeat: part('MilkCowInHeat', { most: FACTOR, because: WORDS }),
  milkCow: part('MilkCowWater', {
    base: COEFFICIENT,
    perKgDryMatter: COEFFICIENT,
    perKgMilk: COEFFICIENT,
    perGSodium: COEFFICIENT,
    sodiumGPerKgDryMatter: COEFFICIENT,
    perC: COEFFICIENT,
  }),
  tank: part('Tank', {
    rows: table('TankRow', {
      refillH: HOURS,
      litersPerHead: maybe(LITERS),
      shareOfDay: maybe(SHARE),
    }),
  }),
  refill: part('Refill', { hours: HOURS }),
  troughEdgeM: part('TroughEdge', { per: COUNT, m: M }),
  distance: part('WaterDistance', { milkM: M, otherM: M }),
});

export const cattleHeat = part('CattleHeat', { moderateFrom: INDEX, severeFrom: INDEX });

export const gestation = nested(
  'Gestation',
  row('GestationTable', {
    sdDays: value('GestationSpread', DAYS),
    breeds: table('BreedGestation', {
      id: ID,
      name: NAME,
      meanDays: DAYS,
      sdDays: maybe(DAYS),
      ...SOURCED,
    }),
  }),
);

export const fence = nested(
  'Fence',
  row('FenceTable', {
    laneWidthM: part('LaneWidth', { low: M, high: M }),
    energizerJPerKm: part('Energizer', { value: FACTOR, byWire: FACTOR, because: WORDS }),
    shape: part('PaddockShape', { longToShort: FACTOR }),
    block: part('PaddockBlock', { because: WORDS }),
    groundRodMPerJ: value('GroundRod', FACTOR),
    shadeM2PerHead: spread('Shade', M2),
  }),
);
