import type { Quantity } from '../../../../shared/explain/quantity.js';
import { useOpener } from '../../explain/explain-panel.js';
import { briefNumber } from './brief-number.js';

/** A number to be read at arm's length, with its unit and what it is small beside it; it opens. */
export function BigNumber({ of, what }: { of: Quantity; what: string }) {
  const { reader, open } = useOpener();
  const { figures, unit } = briefNumber(of, reader);
  return (
    <button
      type="button"
      className="today-number"
      aria-label={`${figures} ${unit} ${what}. Where it comes from`}
      onClick={() => open(of)}
    >
      <span>
        <b>{figures}</b> {unit}
      </span>{' '}
      <small>{what}</small>
    </button>
  );
}
