/** A large tick; once it is done the same place undoes it. */
export function TickButton({
  name,
  isDone,
  onTick,
  onUndo,
}: {
  name: string;
  isDone: boolean;
  onTick: () => void;
  onUndo: () => void;
}) {
  return (
    <button
      type="button"
      className={isDone ? 'today-tick today-tick-done' : 'today-tick'}
      aria-label={`${isDone ? 'Undo' : 'Done'}: ${name}`}
      onClick={isDone ? onUndo : onTick}
    >
      <svg viewBox="0 0 24 24" aria-hidden="true">
        <circle cx="12" cy="12" r="10.5" />
        {isDone && <path d="m7 12.5 3.5 3.5 6.5-7.5" />}
      </svg>
      {isDone && <span aria-hidden="true">Undo</span>}
    </button>
  );
}
