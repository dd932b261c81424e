import type { Candidate } from './better-odds.js';
import type { WholeWork } from './whole-work.js';
import { fitAll } from './fitted-work.js';
import type { WorkRequest } from './work-request.js';

/** Makes the same work with some birds of a batch fewer; nothing where that cannot be. */
export type WithFewerBirds = (batchId: string, birds: number) => WorkRequest | undefined;

/** As many fewer as are tried. */
const BIRDS = 10;

/** Ten birds fewer of each batch whose own work is unlikely to get done. */
export function fewerBirds(
  { withFewerBirds }: { readonly withFewerBirds?: WithFewerBirds | undefined },
  { needs }: WholeWork,
  unlikely: readonly number[],
): Candidate[] {
  const ofBatch = new Map<string, number[]>();
  for (const i of unlikely) {
    const { belongsTo } = needs[i]!;
    if (belongsTo?.kind === 'batch')
      ofBatch.set(belongsTo.id, [...(ofBatch.get(belongsTo.id) ?? []), i]);
  }
  return [...ofBatch].flatMap(([batchId, helps]): Candidate[] => {
    const request = withFewerBirds?.(batchId, BIRDS);
    const fewer = request && fitAll(request, 1).work;
    if (!fewer || !isSameWork(fewer, needs)) return [];
    return [{ told: { kind: 'fewer-birds', birds: BIRDS }, helps, problem: fewer.problem }];
  });
}

/** Only then can the two be played in the same order. */
const isSameWork = (fewer: WholeWork, needs: WholeWork['needs']): boolean =>
  fewer.needs.length === needs.length && fewer.needs.every(({ key }, i) => key === needs[i]!.key);
