import { memo } from 'react';
import { Link } from 'wouter';
import { isOver } from '../../../../shared/plan/work/full-weeks.js';
import { wanted, type YearWeek } from '../../../../shared/plan/year/year-weeks.js';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { YearSpan } from '../../../../shared/plan/year/year-span.js';
import { LineFill } from './line-fill.js';
import { placeOf } from './strip-place.js';
import { StripRow } from './strip-row.js';

/** Hours wanted against hours available, a column a week: a week that is short stands out. */
export const HoursRow = memo(function HoursRow({
  weeks,
  span,
  base,
}: {
  weeks: readonly YearWeek[];
  span: YearSpan;
  base: string;
}) {
  const mostWanted = Math.max(...weeks.map(wanted));
  const mostThere = Math.max(...weeks.map(({ hoursAvailable }) => hoursAvailable));
  const most = Math.max(1, mostWanted, mostThere);
  const href = `${base}/work/plan`;
  const share = (hours: number): string => `${(100 * hours) / most}%`;
  return (
    <StripRow
      name="Hours a week"
      note={`columns: what the work takes, ${Math.round(mostWanted)} h in the fullest week; line: what you have, ${Math.round(mostThere)} h at most`}
      href={href}
      className="year-hours"
    >
      <div className="year-lines" aria-hidden>
        {weeks.map((week) => (
          <Link
            key={week.from}
            href={href}
            tabIndex={-1}
            className={`year-week ${isOver(week) ? 'year-short' : ''}`}
            style={placeOf(span, { from: week.from, until: addDays(week.from, 7) })}
          >
            <i className="year-have" style={{ height: share(week.hoursAvailable) }} />
            <i className="year-chores" style={{ height: share(week.choreHours) }} />
            <i
              className="year-work-hours"
              style={{ height: share(week.workHours), bottom: share(week.choreHours) }}
            >
              <LineFill />
            </i>
            {isOver(week) && <b>!</b>}
          </Link>
        ))}
      </div>
    </StripRow>
  );
});

/** Whether anybody on the farm has hours: without them every week would be short. */
export const areHoursKnown = (weeks: readonly YearWeek[]): boolean =>
  weeks.some(({ hoursAvailable }) => 0 < hoursAvailable);
