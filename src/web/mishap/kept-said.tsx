import { useMutation } from '@tanstack/react-query';
import { Failure } from '../shell/states.js';
import type { KeptMishap } from './mishap-props.js';

/** What was kept of something that went wrong, until the screen is left. */
export function KeptSaid({ of, onUndone }: { of: KeptMishap; onUndone: () => void }) {
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
