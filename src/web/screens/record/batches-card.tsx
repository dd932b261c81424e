import { Anchor, Table, Text } from '@mantine/core';
import { Link } from 'wouter';
import type { HowItWent } from '../../../../shared/plan/record/how-it-went.js';
import { formatValue } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useHowAllWent } from '../../api/record-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';
import { useAll } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';

const COLUMNS = [
  ['came', 'Came'],
  ['lost', 'Lost'],
  ['live-each', 'Live each'],
  ['conversion', 'Feed for one of live weight'],
  ['cost-live', 'Cost'],
  ['hours', 'Hours timed'],
] as const;

/** All batches that are over, side by side, across years and breeds. */
export function BatchesCard({ farm }: { farm: SavedFarm }) {
  const sayDate = useSayDate();
  const all = useAll(useHowAllWent(farm.id));
  if ('waiting' in all) return all.waiting;
  const over = all.data[0].filter(({ isOver }) => isOver);
  if (over.length === 0) return null;
  return (
    <Section title="How batches went">
      <WideTable label="How batches went">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Batch</Table.Th>
              {COLUMNS.map(([id, label]) => (
                <Table.Th key={id}>{label}</Table.Th>
              ))}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {over.map((batch) => (
              <Table.Tr key={batch.batchId}>
                <Table.Th scope="row">
                  <Anchor component={Link} href={`/farm/${farm.id}/batches/${batch.batchId}`}>
                    {batch.name}
                  </Anchor>
                  <Text size="sm" c="dimmed">
                    {batch.strain}, {sayDate(batch.arrivedOn)}
                  </Text>
                </Table.Th>
                {COLUMNS.map(([id, label]) => (
                  <Table.Td key={id} data-label={label}>
                    {told(batch, id, farm)}
                  </Table.Td>
                ))}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Section>
  );
}

function told({ lines }: HowItWent, of: string, farm: SavedFarm): string {
  const line = lines.find(({ id }) => id === of);
  if (line?.actual === undefined) return 'not known';
  const value = of === 'conversion' ? Math.round(100 * line.actual) / 100 : line.actual;
  return formatValue(value, line.unit, farm);
}
