import './story.css';
import { useEffect, useRef, useState, type RefObject } from 'react';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { lifeLineOf, orderOf, type LifeDate } from '../../../../shared/plan/story/life-line.js';
import { useOpener } from '../../explain/explain-panel.js';
import { formatDayWithoutWeekday } from '../../../../shared/units/dates.js';
import { sayAge } from './say-age.js';
import { useTaskDay } from '../../tick/fitted-tasks.js';
import type { AskedBatch } from './use-plan.js';

/** The dates of a batch as a line of its life; each leads to what is said of it. */
export function LifeLine({ plan, batch }: { plan: BatchPlan; batch: AskedBatch['batch'] }) {
  const dayOf = useTaskDay('batch');
  const line = lifeLineOf(plan, batch, (task) => dayOf(task).on);
  const order = orderOf(plan);
  const isWaiting = order !== undefined && dayOf(order).isWaiting;
  const { today } = plan;
  const ahead = line.findIndex(({ on }) => today <= on);
  const isUnderWay = 0 < ahead;
  const { ref, goesOn } = useGoesOn();
  useTodayInView(ref, isUnderWay);
  return (
    <div className={goesOn ? 'story-line-box story-goes-on' : 'story-line-box'}>
      <nav aria-label="Life of the batch" className="story-line" ref={ref}>
        <ol>
          {line.map((date, k) => (
            <Point
              key={date.label + date.on}
              date={date}
              isPast={date.on < today}
              today={isUnderWay && k === ahead ? today : undefined}
              isWaiting={date.label === 'Order' && isWaiting}
            />
          ))}
        </ol>
      </nav>
    </div>
  );
}

/** Whether a line goes on to the right of what is seen of it. */
function useGoesOn() {
  const ref = useRef<HTMLElement>(null);
  const [goesOn, setGoesOn] = useState(false);
  useEffect(() => {
    const box = ref.current!;
    const measure = () => setGoesOn(box.scrollLeft + box.clientWidth + 1 < box.scrollWidth);
    const observer = new ResizeObserver(measure);
    observer.observe(box);
    observer.observe(box.firstElementChild!);
    box.addEventListener('scroll', measure, { passive: true });
    return () => {
      observer.disconnect();
      box.removeEventListener('scroll', measure);
    };
  }, []);
  return { ref, goesOn };
}

/** A line that is longer than its place is slid to where the birds are now. */
function useTodayInView(line: RefObject<HTMLElement | null>, isUnderWay: boolean): void {
  useEffect(() => {
    const box = line.current;
    const today = box?.querySelector<HTMLElement>('.story-today');
    if (!isUnderWay || !box || !today) return;
    const before = today.previousElementSibling as HTMLElement | null;
    // As much of what was before as shows that there was something.
    box.scrollLeft = today.offsetLeft - box.offsetLeft - (before?.offsetWidth ?? 0);
  }, [line, isUnderWay]);
}

function Point({
  date: { label, on, ageDays, part },
  isPast,
  today,
  isWaiting,
}: {
  date: LifeDate;
  isPast: boolean;
  /** Where today stands before it, and nothing else between. */
  today: string | undefined;
  isWaiting: boolean;
}) {
  const { reader } = useOpener();
  return (
    <>
      {today !== undefined && (
        <li className="story-today" aria-current="date">
          <span>Today</span>
          <small>{daysAhead(daysBetween(today, on))}</small>
        </li>
      )}
      <li className={isPast ? 'story-past' : undefined}>
        <a href={`#${part}`}>
          <span>{label}</span>
          <b className={isWaiting ? 'is-waiting' : undefined}>
            {formatDayWithoutWeekday(on, reader)}
          </b>
          <small>{ageDays === undefined || ageDays === 0 ? ' ' : `${sayAge(ageDays)} old`}</small>
        </a>
      </li>
    </>
  );
}

const daysAhead = (days: number): string =>
  days === 0 ? 'it is here' : days === 1 ? '1 day to go' : `${days} days to go`;
