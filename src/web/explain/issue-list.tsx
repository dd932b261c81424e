import { Fragment } from 'react';
import type { IssueLevel, PlanIssue } from '../../../shared/problems/plan-issue.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { inOwnUnits } from '../../../shared/units/own-units.js';
import { Caution } from './caution.js';
import { useOpener } from './explain-panel.js';
import { MarkBadge } from './mark-badge.js';

interface Props {
  readonly issues: readonly PlanIssue[];
  readonly tables: Pick<Tables, 'sources'>;
}

/** What a plan warns of, a line each, the most pressing first; what is only good to know stands by. */
export function IssueList({ issues, tables }: Props) {
  const of = (...levels: IssueLevel[]) =>
    levels.flatMap((l) => issues.filter((i) => i.level === l));
  const notes = of('note');
  return (
    <>
      <Lines issues={of('stop', 'act')} tables={tables} />
      {0 < notes.length && (
        <details className="caution-notes">
          <summary>Good to know: {notes.length}</summary>
          <Lines issues={notes} tables={tables} />
        </details>
      )}
    </>
  );
}

const Lines = ({ issues, tables }: Props) =>
  issues.length === 0 ? null : (
    <ul className="caution-list">
      {issues.map((issue) => (
        <li key={issue.code + issue.text}>
          <IssueText issue={issue} tables={tables} />
        </li>
      ))}
    </ul>
  );

/** A warning: what it comes to, and behind a touch the rest and what its figures rest on. */
function IssueText({ issue, tables }: { issue: PlanIssue; tables: Props['tables'] }) {
  const { level, mark, sources = [] } = issue;
  const text = inOwnUnits(issue.text, useOpener().reader.units);
  // What can kill is said whole.
  const [line, rest] = level === 'stop' ? [text, ''] : firstSentence(text);
  if (rest === '' && !mark) return <Caution level={level} line={line} />;
  return (
    <Caution level={level} line={line}>
      {rest}
      {mark && (
        <Fragment>
          {' '}
          <MarkBadge mark={mark} />{' '}
          <Sources titles={sources.flatMap((id) => tables.sources[id]?.title ?? [])} />
        </Fragment>
      )}
    </Caution>
  );
}

/** So many are read; more are counted, and named one touch deeper. */
const FEW_SOURCES = 3;

function Sources({ titles }: { titles: readonly string[] }) {
  const named = <small>{titles.join('; ')}</small>;
  if (titles.length <= FEW_SOURCES) return named;
  return (
    <details>
      <summary>{titles.length} sources</summary>
      {named}
    </details>
  );
}

/** A sentence ends where a new one begins with a capital letter or a number. */
function firstSentence(text: string): readonly [string, string] {
  const end = /[.!?] (?=[\p{Lu}\d])/u.exec(text);
  return end ? [text.slice(0, end.index + 1), text.slice(end.index + 2)] : [text, ''];
}
