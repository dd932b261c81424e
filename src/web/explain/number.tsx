import './explain.css';
import type { ReactNode } from 'react';
import type { Quantity } from '../../../shared/explain/quantity.js';
import { formatValue } from '../../../shared/units/format.js';
import { formatHeadline } from '../../../shared/explain/headline.js';
import { unitLabel } from '../../../shared/units/unit.js';
import { useOpener } from './explain-panel.js';

/** So many letters stay on one line, as a number with its unit; more would push out of a narrow column. */
const WHOLE = 12;

/**
 * A number or date that opens to where it comes from; `said` stands for the number where words say
 * it better, and what is shown may leave out what stands beside it.
 */
export function Num({ of, said, shown }: { of: Quantity; said?: string; shown?: string }) {
  const { reader, open } = useOpener();
  const text = said ?? formatHeadline(of, reader);
  return (
    <button
      type="button"
      className={text.length <= WHOLE ? 'open-number whole' : 'open-number'}
      aria-label={`${of.label}: ${text}. Where it comes from`}
      onClick={() => open(of)}
    >
      {shown ?? text}
    </button>
  );
}

/**
 * The range beside a number, when sources leave one. That a plan runs past its tables is said once for
 * all of it; the opened number says it of itself.
 */
export function Range({ of }: { of: Quantity }) {
  const { reader } = useOpener();
  const { spread, unit } = of;
  if (!spread || spread.low === spread.high) return null;
  return (
    <>
      {formatValue(spread.low, unit, reader)} to {formatValue(spread.high, unit, reader)}
    </>
  );
}

/** A grid of labeled numbers. */
export function Facts({ children }: { children: ReactNode }) {
  return <dl className="facts">{children}</dl>;
}

export function Fact({
  of,
  label,
  said,
  note,
}: {
  of: Quantity | undefined;
  label?: string;
  said?: string | undefined;
  note?: ReactNode;
}) {
  const { reader } = useOpener();
  if (!of) return null;
  // In large figures a date with its year is wider than a column of a phone.
  const [, shown, year] =
    of.unit === 'date' ? (/^(.+?),? (\d{4})$/.exec(said ?? formatHeadline(of, reader)) ?? []) : [];
  return (
    <div>
      <dt>{label ?? of.label}</dt>
      <dd>
        <Num
          of={of}
          {...(said === undefined ? {} : { said })}
          {...(shown === undefined ? {} : { shown })}
        />
        <small>
          {year !== undefined && (
            <>
              {year}
              <br />
            </>
          )}
          {note}
          <Range of={of} />
        </small>
      </dd>
    </div>
  );
}

/** What a feed conversion is a ratio of, in the farm's own weights. */
export function ConversionUnit() {
  const kg = unitLabel('kg', useOpener().reader.units);
  return (
    <>
      {kg} feed per {kg} live weight.{' '}
    </>
  );
}
