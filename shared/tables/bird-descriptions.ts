import {
  choice,
  list,
  nested,
  row,
  type Fields,
  type NumberField,
  type RowRule,
} from '../farm/field.js';
import {
  AIR_C,
  CM,
  COEFFICIENT,
  COUNT,
  DAY_OR_FIRST_EGG,
  DAYS,
  FACTOR,
  HOURS,
  ID,
  KCAL,
  KELVIN,
  KJ_PER_KG,
  SIGNED,
  KG,
  LITERS,
  M,
  M2,
  MARK,
  maybe,
  ML,
  NAME,
  part,
  PER_KG,
  PERCENT,
  RANGED,
  rowOf,
  SHARE,
  SOURCED,
  SOURCES,
  table,
  WORDS,
  YES_NO,
} from './figures.js';

const PURPOSE = choice('Purpose', ['meat', 'layers']);
const SPECIES = rowOf('hatching.species');
const growthPoints = table('GrowthPoint', {
  ageDays: DAYS,
  weightKg: KG,
  cumulativeFeedKg: maybe(KG),
});

export const growthTables = table('GrowthTable', {
  id: ID,
  name: NAME,
  asHatched: maybe(growthPoints),
  male: maybe(growthPoints),
  female: maybe(growthPoints),
  sexRatio: maybe(
    part('SexRatio', {
      points: table('SexRatioPoint', { ageDays: DAYS, femaleToMale: SHARE }),
      note: WORDS,
    }),
  ),
  maleGompertz: maybe(part('Gompertz', { asymptoteKg: KG, ratePerDay: SHARE, hatchKg: KG })),
  feedModel: maybe(
    part('FeedModel', { gainKgPerKg: FACTOR, maintenanceKgPerKg075Day: FACTOR, note: WORDS }),
  ),
  atHome: maybe(part('AtHome', { weightFactor: FACTOR, feedFactor: FACTOR, note: WORDS })),
  feedSpread: maybe(part('FeedSpread', { low: FACTOR, high: FACTOR, because: WORDS })),
  ...SOURCED,
});

export const strains = table('Strain', {
  id: ID,
  name: NAME,
  description: WORDS,
  species: SPECIES,
  isCross: maybe(YES_NO),
  purposes: list('Purposes', PURPOSE, 2, 'purposes', 1),
  defaultFor: maybe(list('Default for', PURPOSE, 2, 'purposes')),
  growthTables: list('Growth tables', rowOf('growthTables'), 20, 'ids', 1),
  waste: part('Waste', { percent: PERCENT }),
  feedProgram: nested(
    'Feed',
    row('FeedOfPurpose', {
      meat: maybe(rowOf('feedPrograms')),
      layers: maybe(rowOf('feedPrograms')),
    }),
  ),
  losses: rowOf('losses'),
  layLosses: maybe(rowOf('losses')),
  leave: part('Leave', { ageDays: DAYS }),
  dressing: maybe(rowOf('processing.dressing')),
  heat: part('HeatOfStrain', { share: SHARE, standsIn: maybe(WORDS) }),
  moveOut: rowOf('moveOut'),
  layCurve: maybe(rowOf('layCurves')),
});

const BEGINS_AT_HATCH: RowRule<{ readonly phases: readonly { readonly fromDay: unknown }[] }> = {
  name: 'begins-at-hatch',
  of: ['phases'],
  find: ({ phases }, at) =>
    phases[0]?.fromDay === 0
      ? []
      : [
          {
            field: `${at}phases.0.fromDay`,
            code: 'not-allowed',
            given: phases[0]?.fromDay,
            allowed: ['0'],
            fix: 'Chicks are fed from the day of hatch: let the first feed begin on day 0.',
          },
        ],
};

export const feedPrograms = table(
  'FeedProgram',
  {
    id: ID,
    name: NAME,
    insteadOf: maybe(rowOf('feedPrograms')),
    fewBirds: maybe(COUNT),
    phases: table('FeedPhase', {
      id: ID,
      name: NAME,
      fromDay: DAY_OR_FIRST_EGG,
      proteinPercentLow: PERCENT,
      proteinPercentHigh: PERCENT,
      energyKcalPerKg: KCAL,
      calciumPercent: maybe(PERCENT),
    }),
    ...SOURCED,
  },
  [BEGINS_AT_HATCH],
);

