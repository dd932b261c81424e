import type { HeatSourceKind } from './facility.js';

/** What to mind of a kind of heat: the key of its caution. */
export const HEAT_CAUTIONS: Readonly<Record<HeatSourceKind, string>> = {
  lamp: 'heat-lamp',
  plate: 'heat-plate',
  gas: 'carbon-monoxide',
};

/** What to mind of it in frost, when it goes out: the key of its caution. */
export const HEAT_OUT_CAUTIONS: Readonly<Record<HeatSourceKind, string>> = {
  lamp: 'power-cut',
  plate: 'power-cut',
  gas: 'gas-empty',
};

/** Whether water outdoors freezes in a night as cold as this. */
export const isFrost = (lowC: number | string | undefined): boolean =>
  lowC !== undefined && Number(lowC) <= 0;

/** What to mind of birds out of the brooder where nights freeze. */
export const FROST_CAUTIONS: readonly string[] = ['frozen-drinkers', 'coop-frost'];
