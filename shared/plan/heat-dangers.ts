import type { Brooder } from '../farm/facility.js';
import { boxLossW } from '../poultry/brooder-box.js';
import { issue, type IssueLevel, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import type { BroodingHeat } from './heat-days.js';
import { COOLING } from './heat-instructions.js';
import { hourOf, type HeatWeek } from './heat-weeks.js';
import { waysOut } from './ways-out.js';

/** What in a brooder can kill by too much heat: lamps left on, hot weather, a lamp too strong. */
export function heatDangers(
  context: PlanContext,
  brooder: Brooder,
  heat: BroodingHeat,
  weeks: readonly HeatWeek[],
): PlanIssue[] {
  // What is past needs no warning any more.
  const ahead = weeks.filter(({ last }) => context.today <= context.dateOf(last));
  return [
    ...leftOn(context, brooder, heat, ahead),
    ...hotWeather(context, brooder, heat, ahead),
    ...tooStrong(context, brooder, heat, ahead),
  ];
}

function leftOn(
  { say, dateOf, today, batch }: PlanContext,
  { name, assumed = [] }: Brooder,
  { rig }: BroodingHeat,
  weeks: readonly HeatWeek[],
): PlanIssue[] {
  const week = weeks.find(
    ({ left, noon, hotDay }) => hotDay.warnC < left.airC && noon.airC < left.airC - 1e-9,
  );
  if (!week) return [];
  const { heat } = rig;
  const { left, hotDay, night } = week;
  const lid = night.isOpen || !rig.hasLid || rig.isRoom ? '' : ' and the lid on';
  // Nobody has hung these yet: a word for whoever buys them, no alarm.
  const isToBuy = assumed.includes('heat.count') && today < batch.arrivalDate;
  const fit = heat.thermostat
    ? ''
    : isToBuy
      ? ', or buy a thermostat with them, which does it by itself'
      : ', or fit a thermostat';
  return [
    issue(
      isToBuy ? 'note' : 'act',
      'heat-left-on',
      `With the night’s ${night.on} × ${say(heat.wattsEach, 'W')}${lid}, all of ${name} comes to about ${say(left.airC, 'degC')} on a hot noon from ${say(dateOf(week.first), 'date')} on, ${switchedIn(heat)}. Birds of that age that cannot get away suffer above ${say(hotDay.warnC, 'degC')} and are in danger above ${say(hotDay.dangerC, 'degC')}. Do as the brooder card says by day${fit}.`,
      [rig.table.tooHot, rig.table.building],
    ),
  ];
}

function switchedIn({ kind, thermostat }: BroodingHeat['rig']['heat']): string {
  if (!thermostat) return 'and nothing switches them off';
  // A plate goes by its own warmth, not by the air.
  return kind === 'plate' ? 'if they stay on' : 'even with the thermostat';
}

/** How pressing the heat of a noon is: over what birds stand, or so much that some may die. */
export function levelOfHeat({ noon, hotDay }: Pick<HeatWeek, 'noon' | 'hotDay'>): IssueLevel {
  const { noonC, warnC, dangerC } = hotDay;
  // A little over it, where it is not the weather itself, moved air brings it down.
  const isMuch = warnC < noonC || warnC + MUCH_K < noon.airC;
  return dangerC < noonC ? 'stop' : isMuch ? 'act' : 'note';
}

/** A brooder that is warmer than this over what birds stand needs doing, not only knowing. */
const MUCH_K = 1.5;

function hotWeather(
  context: PlanContext,
  { name }: Brooder,
  { rig }: BroodingHeat,
  weeks: readonly HeatWeek[],
): PlanIssue[] {
  const { say, dateOf } = context;
  const hot = weeks.filter(({ noon, hotDay }) => hotDay.warnC < noon.airC);
  if (hot.length === 0) return [];
  const worst = hot.reduce((a, b) =>
    a.noon.airC - a.hotDay.warnC < b.noon.airC - b.hotDay.warnC ? b : a,
  );
  const level = levelOfHeat(worst);
  return [
    issue(
      level,
      'brooder-hot',
      `On a hot day in the week of ${say(dateOf(worst.first), 'date')} ${name} comes to about ${say(worst.noon.airC, 'degC')} with ${worst.noon.on === 0 ? 'no heat on' : 'as little heat as it can do with'}; birds of that age suffer above ${say(worst.hotDay.warnC, 'degC')} and are in danger above ${say(worst.hotDay.dangerC, 'degC')}. ${COOLING}${outSooner(context, worst)}`,
      [rig.table.tooHot],
    ),
  ];
}

/**
 * The way out of a hot brooder, where there is one: a way to go by that has them out before it, or,
 * in the days that get them used to it, a shaded pen by day. The pen is common practice, no source.
 */
function outSooner(context: PlanContext, { first, noon, hotDay }: HeatWeek): string {
  const { say, dateOf, moveOutDay, tables } = context;
  const sooner = waysOut(context).findLast(
    ({ out, isChosen }) => !isChosen && out !== undefined && out.on.value <= dateOf(first),
  );
  if (sooner)
    return ` Or have them out before it: “${sooner.name}” has them out on ${say(sooner.out!.on.value, 'date')}; it takes: ${sooner.takes}`;
  const isNearMove =
    moveOutDay !== undefined &&
    moveOutDay - tables.judgements.birds.hardenDays.value < first + WEEK;
  return isNearMove && hotDay.noonC < noon.airC
    ? ' It is cooler outdoors, and they are to get used to it: a shaded pen by day, back in for the night.'
    : '';
}

const WEEK = 7;

function tooStrong(
  { say, dateOf }: PlanContext,
  { name }: Brooder,
  heat: BroodingHeat,
  weeks: readonly HeatWeek[],
): PlanIssue[] {
  const { rig } = heat;
  const { lamps, openTop } = rig.table;
  if (rig.heat.kind !== 'lamp' || rig.heat.thermostat || rig.isAirSchedule) return [];
  const week = weeks.find(
    ({ night, coldDay }) => night.on === 1 && coldDay.targetC - lamps.coolEndBelowK < night.airC,
  );
  if (!week) return [];
  const hour = hourOf(heat, week.coldDay, 'night', week.coldDay.nightC);
  const deltaK = Math.max(0, hour.targetC - lamps.coolEndBelowK - hour.aroundC);
  const box = rig.box(week.share, true);
  const mayBeW = boxLossW(openTop, box, hour.airWPerK, deltaK) - hour.birdsW;
  const bulbW = BULB_W * Math.floor(mayBeW / BULB_W);
  // With hardly a difference left it is the weather, and no bulb is weak enough.
  if (bulbW < BULB_W) return [];
  return [
    issue(
      'act',
      'lamp-too-strong',
      `From ${say(dateOf(week.first), 'date')} on a single lamp of ${say(rig.heat.wattsEach, 'W')} leaves no cool end in ${name}, even on the coldest night. Use one of ${say(Math.min(bulbW, rig.heat.wattsEach / 2), 'W')} or less, a larger brooder, or a thermostat.`,
      [lamps],
    ),
  ];
}

/** Bulbs come in steps of about so much. */
const BULB_W = 25;
