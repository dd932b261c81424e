import { Text } from '@mantine/core';
import type { PlanIssue } from '../../../shared/problems/plan-issue.js';
import type { Tables } from '../../../shared/tables/tables.js';
import { MarkBadge } from './mark-badge.js';

/** A warning, with what the figures it goes by rest on. */
export function IssueText({
  issue: { text, mark, sources = [] },
  tables,
}: {
  issue: PlanIssue;
  tables: Pick<Tables, 'sources'>;
}) {
  return (
    <Text my={4} c="bright">
      {text}
      {mark && (
        <Text component="span" size="sm" c="bright">
          {' '}
          <MarkBadge mark={mark} /> {sources.map((id) => tables.sources[id]?.title).join('; ')}
        </Text>
      )}
    </Text>
  );
}
