import './batches.css';
import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { IconChevronRight } from '@tabler/icons-react';
import { Link } from 'wouter';
import { useHistoryState } from 'wouter/use-browser-location';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import {
  farmDay,
  useBatchEnds,
  useBatches,
  usePicture,
  type SavedBatch,
  type SavedFarm,
} from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Empty } from '../../shell/empty.js';
import { useAll } from '../../shell/states.js';
import { arrivalSaid, type ArrivalSaid } from '../../../../shared/plan/arrival-said.js';
import type { GoneBatch } from './gone-batch.js';

export default function BatchList({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(useBatches(farm.id), useBatchEnds(farm.id), usePicture(farm.id));
  const left = useHistoryState<GoneBatch | null>();
  if ('waiting' in all) return all.waiting;
  const [batches, ends, { headChanges }] = all.data;
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
      <ul className="batch-rows">
        {batches.map((batch) => (
          <BatchRow
            key={batch.id}
            batch={batch}
            arrival={arrivalSaid(batch, headChanges, farmDay(farm))}
            end={ends[batch.id]}
            tables={tables}
            href={`${base}/${batch.id}`}
          />
        ))}
      </ul>
    </Stack>
  );
}

interface RowProps {
  readonly batch: SavedBatch;
  readonly arrival: ArrivalSaid;
  /** Unknown while it cannot be planned. */
  readonly end: PlainDate | undefined;
  readonly tables: Tables;
  readonly href: string;
}

const Day = ({ what, on }: { what: string; on: string }) => (
  <span className="batch-row-day">
    {what} <b>{on}</b>
  </span>
);

function BatchRow({ batch, arrival, end, tables, href }: RowProps) {
  const sayDate = useSayDate();
  const strain = tables.strains.find((s) => s.id === batch.strainId);
  return (
    <li className="batch-row">
      <span className="batch-row-who">
        <Link href={href}>
          <span className="only-heard">Open the plan of </span>
          {batch.name}
        </Link>
        <span>
          {batch.wantedBirds} wanted · {strain?.name}, {batch.sex.replace('-', ' ')}
        </span>
      </span>
      <Day what={arrival.what} on={sayDate(arrival.on)} />
      <Day
        what={batch.purpose === 'meat' ? 'Processing' : 'First eggs'}
        on={end === undefined ? 'not known: open the plan' : sayDate(end)}
      />
      <IconChevronRight aria-hidden />
    </li>
  );
}
