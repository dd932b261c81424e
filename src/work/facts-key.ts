import type { FarmPicture } from '../../shared/farm/picture.js';
import { signatureOf } from '../work-pool/signature.js';

/** How often something was saved: put back, a row is what it was. */
const COUNTS: ReadonlySet<string> = new Set(['version', 'revision']);

/**
 * All that the work of a day is planned from, in a few letters: without the plan that was kept today, so
 * that it is the same again once something is undone.
 */
export function factsKey(farmId: string, picture: FarmPicture): string {
  const keptPlans = picture.keptPlans.filter(({ plannedOn }) => plannedOn < picture.today);
  const facts = JSON.stringify({ ...picture, keptPlans }, (name, value: unknown) =>
    COUNTS.has(name) ? undefined : value,
  );
  return `${farmId}/${signatureOf([facts])}`;
}