export const broodingSchedules = table('BroodingSchedule', {
  id: ID,
  name: NAME,
  default: maybe(YES_NO),
  species: maybe(SPECIES),
  where: WORDS,
  measures: choice('What it measures', ['under-heat', 'air']),
  interpolate: YES_NO,
  steps: table('BroodingStep', { fromDay: DAYS, toDay: DAYS, lowC: AIR_C, highC: AIR_C }),
  ...SOURCED,
});

const PEN = { floorM2: M2, low: M2, high: M2, ...RANGED } as const;

const HOLD = (each: NumberField) => ({ rows: table('HoldRow', { fromDay: DAYS, each }) }) as const;

export const space = nested(
  'Space',
  row('Space', {
    brooder: table('BrooderSpace', {
      id: ID,
      name: NAME,
      default: maybe(YES_NO),
      species: maybe(SPECIES),
      rows: table('SpaceRow', {
        fromDay: DAYS,
        floorM2: M2,
        feederCm: maybe(CM),
        drinkerCm: maybe(CM),
      }),
      ...SOURCED,
    }),
    pen: part('PenSpace', PEN),
    otherPens: table('OtherPenSpace', { species: SPECIES, ...PEN, ...SOURCED }),
    penMoves: part('PenMoves', { perDay: COUNT, low: COUNT, high: COUNT, because: WORDS }),
    coop: part('CoopSpace', {
      floorM2: M2,
      floorMinM2: M2,
      floorMaxM2: M2,
      hensPerNest: COUNT,
      hensPerNestLow: COUNT,
      hensPerNestHigh: COUNT,
      roostCm: CM,
    }),
    liveWeightCapKgPerM2: part('LiveWeightCap', { value: KG, high: KG }),
    holds: nested(
      'UsualHolds',
      row('UsualHolds', {
        drinkers: part('DrinkersHold', { ...HOLD(LITERS), because: WORDS }),
        feeders: part('FeedersHold', { ...HOLD(KG), because: WORDS }),
      }),
    ),
  }),
);

const ranged = <F extends Fields>(name: string, fields: F, of: NumberField) =>
  part(name, { ...fields, low: of, high: of, ...RANGED });

const waterFields = {
  referenceC: AIR_C,
  points: table('WaterPoint', { ageDays: DAYS, mLPerDay: ML }),
} as const;

const waterHeatFields = {
  fromC: AIR_C,
  atC: AIR_C,
  riseLow: SHARE,
  rise: SHARE,
  riseHigh: SHARE,
  because: WORDS,
} as const;

export const water = nested(
  'Water',
  row('Water', {
    meat: ranged('MeatWater', { ratio: FACTOR }, FACTOR),
    layers: part('BirdWater', waterFields),
    others: table('OtherBirdWater', { species: SPECIES, ...waterFields, ...SOURCED }),
    heat: part('WaterHeatRise', waterHeatFields),
    otherHeat: table('OtherWaterHeatRise', { species: SPECIES, ...waterHeatFields, ...SOURCED }),
  }),
);

export const losses = table('Losses', {
  id: ID,
  firstWeekPercent: PERCENT,
  laterPercent: PERCENT,
  laterToDay: DAYS,
  layYearPercent: maybe(PERCENT),
  spread: maybe(part('LossSpread', { lowPercent: PERCENT, highPercent: PERCENT, because: WORDS })),
  ...SOURCED,
});

export const orders = nested(
  'Orders',
  row('OrderTable', {
    togetherness: part('Togetherness', { value: SHARE }),
    sexing: part('Sexing', { share: SHARE }),
    surety: part('OrderSurety', {
      usual: SHARE,
      shares: list('Shares', SHARE, 5, 'shares'),
    }),
  }),
);

