import { useEffect, useRef, type KeyboardEvent, type PointerEvent } from 'react';
import { addDays, daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';
import { useSayDate } from '../../explain/say-date.js';
import { along } from './strip-place.js';

const WEEK = 7;

/**
 * What an arrival is moved by: dragged, or a day or a week at a time by keys. It says the date.
 * Enter goes to the decision, Escape leaves the arrival where it was.
 */
export function ArrivalHandle({
  id,
  name,
  span,
  today,
  saved,
  date,
  onMove,
  onLeave,
  onDecide,
}: {
  id: string;
  name: string;
  span: YearSpan;
  today: string;
  /** The arrival as it is saved, and as it stands while it is moved. */
  saved: string;
  date: string;
  onMove: (date: string) => void;
  onLeave: () => void;
  onDecide: () => void;
}) {
  const sayDate = useSayDate();
  const grip = useRef<{ readonly x: number; readonly date: string; readonly dayPx: number }>(null);
  const handle = useRef<HTMLDivElement>(null);
  const last = addDays(span.until, -1);
  // Keys may carry it out of sight; a hand that drags it sees where it goes.
  useEffect(() => {
    if (grip.current === null && document.activeElement === handle.current)
      handle.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [date]);
  const moveTo = (wished: string): void =>
    onMove(wished < today ? today : last < wished ? last : wished);

  const take = (event: PointerEvent<HTMLDivElement>): void => {
    const { currentTarget, pointerId, clientX } = event;
    currentTarget.setPointerCapture(pointerId);
    const { width } = currentTarget.parentElement!.getBoundingClientRect();
    grip.current = { x: clientX, date, dayPx: width / span.days };
  };
  const drag = ({ clientX }: PointerEvent): void => {
    if (!grip.current) return;
    const days = Math.round((clientX - grip.current.x) / grip.current.dayPx);
    moveTo(addDays(grip.current.date, days));
  };
  const letGo = (): void => {
    grip.current = null;
  };

  const press = (event: KeyboardEvent): void => {
    const step = KEY_DAYS[event.key];
    if (step !== undefined) moveTo(addDays(date, event.shiftKey ? Math.sign(step) * WEEK : step));
    else if (event.key === 'Home') onLeave();
    else if (event.key === 'Escape') onLeave();
    else if (event.key === 'Enter') onDecide();
    else return;
    event.preventDefault();
  };

  return (
    <div
      id={id}
      ref={handle}
      role="slider"
      tabIndex={0}
      className="year-handle no-print"
      aria-label={`Arrival of ${name}`}
      aria-describedby="year-how-to-move"
      aria-valuemin={0}
      aria-valuemax={daysBetween(today, last)}
      aria-valuenow={daysBetween(today, date)}
      aria-valuetext={`${sayDate(date)}${date === saved ? '' : `, in place of ${sayDate(saved)}`}`}
      style={{ left: `${along(span, date)}%` }}
      onPointerDown={take}
      onPointerMove={drag}
      onPointerUp={letGo}
      onPointerCancel={letGo}
      onKeyDown={press}
    >
      <i />
    </div>
  );
}

const KEY_DAYS: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -WEEK,
  PageUp: WEEK,
};
