import type { BarKind } from '../../../../shared/plan/year/year-row.js';
import type { YearPlan } from '../../../../shared/plan/year/year-plan.js';
import { isOver } from '../../../../shared/plan/work/full-weeks.js';
import { areHoursKnown } from './hours-row.js';
import { LineFill } from './line-fill.js';
import { BAR_WORDS } from './year-words.js';

/** What the lines, numbers and marks mean that are on this strip. */
export function YearKey({ year: { rows, weeks } }: { year: Pick<YearPlan, 'rows' | 'weeks'> }) {
  const there = new Set(rows.flatMap(({ bars }) => bars.map(({ kind }) => kind)));
  const kinds = (Object.keys(BAR_WORDS) as BarKind[]).filter((kind) => there.has(kind));
  return (
    <ul className="year-key" aria-hidden>
      <Sample kind="frost" words="frost in most years" />
      <Sample kind="some-frost" words="frost in one of ten" />
      {kinds.map((kind) => (
        <Sample key={kind} kind={kind} words={BAR_WORDS[kind]} />
      ))}
      <li>
        <b>24</b> the day of that month
      </li>
      {areHoursKnown(weeks) && (
        <>
          <Sample kind="chores" words="hours of chores" />
          <Sample kind="work-hours" words="of other work" />
          <Sample kind="have" words="hours you have" />
        </>
      )}
      {weeks.some(isOver) && (
        <li>
          <b className="year-key-over">!</b> not all of that week’s work fits
        </li>
      )}
    </ul>
  );
}

const Sample = ({ kind, words }: { kind: string; words: string }) => (
  <li>
    <i className={`year-bar year-${kind}`}>
      <LineFill />
    </i>{' '}
    {words}
  </li>
);
