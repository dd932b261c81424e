import { airRiseK, openTopWPerK } from '../poultry/brooder-box.js';
import { hasCoolEnd, riseUnderHeatK, type HeatRig } from './heat-rig.js';

/** What it is like around a brooder and what its birds want, at one hour. */
export interface HeatHour {
  readonly aroundC: number;
  /** Wanted under the heat. */
  readonly targetC: number;
  /** Birds are in danger where they cannot get away from more. */
  readonly warnC: number;
  readonly birdsW: number;
  /** Heat that fresh air carries off, W/K. */
  readonly airWPerK: number;
  /** Heaters that it takes for every chick to have a place by one. */
  readonly places: number;
  /** Heaters that give heat. */
  readonly working: number;
  readonly isNight: boolean;
}

/** So many heaters on, lid on or off, and how warm that makes it. */
export interface HeatSetting {
  readonly on: number;
  readonly isOpen: boolean;
  /** Of lamps, above the bedding. */
  readonly heightM: number;
  /** Air in the brooder, the cool end included. */
  readonly airC: number;
  /** Straight under a heater; with none on the air. Of plates nothing is known: they are touched. */
  readonly underC: number;
  /** Mean draw: less than all of them where a thermostat switches. */
  readonly watts: number;
}

interface SettingTried {
  readonly on: number;
  readonly isOpen: boolean;
  readonly share: number;
  readonly heightM: number;
  /** Part of what they could give, where nobody and nothing turns them; left out, as they are turned. */
  readonly duty?: number;
}

/** How warm a brooder gets with so many heaters on. */
export function settingOf(
  rig: HeatRig,
  hour: HeatHour,
  { on, isOpen, share, heightM, duty: held }: SettingTried,
): HeatSetting {
  const box = rig.box(share, isOpen);
  const { openTop } = rig.table;
  const riseK = on === 0 ? 0 : riseUnderHeatK(rig, heightM);
  const full = on * rig.heat.wattsEach;
  const duty = held ?? (isTurned(rig) ? dutyOf() : 1);
  const watts = duty * full;
  const warmed = on === 0 ? 'all-air' : 'a-part';
  const all = { watts: watts + hour.birdsW, warmed } as const;
  const airC = hour.aroundC + airRiseK(openTop, box, hour.airWPerK, all);
  return { on, isOpen, heightM, airC, underC: airC + duty * riseK, watts };

  /** Part of the time that a thermostat under the heat keeps them on. */
  function dutyOf(): number {
    const warmer = hour.targetC - hour.aroundC;
    if (warmer <= 0 || full === 0) return 0;
    const wPerK = box.shellWPerK + hour.airWPerK + openTopWPerK(openTop, box.openTopM2, warmer);
    const missing = warmer - hour.birdsW / wPerK;
    return Math.min(1, Math.max(0, missing / (full / wPerK + riseK)));
  }
}

/** Whether heaters give less than all they could: by a thermostat, or by the valve of gas and a hand. */
const isTurned = ({ heat: { kind, thermostat } }: HeatRig): boolean =>
  kind === 'gas' || (thermostat && kind !== 'plate');

/** A degree beyond what birds stand weighs as much as this many degrees of discomfort. */
const DANGER_WEIGHS = 4;
/** Of settings that are as good for the birds the one with fewer heaters and the lid on. */
const A_HEATER = 0.01;
const LID_OFF = 0.02;
/** Where no heat is on by day nobody leaves the lid on for a little warmth. */
const LID_ON_WITHOUT_HEAT = 0.03;
const LITTLE_WARMTH_K = 4;
/** Cold air falls on birds that sleep: by night the lid stays on unless it gets far too hot. */
const LID_OFF_BY_NIGHT = 4;
/** A chick walks away from a spot that is too hot, not from a cold night. */
const HOT_SPOT_WEIGHS = 0.25;
const COLD_NIGHT_WEIGHS = 2;

