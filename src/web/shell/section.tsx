import { Alert, Card, Text, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Tables } from '../../../shared/tables/tables.js';
import { MarkBadge } from '../explain/mark-badge.js';

export function Section({
  title,
  level = 2,
  children,
}: {
  title: string;
  /** Level of its heading: 3 within a part that has one. */
  level?: 2 | 3;
  children: ReactNode;
}) {
  return (
    <Card withBorder component="section" className="avoid-break">
      <Title order={level} size="h3" mb="sm">
        {title}
      </Title>
      {children}
    </Card>
  );
}

/** The cautions that a plan carries, out of those that belong to a section. */
export function Cautions({
  keys,
  of,
  tables,
}: {
  keys: readonly string[];
  of: readonly string[];
  tables: Tables;
}) {
  return keys
    .filter((key) => of.includes(key))
    .map((key) => (
      <Alert key={key} color="warn" title={tables.cautions[key]!.title}>
        {tables.cautions[key]!.text}
        {tables.cautions[key]!.mark && (
          <>
            {' '}
            <MarkBadge mark={tables.cautions[key]!.mark} />
          </>
        )}
        {tables.cautions[key]!.sources?.map((id) => (
          <Text key={id} size="sm" component="span" c="dimmed">
            {' '}
            Source: {tables.sources[id]?.title}.
          </Text>
        ))}
      </Alert>
    ));
}
