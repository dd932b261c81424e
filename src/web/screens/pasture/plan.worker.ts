import type { FarmPicture } from '../../../../shared/farm/picture.js';
import { planPasture, type PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { FieldError, type FieldProblem } from '../../../../shared/problems/field-problem.js';

export interface Asked {
  readonly id: number;
  readonly picture: FarmPicture;
  readonly tables: Tables;
}
export type Answered = { readonly id: number } & (
  | { readonly plan: PasturePlan }
  | { readonly problems: readonly FieldProblem[] }
  | { readonly failed: string }
);

/** Plans off the page's own thread: a phone takes some tenths of a second for a season. */
self.onmessage = ({ data }: MessageEvent<Asked>) => {
  self.postMessage(answer(data));
};

function answer({ id, picture, tables }: Asked): Answered {
  try {
    return { id, plan: planPasture(picture, tables) };
  } catch (error) {
    if (error instanceof FieldError) return { id, problems: error.problems };
    return { id, failed: error instanceof Error ? error.message : String(error) };
  }
}
