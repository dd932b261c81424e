import { Card, Stack, Text, Title } from '@mantine/core';
import { MARK_MEANING } from '../../../../shared/explain/formula.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { MarkBadge, SourceView } from '../../explain/explain-panel.js';

/** Every source that a number may rest on, and what the marks mean. */
export default function SourcesScreen({ tables }: { tables: Tables }) {
  return (
    <Stack maw={800}>
      <Title order={1}>Sources</Title>
      <Card withBorder component="section">
        <Title order={2} size="h3">
          What the marks mean
        </Title>
        {Object.entries(MARK_MEANING).map(([mark, meaning]) => (
          <Text key={mark} my={4}>
            <MarkBadge mark={mark} /> {meaning}
          </Text>
        ))}
      </Card>
      {Object.entries(tables.sources).map(([id, source]) => (
        <SourceView key={id} source={source} />
      ))}
    </Stack>
  );
}
