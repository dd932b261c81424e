import './record.css';
import { Button, Group, Stack, Table, Text, Title } from '@mantine/core';
import { Link } from 'wouter';
import { sayFact } from '../../../../shared/farm/say-fact.js';
import type { ToldFact } from '../../../../shared/farm/told-fact.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatMonth } from '../../../../shared/units/dates.js';
import { formatValue } from '../../../../shared/units/format.js';
import { photosIn } from '../../api/photos.js';
import { useCows, usePicture, type SavedFarm } from '../../api/queries.js';
import { useHowAllWent, useToldOfYear, useYearCounts } from '../../api/record-queries.js';
import { useJobs } from '../../api/work-queries.js';
import { useOpener } from '../../explain/explain-panel.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';
import { Photos } from '../../tell/photos.js';
import { PlannedAndTold } from '../batch/how-it-went.js';
import { namesOf, sayWhose } from './names-of.js';
import { BreedsCard } from './breeds-card.js';
import { PaddocksByYearCard } from './paddocks-by-year-card.js';
import { PaddocksCard } from './paddocks-card.js';
import { Limits, rowsOf } from './year-card.js';

interface Props {
  readonly farm: SavedFarm;
  readonly tables: Tables;
  readonly year: number;
}

/** A year on paper, to be put into a binder: counts, batches, paddocks, and all that was told. */
export default function BinderPrint({ farm, tables, year }: Props) {
  const sayDate = useSayDate();
  const all = useAll(
    usePicture(farm.id),
    useYearCounts(farm.id, year),
    useHowAllWent(farm.id),
    useToldOfYear(farm.id, year),
    useJobs(farm.id),
    useCows(farm.id),
  );
  if ('waiting' in all) return all.waiting;
  const [picture, counts, went, facts, jobs, cows] = all.data;
  const batches = went.filter(
    ({ arrivedOn, upTo, lines }) =>
      [arrivedOn, upTo].some((on) => on.startsWith(`${year}-`)) &&
      lines.some(({ actual }) => actual !== undefined),
  );
  return (
    <Stack component="main" className="binder">
      <Group className="no-print">
        <Button onClick={() => window.print()}>Print</Button>
        <Button component={Link} href={`/farm/${farm.id}/record`} variant="default">
          Back to the record
        </Button>
      </Group>
      <Title order={1}>
        {farm.name}, {year}
      </Title>
      <Section title={`January to December ${year}`}>
        <Table>
          <Table.Tbody>
            {rowsOf(counts, farm).map(([label, value, unit]) => (
              <Table.Tr key={label}>
                <Table.Th scope="row" fw={400}>
                  {label}
                </Table.Th>
                <Table.Td ta="right">{formatValue(value, unit, farm)}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
        <Limits of={counts.limits} farm={farm} />
      </Section>
      {batches.map(
        ({ batchId, name, strain, arrivedOn, upTo, isOver, lines, isArrivalPlanned }) => (
          <Section key={batchId} title={name}>
            <Text size="sm" mb="xs">
              {strain}, {isArrivalPlanned ? 'planned for' : 'came'} {sayDate(arrivedOn)}
              {isOver ? `, gone ${sayDate(upTo)}` : ''}
            </Text>
            <PlannedAndTold
              lines={lines.filter(({ actual }) => actual !== undefined)}
              farm={farm}
            />
          </Section>
        ),
      )}
      <BreedsCard farm={farm} upTo={year} />
      <PaddocksCard farm={farm} tables={tables} year={year} />
      <PaddocksByYearCard farm={farm} upTo={year} />
      <Section title="Day by day">
        <DayByDay
          farmId={farm.id}
          facts={facts}
          nameOf={namesOf({ ...picture, cows }, jobs, tables)}
        />
      </Section>
    </Stack>
  );
}

/** All that was told of the year, a line each, by months. */
function DayByDay({
  farmId,
  facts,
  nameOf,
}: {
  farmId: string;
  facts: readonly ToldFact[];
  nameOf: (id: string) => string | undefined;
}) {
  const { reader, sayDate } = useOpener();
  if (facts.length === 0) return <Text>Nothing was told of this year.</Text>;
  const months = [...new Set(facts.map(({ on }) => on.slice(0, 7)))];
  return (
    <>
      {months.map((month) => (
        <section key={month}>
          <Title order={3} size="h4">
            {formatMonth(`${month}-01`)}
          </Title>
          <ul className="binder-days">
            {facts
              .filter(({ on }) => on.startsWith(month))
              .map((fact) => (
                <li key={fact.id}>
                  {sayDate(fact.on)}: <b>{sayWhose(fact, nameOf)}</b>{' '}
                  {sayFact(fact, reader, nameOf)}
                  {fact.saidBy !== undefined && ` (${fact.saidBy})`}
                  <Photos
                    farmId={farmId}
                    ids={photosIn(fact.details)}
                    of={sayFact(fact, reader, nameOf)}
                    isOnPaper
                  />
                </li>
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}
