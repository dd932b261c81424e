import { useMutation } from '@tanstack/react-query';
import { Failure } from './states.js';

/** What was kept with a touch, in words, and what puts all of it back. */
export interface Kept {
  readonly words: string;
  readonly undo: () => Promise<unknown>;
}

/** What was kept, with its undo, until the screen is left. */
export function KeptSaid({ of, onUndone }: { of: Kept; onUndone: () => void }) {
  const undo = useMutation({ mutationFn: of.undo, onSuccess: onUndone });
  return (
    <div className="tell-said">
      <p role="status">{of.words}. Kept.</p>
      <button
        type="button"
        className="today-button"
        disabled={undo.isPending}
        onClick={() => undo.mutate()}
      >
        Undo
      </button>
      <Failure error={undo.error} />
    </div>
  );
}
