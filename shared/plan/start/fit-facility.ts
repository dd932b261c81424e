import type { Brooder, Facility } from '../../farm/facility.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { BatchPlan } from '../batch-plan.js';
import type { StartSizes } from './start-defaults.js';
import type { StartSetting } from './start-setting.js';

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

/** A facility as large as the plan asks for. */
export function fitFacility(
  facility: Facility,
  plan: BatchPlan,
  { farm, batches }: FarmPicture,
  lamps: LampChoice,
  { defaults }: StartSetting,
): Facility {
  const sizes = defaults[farm.units];
  const { outdoors, leaving } = plan;
  switch (facility.kind) {
    case 'brooder': {
      const [floor, feeder, drinker] = plan.space.needs.map(({ most }) => most.value);
      const neededW = (plan.heat?.heatersNeeded?.value ?? 0) * facility.heat.wattsEach;
      // A board across it costs less than lamps for a floor that small chicks do not use yet.
      const boarded = sizes.lamp.mostInAll * sizes.lamp.wattsEach < neededW && !facility.closesOff;
      const heat = boarded ? facility.heat : heatFor(facility, plan, sizes, lamps);
      return {
        ...facility,
        ...(boarded ? boardOf(facility) : {}),
        ...sidesFor(
          Math.max(floor!, plan.birds.toOrder.value * defaults.brooderM2PerChick),
          defaults.brooderSidesM[farm.units],
        ),
        feederCm: upTo(feeder!, sizes.edgeStepCm),
        drinkerCm: upTo(drinker!, sizes.edgeStepCm),
        heat,
        // Gas warms a room with a ceiling, not a box.
        ...(heat.kind === 'gas' ? roomOf(facility, sizes.roomHeightM) : {}),
      };
    }
    case 'field-pen':
      return { ...facility, count: outdoors.pensNeeded?.value ?? facility.count };
    case 'freezer': {
      // With what is left of an earlier batch in it.
      const steps = (leaving?.freezerSteps ?? []).map(({ filled }) => filled.value);
      const need = Math.max(leaving?.freezerNeed?.value ?? 0, ...steps);
      const { freezersL } = sizes;
      return { ...facility, liters: freezersL.find((each) => need <= each) ?? freezersL.at(-1)! };
    }
    case 'coop': {
      const hens = batches.find(({ coopId }) => coopId === facility.id)!.wantedBirds;
      const { floorStepM2, roostStepM, runStepM2 } = sizes.coop;
      return {
        ...facility,
        floorM2: upTo(outdoors.floorNeeded?.value ?? 0, floorStepM2),
        roostM: upTo(outdoors.roost?.value ?? 0, roostStepM),
        nestBoxes: outdoors.nests?.value ?? facility.nestBoxes,
        runM2: upTo(defaults.runM2PerHen * hens, runStepM2),
      };
    }
    default:
      return facility;
  }
}

const roomOf = ({ walls, assumed = [] }: Brooder, heightM: number): Partial<Brooder> => ({
  ...{ heightM, roof: walls },
  assumed: [...new Set([...assumed, 'roof'])],
});

const boardOf = ({ assumed = [] }: Brooder): Partial<Brooder> => ({
  closesOff: true,
  assumed: [...new Set([...assumed, 'closesOff'])],
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

/** The next whole number of steps; four decimals, which no rounding of a step goes past. */
const upTo = (value: number, step: number): number =>
  Number((Math.max(1, Math.ceil(value / step - 1e-6)) * step).toFixed(4));