/**
 * The heaters to have on and whether to take the lid off: warm enough under the heat, a cool end
 * that is cooler than that, and never too hot everywhere; else what comes nearest.
 *
 * Work grows with the number of heaters.
 *
 * @param raisedTo how high the lamps of a setting may be raised where it is far too warm straight
 *   below them; left out, they stay where they hang
 */
export function bestSetting(
  rig: HeatRig,
  hour: HeatHour,
  { share, heightM }: { share: number; heightM: number },
  raisedTo?: (setting: HeatSetting) => number,
): HeatSetting {
  const isGas = rig.heat.kind === 'gas';
  let best: HeatSetting | undefined;
  let least = Infinity;
  for (const on of countsOf(rig, hour, { share, heightM })) {
    for (const isOpen of rig.hasLid ? BOTH : OPEN) {
      let setting = settingOf(rig, hour, { on, isOpen, share, heightM });
      // A gas heater is turned down before anybody opens what it heats.
      if (isOpen && rig.hasLid && isGas && 0 < setting.watts) continue;
      if (raisedTo && 0 < spotTooHotK(rig, hour, setting)) {
        // What is raised has no thermostat: only the spot below it changes.
        const up = Math.max(heightM, raisedTo(setting));
        const underC = setting.airC + riseUnderHeatK(rig, up);
        setting = { ...setting, heightM: up, underC };
      }
      const cost = costOf(rig, hour, setting);
      if (cost < least) [best, least] = [setting, cost];
    }
  }
  return best!;
}

const BOTH = [false, true];
const OPEN = [true];

/**
 * Counts worth trying. Plates are all used or none; what is turned down is all in use, and where
 * the birds alone are enough with the lid on it stays off with the lid off too.
 */
function countsOf(rig: HeatRig, hour: HeatHour, at: { share: number; heightM: number }) {
  const { heat, table } = rig;
  const { working } = hour;
  if (heat.kind === 'plate') {
    const isWarm = hour.targetC - table.lamps.coolEndBelowK <= hour.aroundC;
    return [isWarm ? 0 : Math.min(working, hour.places)];
  }
  if (!isTurned(rig)) return rig.counts.slice(0, working + 1);
  const shut = settingOf(rig, hour, { ...at, on: working, isOpen: !rig.hasLid });
  return [shut.watts === 0 ? 0 : working];
}

/** How much more than a little warmer than wanted it is straight under a lamp, K; else 0. */
function spotTooHotK(rig: HeatRig, hour: HeatHour, { on, underC }: HeatSetting): number {
  if (on === 0 || rig.heat.kind !== 'lamp' || rig.isAirSchedule) return 0;
  return Math.max(0, underC - hour.targetC - rig.table.lamps.spotAboveK);
}

function costOf(rig: HeatRig, hour: HeatHour, setting: HeatSetting): number {
  const { on, isOpen, airC, underC } = setting;
  const isPlate = rig.heat.kind === 'plate';
  const isUnheatedDay = on === 0 && !hour.isNight && rig.hasLid;
  const spareK = isUnheatedDay ? LITTLE_WARMTH_K : 0;
  const missingK = isPlate ? 0 : Math.max(0, hour.targetC - underC - spareK);
  const coldK = (hour.isNight ? COLD_NIGHT_WEIGHS : 1) * missingK;
  // Without a warm spot the whole box is to be as warm as birds want it.
  const coolEndC = hour.targetC - (0 < on && hasCoolEnd(rig) ? rig.table.lamps.coolEndBelowK : 0);
  const hotK = Math.max(0, airC - coolEndC) + HOT_SPOT_WEIGHS * spotTooHotK(rig, hour, setting);
  const dangerK = Math.max(0, airC - hour.warnC);
  const crowded = Math.max(0, hour.places - on);
  const lidOff = isUnheatedDay ? 0 : hour.isNight ? LID_OFF_BY_NIGHT : LID_OFF;
  const lid = !rig.hasLid ? 0 : isOpen ? lidOff : isUnheatedDay ? LID_ON_WITHOUT_HEAT : 0;
  return coldK + hotK + DANGER_WEIGHS * dangerK + crowded + A_HEATER * on + lid;
}
