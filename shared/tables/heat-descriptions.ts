import { list, nested, row } from '../farm/field.js';
import { country } from '../farm/words.js';
import {
  AIR_C,
  COEFFICIENT,
  COUNT,
  DAYS,
  FACTOR,
  ID,
  KELVIN,
  M,
  NAME,
  part,
  POINTS,
  R_VALUE,
  RANGED,
  SHARE,
  SOURCED,
  table,
  WATTS,
} from './figures.js';

export const materials = table('Material', {
  id: ID,
  name: NAME,
  rM2KPerWPerM: R_VALUE,
  ...SOURCED,
});

export const heat = nested(
  'Heat',
  row('HeatTable', {
    films: part('Films', { insideM2KPerW: R_VALUE, outsideM2KPerW: R_VALUE }),
    birds: part('HeatOfBirds', {
      totalW: WATTS,
      exponent: SHARE,
      perK: SHARE,
      sensibleShare: SHARE,
      sensibleDropPerK2: SHARE,
      litterLoss: SHARE,
      creditFromDay: DAYS,
      newlyHatchedWPerKg: WATTS,
    }),
    ventilation: part('Ventilation', {
      m3PerHPerKg075: FACTOR,
      m3PerHPerKg: FACTOR,
      m3PerHPerChick: FACTOR,
      unventedGasFactor: FACTOR,
    }),
    zone: part('HeatZone', {
      coolEndBelowHeaterK: KELVIN,
      coolEndMinC: AIR_C,
      roomBelowHeaterK: KELVIN,
    }),
    building: part('Building', { warmerThanOutsideK: KELVIN }),
    heatedRoom: part('HeatedRoom', { airC: AIR_C }),
    coldNightMarginK: part('ColdNights', { value: KELVIN }),
    plate: part('Plate', { wattsPerChick: WATTS, warmestRoomFromC: AIR_C }),
    lampRule: part('LampRule', {
      chicks: COUNT,
      atF: COEFFICIENT,
      lampW: WATTS,
      fewestChicks: COUNT,
    }),
    rules: table('LampRuleOfThumb', { name: NAME, wattsPerChick: WATTS, ...SOURCED }),
    gasBrooder: part('GasBrooder', { fluxWPerM2: WATTS }),
    chickBox: part('ChickBox', {
      warmerK: KELVIN,
      toAgeDays: DAYS,
      coldAirC: AIR_C,
      coldDiedShare: SHARE,
      warmAirC: AIR_C,
      warmDiedShare: SHARE,
    }),
    ceiling: part('Ceiling', { fromM: M }),
    gasRule: part('GasRule', { lowWPerM2: WATTS, highWPerM2: WATTS }),
    openTop: part('OpenTop', { convection: FACTOR, radiationWPerM2K: FACTOR, exchange: FACTOR }),
    floor: part('FloorOfBrooder', { wPerM2K: FACTOR }),
    radiant: part('RadiantHeat', {
      share: SHARE,
      shareLow: SHARE,
      shareHigh: SHARE,
      beamHalfAngleDeg: COEFFICIENT,
      riseKPerWPerM2: SHARE,
    }),
    clearance: part('LampClearance', { valueM: M, toBurnableM: M }),
    lamps: part('LampsInUse', {
      highestM: M,
      stepM: M,
      spotsUntilDay: DAYS,
      coolEndBelowK: KELVIN,
      spotAboveK: KELVIN,
    }),
    tooHot: part('TooHot', {
      rows: table('TooHotRow', { fromDay: DAYS, warnC: AIR_C, dangerC: AIR_C }),
    }),
    circuit: part('CircuitRule', { share: SHARE }),
    usualCircuit: part('UsualCircuit', {
      volts: POINTS,
      amps: POINTS,
      otherVolts: POINTS,
      otherAmps: POINTS,
      countries: list('Countries', country('Country'), 100, 'countries', 1),
    }),
    propane: part('Propane', {
      MJPerL: COEFFICIENT,
      low: COEFFICIENT,
      high: COEFFICIENT,
      ...RANGED,
    }),
  }),
);

export const heatStress = part('HeatStress', { beginsC: AIR_C, seriousC: AIR_C });
