import type { Facility } from '../../farm/facility.js';
import type { FarmPicture } from '../../farm/picture.js';
import type { BatchPlan } from '../batch-plan.js';
import { fitBrooder, type LampChoice } from './fit-brooder.js';
import type { StartSetting } from './start-setting.js';
import { upTo } from './up-to.js';

/** A facility as large as the plan asks for. */
export function fitFacility(
  facility: Facility,
  plan: BatchPlan,
  { farm, batches }: FarmPicture,
  lamps: LampChoice,
  setting: StartSetting,
): Facility {
  const { defaults } = setting;
  const sizes = defaults[farm.units];
  const { outdoors, leaving } = plan;
  switch (facility.kind) {
    case 'brooder':
      return fitBrooder(facility, plan, { units: farm.units, lamps, setting });
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