export const processing = nested(
  'Processing',
  row('ProcessingTable', {
    dressing: table('Dressing', {
      id: ID,
      share: SHARE,
      low: SHARE,
      high: SHARE,
      definition: WORDS,
      ...RANGED,
      ...SOURCED,
    }),
    waterUptake: ranged('WaterUptake', { share: SHARE }, SHARE),
    packing: ranged('Packing', { kgPerL: SHARE }, SHARE),
    withdrawalH: ranged('FeedWithdrawal', { value: HOURS }, HOURS),
    ice: ranged('Ice', {}, SHARE),
    iceBalance: part('IceBalance', {
      carcassC: AIR_C,
      carcassKJPerKgK: COEFFICIENT,
      waterKJPerKgK: COEFFICIENT,
      meltKJPerKg: KJ_PER_KG,
      waterPerCarcass: FACTOR,
      endC: AIR_C,
      airWPerKPerKg: SHARE,
      hours: HOURS,
      because: maybe(WORDS),
    }),
    iceBag: part('IceBag', { kg: KG }),
    chilling: part('Chilling', {
      targetC: AIR_C,
      rows: table('ChillingRow', { belowKg: maybe(KG), hours: HOURS }),
      iceWater: part('IceWaterChilling', {
        minutes: COEFFICIENT,
        deviation: COEFFICIENT,
        fromKg: KG,
        toKg: KG,
      }),
    }),
    freezerBags: part('FreezerBags', { perBird: FACTOR }),
    stations: nested(
      'Stations',
      row('Stations', {
        cones: ranged('KillingCones', { minutes: COEFFICIENT }, COEFFICIENT),
        scalder: ranged('Scalder', { minutes: COEFFICIENT }, COEFFICIENT),
        plucker: ranged('Plucker', { minutes: COEFFICIENT }, COEFFICIENT),
      }),
    ),
    scalding: part('Scalding', { gasLPerDay: FACTOR, gasLPerBird: FACTOR }),
    keeping: part('FreezerKeeping', { days: DAYS }),
    resting: part('Resting', { days: DAYS }),
  }),
);

export const litter = part('Litter', {
  depthM: M,
  low: M,
  high: M,
  topUpShare: SHARE,
  topUpEveryDays: DAYS,
  topUpMark: MARK,
  bagLooseM3: FACTOR,
  bagNote: WORDS,
  ...RANGED,
});

export const moveOut = table('MoveOut', {
  id: ID,
  laterSources: SOURCES,
  laterMark: MARK,
  rules: table('MoveOutRule', {
    id: ID,
    name: NAME,
    fromDay: DAYS,
    nightLowC: AIR_C,
    later: table('LaterNights', { fromDay: DAYS, nightLowC: AIR_C }),
    default: maybe(YES_NO),
    takes: maybe(WORDS),
  }),
  ...SOURCED,
});

export const nights = nested(
  'Nights',
  row('NightTable', {
    spread: part('SpreadOfLows', {
      constant: SIGNED,
      perC: SIGNED,
      perRangeC: SIGNED,
      cosine: SIGNED,
      sine: SIGNED,
      leastC: KELVIN,
    }),
    likeness: part('LikenessOfNights', { value: SHARE }),
    coldFeed: part('ColdFeed', {
      criticalBaseC: AIR_C,
      criticalRiseC: KELVIN,
      criticalPerKg: FACTOR,
      kcalPerDegreeDay: FACTOR,
      fromKg: KG,
      toKg: KG,
    }),
    forecast: part('ForecastOfLows', { firstDayC: KELVIN, perDayC: KELVIN }),
    surety: part('Surety', {
      choices: table('NightSurety', {
        id: ID,
        name: NAME,
        share: SHARE,
        default: maybe(YES_NO),
        takes: WORDS,
      }),
    }),
  }),
);

const manureFields = { nKgPerDayPerKgLive: PER_KG, pKgPerDayPerKgLive: PER_KG } as const;
const manureOf = part('Manure', manureFields);
export const manure = nested(
  'Manure',
  row('ManureTable', {
    meat: manureOf,
    layers: manureOf,
    others: table('OtherManure', { species: SPECIES, ...manureFields, ...SOURCED }),
  }),
);

export const feedKeeping = part('FeedKeeping', {
  maxDays: DAYS,
  low: DAYS,
  high: DAYS,
  bagLeadDays: DAYS,
  usualBag: part('UsualBag', { kg: KG, metricKg: KG }),
  ...RANGED,
});

export const growing = nested(
  'Growing',
  row('GrowingTable', {
    best: part('BestAir', { points: table('BestAirPoint', { ageDays: DAYS, bestC: AIR_C }) }),
    heat: part('GrowthInHeat', {
      gainPerC2: SHARE,
      feedPerC2: SHARE,
      bendC: KELVIN,
      gainPerCBeyond: SHARE,
      feedPerCBeyond: SHARE,
      least: SHARE,
    }),
    cold: part('GrowthInCold', {
      gainBelowC: AIR_C,
      gainPerC: SHARE,
      feedBelowBestC: KELVIN,
      feedPerC: SHARE,
      least: SHARE,
    }),
    evenness: part('Evenness', { cv: SHARE, scaleShare: SHARE, youngestDays: DAYS }),
  }),
);
