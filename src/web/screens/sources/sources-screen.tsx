import { Card, Stack, Text, Title } from '@mantine/core';
import { MARK_MEANING } from '../../../../shared/explain/formula.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { MarkBadge } from '../../explain/mark-badge.js';
import { SourceView } from '../../explain/source-view.js';
import { CheckList } from './check-list.js';
import { Credits } from './credits.js';
import { JudgementList } from './judgement-list.js';

/** What the marks mean, the judgments that plans go by, and every source a number may rest on. */
export default function SourcesScreen({ tables }: { tables: Tables }) {
  return (
    <Stack maw={800}>
      <Title order={1}>Where numbers come from</Title>
      <Card withBorder component="section">
        <Title order={2} size="h3">
          How sure is this?
        </Title>
        <Text my={4}>
          A number is no surer than the weakest figure behind it. From the surest for your farm to
          the least:
        </Text>
        {Object.entries(MARK_MEANING).map(([mark, meaning]) => (
          <Text key={mark} my={4}>
            <MarkBadge mark={mark} /> {meaning}
          </Text>
        ))}
      </Card>
      <Title order={2}>Judgments</Title>
      <Text>
        No publication decides these. They are what the plans go by; you may well see one or the
        other differently.
      </Text>
      <JudgementList judgements={tables.judgements} />
      <Title order={2}>How our numbers compare</Title>
      <Text>
        What the plans compute beside what others measured or published. Where the two are further
        apart than allowed, the reason stands with it.
      </Text>
      <CheckList sources={tables.sources} />
      <Title order={2}>Data that came with the program</Title>
      <Credits />
      <Title order={2}>Sources</Title>
      {Object.entries(tables.sources).map(([id, source]) => (
        <SourceView key={id} source={source} />
      ))}
    </Stack>
  );
}
