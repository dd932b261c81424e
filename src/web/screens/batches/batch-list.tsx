import { Button, Card, Group, SimpleGrid, Stack, Text, Title } from '@mantine/core';
import { Link } from 'wouter';
import { useHistoryState } from 'wouter/use-browser-location';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { useBatchEnds, useBatches, type SavedBatch, type SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Empty } from '../../shell/empty.js';
import { useAll } from '../../shell/states.js';
import type { GoneBatch } from './gone-batch.js';

export default function BatchList({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(useBatches(farm.id), useBatchEnds(farm.id));
  const left = useHistoryState<GoneBatch | null>();
  if ('waiting' in all) return all.waiting;
  const [batches, ends] = all.data;
  const base = `/farm/${farm.id}/batches`;
  return (
    <Stack maw={1000}>
      <Group justify="space-between">
        <Title order={1}>Batches</Title>
        <Button component={Link} href={`${base}/new`}>
          Plan a batch
        </Button>
      </Group>
      {left?.gone !== undefined && (
        <Text role="status">
          {left.gone === '' ? 'That batch is not there any more.' : `${left.gone} is deleted.`}
        </Text>
      )}
      {batches.length === 0 && (
        <Empty text="No batch yet. All it needs is a breed or cross, how many, and a date.">
          <Button component={Link} href={`${base}/new`}>
            Plan the first batch
          </Button>
        </Empty>
      )}
      <SimpleGrid cols={{ base: 1, sm: 2 }}>
        {batches.map((batch) => (
          <BatchCard
            key={batch.id}
            batch={batch}
            end={ends[batch.id]}
            tables={tables}
            href={`${base}/${batch.id}`}
          />
        ))}
      </SimpleGrid>
    </Stack>
  );
}

interface CardProps {
  readonly batch: SavedBatch;
  /** Unknown while it cannot be planned. */
  readonly end: PlainDate | undefined;
  readonly tables: Tables;
  readonly href: string;
}

function BatchCard({ batch, end, tables, href }: CardProps) {
  const sayDate = useSayDate();
  const strain = tables.strains.find((s) => s.id === batch.strainId);
  return (
    <Card withBorder component="article">
      <Title order={2} size="h3">
        {batch.name}
      </Title>
      <Text>
        {batch.wantedBirds} wanted · {strain?.name} · {batch.sex.replace('-', ' ')}
      </Text>
      <Text>Arrive {sayDate(batch.arrivalDate)}</Text>
      <Text mb="sm">
        {batch.purpose === 'meat' ? 'Processing' : 'First eggs'}{' '}
        {end === undefined ? 'not known: open the plan' : sayDate(end)}
      </Text>
      <Button
        component={Link}
        href={href}
        variant="light"
        mt="auto"
        aria-label={`Open the plan of ${batch.name}`}
      >
        Open the plan
      </Button>
    </Card>
  );
}
