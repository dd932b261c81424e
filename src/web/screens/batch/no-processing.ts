import type { BatchDraft } from './use-plan.js';

/** A slot belongs to a hired processor, cones and helpers to a day at home. */
export const NO_SLOT = { slotDate: undefined, slotBirds: undefined } as const;
export const NOT_AT_HOME = {
  processingHelpers: undefined,
  helpersWeekday: undefined,
  processingIsFirst: undefined,
  plucking: undefined,
  killingCones: undefined,
  scalderBirds: undefined,
  pluckerBirds: undefined,
} as const;
export const NO_PROCESSING: BatchDraft = { processing: undefined, ...NO_SLOT, ...NOT_AT_HOME };
