import { memo, type ReactNode } from 'react';
import { Link } from 'wouter';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { YearBar, YearDate, YearRow } from '../../../../shared/plan/year/year-row.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';
import { useSayDate } from '../../explain/say-date.js';
import { LineFill } from './line-fill.js';
import { along, isOn, placeOf } from './strip-place.js';
import { BAR_WORDS } from './year-words.js';

/** A name that stays put, and the line of the year beside it. */
export function StripRow({
  name,
  note,
  href,
  className = '',
  children,
}: {
  name: string;
  note?: string;
  href: string;
  className?: string;
  children: ReactNode;
}) {
  return (
    <div className={`year-row ${className}`}>
      <div className="year-name">
        <Link href={href}>{name}</Link>
        {note !== undefined && <small>{note}</small>}
      </div>
      <div className="year-track">{children}</div>
    </div>
  );
}

/**
 * The lines of a row, and the number of the day at each turn of them. What they show stands in
 * words under the strip; here they are pressed to go there.
 */
export const RowLines = memo(function RowLines({
  row,
  span,
  href,
  as = 'is',
}: {
  row: YearRow;
  span: YearSpan;
  href: string;
  /** As it is, as it was while its arrival is being moved, or as it would be then. */
  as?: 'is' | 'was' | 'then';
}) {
  const sayDate = useSayDate();
  return (
    <div className={`year-lines year-as-${as}`} aria-hidden>
      {row.bars.map((bar) => {
        const place = placeOf(span, bar);
        const title = `${row.name}, ${wordsOf(bar)}: ${sayDate(bar.from)} to ${sayDate(addDays(bar.until, -1))}`;
        return (
          place && (
            <Link
              key={`${bar.kind} ${bar.from}`}
              href={href}
              tabIndex={-1}
              title={title}
              className={`year-bar year-${bar.kind}`}
              style={place}
            >
              <LineFill />
              <span>{hasRoom(bar) && wordsOf(bar)}</span>
            </Link>
          )
        );
      })}
      {turnsOf(row, span).map(({ on, words, mark }, k, turns) => (
        <span
          key={`${on} ${words}`}
          className="year-turn"
          style={{ left: `${along(span, on)}%` }}
          title={`${row.name}, ${words}: ${sayDate(on)}`}
        >
          {Number(on.slice(8))}
          {mark && hasRoomUntil(on, turns[k + 1]) && ` ${mark}`}
        </span>
      ))}
    </div>
  );
});

/** Days on which a word has room. */
const LONG_ENOUGH = 24;
/** What can be done when says its name in words under the strip. */
const hasRoom = ({ kind, from, until }: YearBar): boolean =>
  kind !== 'work' && LONG_ENOUGH <= daysBetween(from, until);
/** Days between two numbers that do not run into each other. */
const APART = 9;

/** Days between a number with its word and the next number, on a desk's strip. */
const WORD_APART = 30;
const hasRoomUntil = (on: YearDate['on'], next: YearDate | undefined): boolean =>
  next === undefined || WORD_APART <= daysBetween(on, next.on);

const wordsOf = ({ kind, words }: YearBar): string => words ?? BAR_WORDS[kind];

/** Days whose number is written: of those too close to each other the first. */
function turnsOf({ dates }: YearRow, span: YearSpan): YearDate[] {
  const turns: YearDate[] = [];
  for (const date of dates) {
    if (date.isInWords || !isOn(span, date.on)) continue;
    const last = turns.at(-1);
    if (!last || APART <= daysBetween(last.on, date.on)) turns.push(date);
  }
  return turns;
}
