import './caution.css';
import { IconAlertTriangle, IconInfoCircle, IconUrgent } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import type { IssueLevel } from '../../../shared/problems/plan-issue.js';

const SIGNS: Record<IssueLevel, { readonly word: string; readonly icon: ReactNode }> = {
  stop: { word: 'Must be put right', icon: <IconUrgent aria-hidden /> },
  act: { word: 'Needs doing', icon: <IconAlertTriangle aria-hidden /> },
  note: { word: 'Good to know', icon: <IconInfoCircle aria-hidden /> },
};

/** What to mind, as one line; the why stands behind a touch. */
export function Caution({
  level = 'act',
  line,
  children,
}: {
  level?: IssueLevel;
  line: ReactNode;
  children?: ReactNode;
}) {
  const sign = (
    <>
      {SIGNS[level].icon}
      <span className="caution-line">
        <span className="only-heard">{SIGNS[level].word}: </span>
        {line}
      </span>
    </>
  );
  if (!children) {
    return (
      <p className="caution" data-level={level}>
        {sign}
      </p>
    );
  }
  return (
    <details className="caution-more" data-level={level}>
      <summary className="caution">
        {sign} <span className="caution-why">Why</span>
      </summary>
      <div className="caution-text">{children}</div>
    </details>
  );
}
