import { Fragment, type ReactNode } from 'react';
import { monthOf } from '../../../../shared/calendar/plain-date.js';
import type { YearPlan } from '../../../../shared/plan/year/year-plan.js';
import type { YearRow } from '../../../../shared/plan/year/year-row.js';
import { monthsOf } from '../../../../shared/plan/year/year-span.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { areHoursKnown, HoursRow } from './hours-row.js';
import { along } from './strip-place.js';
import { RowLines, StripRow } from './strip-row.js';
import { WeatherRows } from './weather-rows.js';
import { GROUP_WORDS, hrefOf } from './year-words.js';

/** Thirteen months from left to right, all that a farm has under each other. */
export function YearStrip({
  year,
  base,
  linesOf,
}: {
  year: YearPlan;
  base: string;
  /** Lines of a row that are not merely shown: of one whose arrival can be moved. */
  linesOf?: (row: YearRow) => ReactNode;
}) {
  const { span, rows, weeks, today } = year;
  return (
    <div className="year-sheet">
      <div className="year-under" aria-hidden>
        <div className="year-track">
          {monthsOf(span).map((month) => (
            <i key={month} className="year-month-line" style={{ left: `${along(span, month)}%` }} />
          ))}
        </div>
      </div>
      <Months year={year} />
      <GroupHead words="Weather: odds, not a forecast" />
      <WeatherRows year={year} base={base} />
      {rows.map((row, k) => (
        <Fragment key={`${row.kind} ${row.id}`}>
          {rows[k - 1]?.kind !== row.kind && <GroupHead words={GROUP_WORDS[row.kind]} />}
          <StripRow name={row.name} href={hrefOf(base, row)}>
            {linesOf?.(row) ?? <RowLines row={row} span={span} href={hrefOf(base, row)} />}
          </StripRow>
        </Fragment>
      ))}
      {areHoursKnown(weeks) && (
        <>
          <GroupHead words="Hours" />
          <HoursRow weeks={weeks} span={span} base={base} />
        </>
      )}
      <div className="year-over" aria-hidden>
        <div className="year-track">
          <i className="year-today" style={{ left: `${along(span, today)}%` }} />
        </div>
      </div>
    </div>
  );
}

const GroupHead = ({ words }: { words: string }) => (
  <div className="year-group">
    <span>{words}</span>
  </div>
);

/** Names of the months; January says its year. */
function Months({ year: { span, today } }: { year: YearPlan }) {
  return (
    <div className="year-row year-months" aria-hidden>
      <div className="year-name" />
      <div className="year-track">
        {monthsOf(span).map((month) => (
          <span key={month} style={{ left: `${along(span, month)}%` }}>
            {formatMonth(month).slice(0, 3)}
            {monthOf(month) === 1 && <small> {month.slice(0, 4)}</small>}
          </span>
        ))}
        <b className="year-today-word" style={{ left: `${along(span, today)}%` }}>
          today
        </b>
      </div>
    </div>
  );
}
