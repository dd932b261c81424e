import type { BarKind, YearRow } from '../../../../shared/plan/year/year-row.js';
import { LineFill } from './line-fill.js';
import { BAR_WORDS } from './year-words.js';

/** What the lines mean that are on this strip. */
export function YearKey({ rows }: { rows: readonly YearRow[] }) {
  const there = new Set(rows.flatMap(({ bars }) => bars.map(({ kind }) => kind)));
  const kinds = (Object.keys(BAR_WORDS) as BarKind[]).filter((kind) => there.has(kind));
  return (
    <ul className="year-key" aria-hidden>
      <Sample kind="frost" words="frost in most years" />
      <Sample kind="some-frost" words="in one of ten" />
      {kinds.map((kind) => (
        <Sample key={kind} kind={kind} words={BAR_WORDS[kind]} />
      ))}
      <Sample kind="chores" words="chores" />
      <Sample kind="work-hours" words="other work" />
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
