import type { Brooder } from '../../farm/facility.js';
import type { Farm } from '../../farm/farm.js';
import type { BatchPlan } from '../batch-plan.js';
import type { StartSizes } from './start-defaults.js';
import type { StartSetting } from './start-setting.js';
import { upTo } from './up-to.js';

export type LampChoice = 'usual' | 'smaller-if-too-strong';

/** The smallest box of usual sides with so much floor, and not more than twice as long as wide. */
export function sidesFor(
  floorM2: number,
  sidesM: readonly number[],
): Pick<Brooder, 'lengthM' | 'widthM'> {
  const boxes = sidesM.flatMap((widthM) =>
    sidesM
      .filter((lengthM) => widthM <= lengthM && lengthM <= 2 * widthM)
      .map((lengthM) => ({ lengthM, widthM })),
  );
  const areaOf = ({ lengthM, widthM }: (typeof boxes)[number]): number => lengthM * widthM;
  const enough = boxes.filter((box) => floorM2 <= areaOf(box));
  const [smallest] = enough.sort((a, b) => areaOf(a) - areaOf(b));
  return smallest ?? boxes.at(-1)!;
}

/**
 * A brooder as large and as warm as the plan asks for. What keeps it warm is chosen once it has its
 * size, the smallest thing first: a board across it, then a warmer place, and only then more lamps
 * than neighbours hang over so many chicks.
 */
export function fitBrooder(
  brooder: Brooder,
  plan: BatchPlan,
  {
    units,
    lamps,
    setting: { defaults, tables },
  }: {
    readonly units: Farm['units'];
    readonly lamps: LampChoice;
    readonly setting: StartSetting;
  },
): Brooder {
  const sizes = defaults[units];
  const [floor, feeder, drinker] = plan.space.needs.map(({ most }) => most.value);
  const sides = sidesFor(
    Math.max(floor!, plan.birds.toOrder.value * defaults.brooderM2PerChick),
    defaults.brooderSidesM[units],
  );
  const sized: Brooder = {
    ...brooder,
    ...sides,
    feederCm: upTo(feeder!, sizes.edgeStepCm),
    drinkerCm: upTo(drinker!, sizes.edgeStepCm),
  };
  if (brooder.lengthM !== sides.lengthM || brooder.widthM !== sides.widthM) return sized;
  if (hasManyLamps(brooder, plan, sizes, tables)) {
    // A board across it costs less than lamps for a floor that small chicks do not use yet.
    if (!brooder.closesOff) return { ...sized, ...boardOf(brooder) };
    const { airC, mostFloorM2 } = defaults.warmPlace;
    if (brooder.standsIn !== 'heated-room' && sides.lengthM * sides.widthM <= mostFloorM2)
      return { ...sized, ...warmPlaceOf(brooder, airC) };
  }
  const heat = heatFor(brooder, plan, sizes, lamps);
  // Gas warms a room with a ceiling, not a box.
  const room = heat.kind === 'gas' ? roomOf(brooder, sizes.roomHeightM) : {};
  return { ...sized, heat, ...room };
}

/** Whether it takes more heat than the lamps of the common rule give, with one to spare. */
function hasManyLamps(
  { heat }: Brooder,
  plan: BatchPlan,
  { lamp }: StartSizes,
  { heat: { lampRule } }: StartSetting['tables'],
): boolean {
  if (heat.kind !== 'lamp' || !plan.heat) return false;
  const { heatersNeeded, rules } = plan.heat;
  // In cold for which the rule has no figure, the fewest chicks for each lamp of which it has one.
  const fewest = Math.ceil(plan.birds.chicksPlaced.value / lampRule.fewestChicks);
  const ruleW = rules.lampRule ? rules.lampRule.value * heat.wattsEach : fewest * lampRule.lampW;
  return ruleW + lamp.wattsEach < heatersNeeded.value * heat.wattsEach;
}

const boardOf = ({ assumed = [] }: Brooder): Partial<Brooder> => ({
  closesOff: true,
  assumed: [...new Set([...assumed, 'closesOff'])],
});

const warmPlaceOf = ({ assumed = [] }: Brooder, airC: number): Partial<Brooder> => ({
  ...{ standsIn: 'heated-room', roomC: airC },
  assumed: [...new Set([...assumed, 'roomC'])],
});

const roomOf = ({ walls, assumed = [] }: Brooder, heightM: number): Partial<Brooder> => ({
  ...{ heightM, roof: walls },
  assumed: [...new Set([...assumed, 'roof'])],
});

/** Lamps that leave a cool end; gas where lamps would be too many. */
function heatFor(
  { heat }: Brooder,
  plan: BatchPlan,
  { lamp, gas }: StartSizes,
  lamps: LampChoice,
): Brooder['heat'] {
  const needed = plan.heat?.heatersNeeded?.value ?? 0;
  if (heat.kind === 'gas') return { ...heat, count: Math.max(1, needed) };
  if (lamp.most < needed)
    return { ...heat, kind: 'gas', wattsEach: gas.wattsEach, count: 1, thermostat: true };
  const isSmaller = lamps === 'smaller-if-too-strong' && isTooStrong(plan);
  const wattsEach = isSmaller ? lamp.smallerWatts : heat.wattsEach;
  return { ...heat, wattsEach, count: Math.max(lamp.least, needed) };
}

const isTooStrong = ({ issues }: BatchPlan): boolean =>
  issues.some(({ code }) => code === 'lamp-too-strong');
