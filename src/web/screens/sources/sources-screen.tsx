import { Card, Stack, Text, Title } from '@mantine/core';
import { MARK_MEANING } from '../../../../shared/explain/formula.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { MarkBadge } from '../../explain/mark-badge.js';
import { SourceView } from '../../explain/source-view.js';
import { Folded } from '../../shell/folded.js';
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
      <Folded
        id="judgments"
        title="Judgments"
        answer="What no publication decides, and the plans go by"
        isForScreen
      >
        <Text>
          No publication decides these. They are what the plans go by; you may well see one or the
          other differently.
        </Text>
        <JudgementList judgements={tables.judgements} />
      </Folded>
      <Folded
        id="compared"
        title="How our numbers compare"
        answer="Beside what others measured or published"
        isForScreen
      >
        <Text>
          What the plans compute beside what others measured or published. Where the two are further
          apart than allowed, the reason stands with it.
        </Text>
        <CheckList sources={tables.sources} />
      </Folded>
      <Folded id="data" title="Data that came with the program" isForScreen>
        <Credits />
      </Folded>
      <Folded
        id="all-sources"
        title="Sources"
        answer={`${Object.keys(tables.sources).length} papers, guides and tables`}
        isForScreen
      >
        <Stack>
          {Object.entries(tables.sources).map(([id, source]) => (
            <SourceView key={id} source={source} />
          ))}
        </Stack>
      </Folded>
    </Stack>
  );
}
