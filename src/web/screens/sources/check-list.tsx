import './sources.css';
import { Accordion, Table, Text } from '@mantine/core';
import { useState } from 'react';
import { countStandings, type Check } from '../../../../shared/checks/compare.js';
import { sayCheck } from '../../../../shared/checks/say-check.js';
import type { Source } from '../../../../shared/tables/source.js';
import { useChecks } from '../../api/queries.js';
import { MarkBadge } from '../../explain/mark-badge.js';
import { useOpener } from '../../explain/explain-panel.js';
import { useAll } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';

type Sources = Readonly<Record<string, Source>>;

/** What the plans compute beside values from outside, by topic; what disagrees says why. */
export function CheckList({ sources }: { sources: Sources }) {
  const all = useAll(useChecks());
  const [open, setOpen] = useState<string[]>([]);
  if ('waiting' in all) return all.waiting;
  const [checks] = all.data;
  const topics = [...new Set(checks.map(({ topic }) => topic))];
  return (
    <>
      <Text>{countsText(checks)}</Text>
      <Accordion variant="separated" multiple order={3} value={open} onChange={setOpen}>
        {topics.map((name) => {
          const rows = checks.filter(({ topic }) => topic === name);
          return (
            <Accordion.Item key={name} value={name}>
              <Accordion.Control>
                {name}
                <Text size="sm" c="dimmed">
                  {countsText(rows)}
                </Text>
              </Accordion.Control>
              <Accordion.Panel>
                {/* Hundreds of rows: only those that somebody looks at. */}
                {open.includes(name) && <CheckTable name={name} rows={rows} sources={sources} />}
              </Accordion.Panel>
            </Accordion.Item>
          );
        })}
      </Accordion>
    </>
  );
}

function countsText(checks: readonly Check[]): string {
  const { held, beyond, disagreeing } = countStandings(checks);
  return [
    `${held} of ${checks.length} agree`,
    ...(0 < disagreeing ? [`${disagreeing} ${disagreeing === 1 ? 'disagrees' : 'disagree'}`] : []),
    ...(0 < beyond ? [`${beyond} not explained`] : []),
  ].join(', ');
}

function CheckTable({
  name,
  rows,
  sources,
}: {
  name: string;
  rows: readonly Check[];
  sources: Sources;
}) {
  return (
    <WideTable label={name}>
      <Table className="checks">
        <Table.Thead>
          <Table.Tr>
            <Table.Th>What</Table.Th>
            <Table.Th ta="right">Theirs</Table.Th>
            <Table.Th ta="right">Ours</Table.Th>
            <Table.Th ta="right">Off by</Table.Th>
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {rows.map((row) => (
            <CheckLine key={row.id} row={row} source={sources[row.source]} />
          ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}

function CheckLine({ row, source }: { row: Check; source: Source | undefined }) {
  const { theirs, ours, off, allowed, standing } = sayCheck(row, useOpener().reader.units);
  return (
    <Table.Tr>
      <Table.Th scope="row" fw={400}>
        {row.what}
        <Text size="sm" c="dimmed">
          {[source?.publisher, source?.year, row.where].filter(Boolean).join(', ')}{' '}
          <MarkBadge mark={row.mark} />
        </Text>
        <Text size="sm">{row.disagreement ?? row.why}</Text>
      </Table.Th>
      <Table.Td ta="right" data-label="Theirs">
        {theirs}
        {row.printed !== undefined && row.printed !== theirs && (
          <Text size="sm" c="dimmed">
            {row.printed}
          </Text>
        )}
      </Table.Td>
      <Table.Td ta="right" data-label="Ours">
        {ours}
      </Table.Td>
      <Table.Td ta="right" data-label="Off by">
        {off}
        <Text size="sm" c="dimmed">
          up to {allowed}
        </Text>
        {row.standing !== 'holds' && <Text fw={700}>{standing}</Text>}
      </Table.Td>
    </Table.Tr>
  );
}
