import { Card, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import type { Tables } from '../../../shared/tables/tables.js';
import { inOwnUnits } from '../../../shared/units/own-units.js';
import { Caution } from '../explain/caution.js';
import { useOpener } from '../explain/explain-panel.js';
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
    <Card component="section" className="avoid-break">
      <Title order={level} mb="sm">
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
  const { units } = useOpener().reader;
  return keys
    .filter((key) => of.includes(key))
    .map((key) => {
      const { title, text, mark, sources } = tables.cautions[key]!;
      return (
        <Caution key={key} line={title}>
          {inOwnUnits(text, units)} {mark && <MarkBadge mark={mark} />}
          {sources?.map((id) => (
            <small key={id}> Source: {tables.sources[id]?.title}.</small>
          ))}
        </Caution>
      );
    });
}
