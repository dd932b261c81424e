/** How a piece of work stands today. */
export type TickState = 'open' | 'done' | 'put-off' | 'struck-out';

/** What stands in the ring: done is a tick, and nothing else is. */
const MARKS: Record<TickState, string | undefined> = {
  open: undefined,
  done: 'm7 12.5 3.5 3.5 6.5-7.5',
  'put-off': 'M7 12h10m-4-4 4 4-4 4',
  'struck-out': 'M7 12h10',
};

/** A large tick; once something was said of the work the same place undoes it. */
export function TickButton({
  name,
  state,
  onTick,
  onUndo,
}: {
  name: string;
  state: TickState;
  onTick: () => void;
  onUndo: () => void;
}) {
  const isOpen = state === 'open';
  const mark = MARKS[state];
  return (
    <button
      type="button"
      className={`today-tick today-tick-${state}`}
      aria-label={`${isOpen ? 'Done' : 'Undo'}: ${name}`}
      onClick={isOpen ? onTick : onUndo}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <circle cx="12" cy="12" r="10.5" />
        {mark && <path d={mark} />}
      </svg>
      {!isOpen && <span aria-hidden="true">Undo</span>}
    </button>
  );
}
