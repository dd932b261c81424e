import type { HeatSourceKind } from '../farm/facility.js';

/** What tasks say of lamps, as it is said of another kind of heat; longer texts first. */
const OF_HEAT: Readonly<Record<Exclude<HeatSourceKind, 'lamp'>, Readonly<Record<string, string>>>> =
  {
    plate: {
      'hang the lamps by chain and by wire': 'set up the heat plates, cords out of reach',
      'restore lamp clearance': 'raise the plates to match',
      'Litter climbs toward the lamp: fire': 'Litter climbs to the plate: it gets too hot there',
      'lamp failure': 'plates that fail',
      lamps: 'heat plates',
    },
    gas: {
      'hang the lamps by chain and by wire': 'hang the gas heaters by chain',
      'restore lamp clearance': 'restore the clearance of the heaters',
      'Litter climbs toward the lamp: fire': 'Litter climbs toward the heater: fire',
      'lamp failure': 'heaters that go out',
      lamps: 'gas heaters',
      'power on': 'gas on, a full bottle beside it',
    },
  };

/** A text of a task that is written of lamps, as it is said of the heat there is. */
export function saidOfHeat(kind: HeatSourceKind, text: string): string {
  if (kind === 'lamp') return text;
  return Object.entries(OF_HEAT[kind]).reduce(
    (said, [ofLamps, other]) => said.replace(ofLamps, other),
    text,
  );
}
