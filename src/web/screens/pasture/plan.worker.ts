import { planPasture, type PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import type { PastureRequest } from '../../../../shared/plan/pasture/pasture-request.js';
import { FieldError, type FieldProblem } from '../../../../shared/problems/field-problem.js';

export interface Asked {
  readonly id: number;
  readonly request: PastureRequest;
}
export type Answered = { readonly id: number } & (
  | { readonly plan: PasturePlan }
  | { readonly problems: readonly FieldProblem[] }
  | { readonly failed: string }
);

/** Plans off the page's own thread: a search over orders of moves takes a good part of a second. */
self.onmessage = ({ data: { id, request } }: MessageEvent<Asked>) => {
  self.postMessage(answer(id, request));
};

function answer(id: number, request: PastureRequest): Answered {
  try {
    return { id, plan: planPasture(request) };
  } catch (error) {
    if (error instanceof FieldError) return { id, problems: error.problems };
    return { id, failed: error instanceof Error ? error.message : String(error) };
  }
}
