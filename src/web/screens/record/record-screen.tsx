import './record.css';
import { Button, Group, Stack, Title } from '@mantine/core';
import { lazy, Suspense, useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { Tables } from '../../../../shared/tables/tables.js';
import { farmDay, usePicture, type SavedFarm } from '../../api/queries.js';
import { PrintButton } from '../../shell/print-button.js';
import { Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';
import { BatchesCard } from './batches-card.js';
import { BreedsCard } from './breeds-card.js';
import { PaddocksByYearCard } from './paddocks-by-year-card.js';
import { PaddocksCard } from './paddocks-card.js';
import { ToldList } from './told-list.js';
import { YearCard } from './year-card.js';

const NextYearDialog = lazy(() => import('./next-year-dialog.js'));

/** What happened: counted by the year, batch by batch, and all that was told. */
export default function RecordScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  const [search] = useSearchParams();
  const [year, setYear] = useState(() => Number(farmDay(farm).slice(0, 4)));
  const [isStarting, setStarting] = useState(false);
  if ('waiting' in all) return all.waiting;
  const [picture] = all.data;
  return (
    <Stack maw={1000}>
      <Group justify="space-between">
        <Title order={1}>The record</Title>
        <Group gap="xs" className="no-print">
          <Button variant="default" onClick={() => setStarting(true)}>
            Start {year + 1} from {year}
          </Button>
          <Button component={Link} href={`/farm/${farm.id}/record/print/${year}`} variant="default">
            Binder of {year}
          </Button>
          <PrintButton />
        </Group>
      </Group>
      <YearCard farm={farm} tables={tables} year={year} setYear={setYear} />
      <BatchesCard farm={farm} />
      <PaddocksCard farm={farm} tables={tables} year={year} />
      <div>
        <BreedsCard farm={farm} isFolded />
        <PaddocksByYearCard farm={farm} upTo={Number(farmDay(farm).slice(0, 4))} isFolded />
      </div>
      <Section title="What was told">
        <ToldList {...{ farm, picture, tables }} of={search.get('of') ?? undefined} />
      </Section>
      {isStarting && (
        <Suspense>
          <NextYearDialog farm={farm} year={year} onDone={() => setStarting(false)} />
        </Suspense>
      )}
    </Stack>
  );
}
