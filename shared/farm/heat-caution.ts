import type { HeatSourceKind } from './facility.js';

/** What to mind of a kind of heat: the key of its caution. */
export const HEAT_CAUTIONS: Readonly<Record<HeatSourceKind, string>> = {
  lamp: 'heat-lamp',
  plate: 'heat-plate',
  gas: 'carbon-monoxide',
};
