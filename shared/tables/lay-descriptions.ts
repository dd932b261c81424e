import { list, nested, row } from '../farm/field.js';
import {
  AIR_C,
  DAYS,
  GRAMS,
  HOURS,
  ID,
  MARK,
  maybe,
  NAME,
  part,
  PERCENT,
  RANGED,
  rowOf,
  SHARE,
  SOURCED,
  table,
  value,
  WEEKS,
  WORDS,
} from './figures.js';

export const layCurves = table('LayCurve', {
  id: ID,
  name: NAME,
  insteadOf: maybe(rowOf('layCurves')),
  firstEggWeek: WEEKS,
  firstEggWeekLow: WEEKS,
  firstEggWeekHigh: WEEKS,
  points: table('LayPoint', { ageWeeks: WEEKS, henDayPercent: PERCENT }),
  flock: part('FlockOfCurve', { value: SHARE, low: SHARE, high: SHARE, ...RANGED }),
  lightShare: value('LightShare', SHARE),
  eggWeight: table('EggWeight', { ageWeeks: WEEKS, eggG: GRAMS }),
  eggWeightMark: MARK,
  note: maybe(WORDS),
  ...SOURCED,
});

export const light = part('Light', {
  targetH: HOURS,
  low: HOURS,
  high: HOURS,
  startAgeDays: DAYS,
  risePerWeekH: HOURS,
  response: part('LightResponse', {
    points: table('LightPoint', { dayH: HOURS, share: SHARE }),
    fallDays: DAYS,
    fallH: HOURS,
    fallShare: SHARE,
  }),
  ...RANGED,
});

export const laying = nested(
  'Laying',
  row('LayingTable', {
    air: part('AirOfHens', { points: table('AirPoint', { airC: AIR_C, share: SHARE }) }),
    molt: part('Molt', {
      fromAgeWeeks: WEEKS,
      afterEquinoxDays: DAYS,
      seasonlessAgeWeeks: WEEKS,
      seasonH: HOURS,
      weeks: WEEKS,
      edgeWeeks: WEEKS,
      share: SHARE,
    }),
    years: part('LayingYears', {
      shares: list('Shares', SHARE, 10, 'shares', 1),
      low: SHARE,
      high: SHARE,
      ...RANGED,
    }),
    ownCounts: part('OwnCounts', { days: DAYS }),
    shell: part('Shell', { hensNeedPercent: PERCENT, shellHoldsPercent: PERCENT }),
  }),
);
