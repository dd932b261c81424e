import { Alert, SimpleGrid } from '@mantine/core';
import { IconAlertTriangle, IconUrgent } from '@tabler/icons-react';
import type { ReactNode } from 'react';
import type { IssueLevel, PlanIssue } from '../../../../shared/problems/plan-issue.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { IssueText } from '../../explain/issue-text.js';
import { More } from './story-section.js';

const LOOKS: Record<
  Exclude<IssueLevel, 'note'>,
  { color: string; title: string; icon: ReactNode }
> = {
  stop: { color: 'stop', title: 'Must be put right', icon: <IconUrgent aria-hidden /> },
  act: { color: 'warn', title: 'Needs doing', icon: <IconAlertTriangle aria-hidden /> },
};

interface Props {
  readonly issues: readonly PlanIssue[];
  readonly tables: Tables;
}

/** What a plan warns of; what is only good to know stands behind a touch. */
export function PlanIssues({ issues, tables }: Props) {
  const of = (level: IssueLevel) => issues.filter((issue) => issue.level === level);
  const texts = (level: IssueLevel) =>
    of(level).map((issue) => (
      <IssueText key={issue.code + issue.text} issue={issue} tables={tables} />
    ));
  const notes = of('note').length;
  return (
    <SimpleGrid cols={1} spacing="xs">
      {(['stop', 'act'] as const)
        .filter((level) => 0 < of(level).length)
        .map((level) => (
          <Alert key={level} {...LOOKS[level]} variant="light">
            {texts(level)}
          </Alert>
        ))}
      {0 < notes && <More title={`Good to know: ${notes}`}>{texts('note')}</More>}
    </SimpleGrid>
  );
}
