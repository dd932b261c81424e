import { addDays } from '../calendar/plain-date.js';
import { facilityOf } from '../farm/facility.js';
import { formatValue } from '../units/format.js';
import { dateText, type CandidateWeek, type MaybeReason } from './candidate-week.js';
import { heatAsked, hottestNoon } from './heat-asked.js';

/** Whether the heaters of the brooder can do what its coldest night asks for. Plates go by places. */
export function heaterReason(week: CandidateWeek): MaybeReason {
  const { points, request } = week;
  const { farm, batch } = request;
  const brooder = facilityOf(request.facilities, 'brooder', batch.brooderId);
  if (!brooder || brooder.heat.kind === 'plate') return undefined;
  const { mostW, leastW, byRule } = heatAsked(inBrooder(week), brooder);
  const { count, wattsEach } = brooder.heat;
  const installedW = count * wattsEach;
  const asks = `A cold night asks for ${formatValue(mostW, 'W', farm)}, ${brooder.name} has ${formatValue(installedW, 'W', farm)}`;
  if (mostW <= installedW) return { code: 'heater', points: 0, text: `${asks}: enough.` };
  // Nobody said that there are no more: no spring is put off for a lamp that can be bought.
  if (brooder.assumed?.includes('heat.count'))
    return { code: 'heater', points: 0, text: `${asks}, as is assumed: more can be bought.` };
  if (byRule !== undefined && byRule <= count)
    return {
      code: 'heater',
      points: points.heaterShort,
      text: `${asks}, as much as the common rule asks for: add heat all the same.`,
    };
  return leastW <= installedW
    ? { code: 'heater', points: points.heaterShort, text: `${asks}: add heat.` }
    : { code: 'heater', points: points.heaterTooWeak, text: `${asks}: far too little.` };
}

/** What the heat of a brooder hangs on. */
const inBrooder = ({ request, life, weather, moveDay }: CandidateWeek) => ({
  ...{ batch: request.batch, tables: request.tables, farm: request.farm },
  ...{ life, weather, brooderDays: moveDay ?? life.days - 1 },
});

/** Nobody knows the noons of a year to come to less than that. */
const NOISE_K = 0.5;

/** Whether birds in the brooder get too warm on a hot noon, with no more heat on than they need. */
export function brooderNoon(week: CandidateWeek): MaybeReason {
  const { points, request, arrivalDate } = week;
  const { farm, batch } = request;
  const brooder = facilityOf(request.facilities, 'brooder', batch.brooderId);
  const noon = brooder && hottestNoon(inBrooder(week), brooder);
  if (!noon) return undefined;
  const say = (valueC: number): string => formatValue(valueC, 'degC', farm);
  const { airC, outsideC, warnC, dangerC, first } = noon;
  const inWeek = `in the week of ${dateText(addDays(arrivalDate, first), request)}`;
  if (airC <= warnC + NOISE_K)
    return {
      code: 'brooder-hot',
      points: 0,
      text: `A usual hot noon is not too hot in ${brooder.name}: about ${say(airC)} ${inWeek}. Hotter days come.`,
    };
  const about = `${brooder.name} comes to about ${say(airC)} on a hot noon ${inWeek}`;
  const limit = `birds of that age suffer above ${say(warnC)} and are in danger above ${say(dangerC)}`;
  if (dangerC < outsideC)
    return {
      code: 'brooder-hot',
      points: points.brooderDanger,
      text: `${about}, and the air outside is no cooler: ${limit}.`,
    };
  if (warnC < outsideC)
    return { code: 'brooder-hot', points: points.brooderHot, text: `${about}: ${limit}.` };
  return {
    code: 'brooder-hot',
    points: points.brooderClose,
    text: `${about}: ${limit}. Fans and an open top bring it down.`,
  };
}

/** A box of chicks that waits in the heat of a hot day. */
export function hotBox({ points, request: { farm }, weather }: CandidateWeek): MaybeReason {
  const hotC = weather.hotMaxC[0]!;
  if (hotC <= points.hotBoxC) return undefined;
  return {
    code: 'shipping',
    points: points.hotBox,
    text: `The box may travel on a day of ${formatValue(hotC, 'degC', farm)}: chicks in it get far too hot if it waits.`,
  };
}

/** Grown birds in crates on a hot day. */
export function hotCrates({ points, request: { farm }, weather }: CandidateWeek): MaybeReason {
  const hotC = weather.hotMaxC[0]!;
  if (hotC <= points.hotBoxC) return undefined;
  return {
    code: 'shipping',
    points: points.hotBox,
    text: `The crates may travel on a day of ${formatValue(hotC, 'degC', farm)}: fetch them at dawn.`,
  };
}

/** Hot days while the birds are heaviest. */
export function lastHeat({ points, request, life, weather }: CandidateWeek): MaybeReason {
  if (life.firstEggAgeDays !== undefined) return undefined;
  const { beginsC, seriousC } = request.tables.heatStress;
  const hottest = Math.max(
    ...weather.hotMaxC.subarray(Math.max(0, weather.hotMaxC.length - points.lastHotDays)),
  );
  const shown = formatValue(hottest, 'degC', request.farm);
  if (seriousC <= hottest)
    return {
      code: 'heat',
      points: points.heatSerious,
      text: `Hot days of ${shown} fall in the last two weeks: serious for heavy birds.`,
    };
  if (beginsC <= hottest)
    return {
      code: 'heat',
      points: points.heatBegins,
      text: `Hot days of ${shown} fall in the last two weeks: heat stress begins at ${formatValue(beginsC, 'degC', request.farm)}.`,
    };
  return {
    code: 'heat',
    points: 0,
    text: `The last two weeks stay below heat stress (hot day ${shown}).`,
  };
}
