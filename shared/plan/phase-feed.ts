import type { Purpose } from '../farm/batch.js';

/** What feed of a phase is called that no product of the farm is: “Layer feed for hens”. */
export const nameOfPhase = (phase: string, purpose: Purpose): string =>
  `${phase} feed for ${purpose === 'meat' ? 'meat birds' : 'hens'}`;
