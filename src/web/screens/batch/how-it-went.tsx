import { Table, Text } from '@mantine/core';
import { Link } from 'wouter';
import type { RecordLine } from '../../../../shared/plan/record/record-line.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useHowItWent } from '../../api/record-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { useAll } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { StoryFold } from './story-section.js';

/** A batch that has come: what was planned when it was ordered, beside what was told of it. */
export function HowItWentPart({ farm, batchId }: { farm: SavedFarm; batchId: string }) {
  const sayDate = useSayDate();
  const all = useAll(useHowItWent(farm.id, batchId));
  if ('waiting' in all) return all.waiting;
  const [{ lines, isOver, upTo }] = all.data;
  return (
    <StoryFold
      part="record"
      title={isOver ? 'How it went' : 'How it goes'}
      answer="Planned, and what it was"
    >
      <Text size="sm" mb="xs">
        {isOver ? `They were gone on ${sayDate(upTo)}. ` : ''}Planned is the plan as it was before
        anything was told.
      </Text>
      <PlannedAndTold lines={lines} farm={farm} />
      <Text component={Link} href={`/farm/${farm.id}/record?of=${batchId}`} py="sm">
        All that was told of them
      </Text>
    </StoryFold>
  );
}

/** What was planned beside what was told, a line each. */
export function PlannedAndTold({ lines, farm }: { lines: readonly RecordLine[]; farm: SavedFarm }) {
  const say = (value: number | undefined, { unit, id }: RecordLine): string | undefined =>
    value === undefined
      ? undefined
      : id === 'waste' && value <= 0
        ? 'none'
        : formatValue(roundFor(value, id), unit, farm);
  return (
    <WideTable label="Planned beside what was told">
      <Table className="stacks">
        <Table.Thead>
          <Table.Tr>
            <Table.Th />
            <Table.Th>Planned</Table.Th>
            <Table.Th>It was</Table.Th>
            <Table.Th />
          </Table.Tr>
        </Table.Thead>
        <Table.Tbody>
          {lines.map((line) => (
            <Table.Tr key={line.id}>
              <Table.Th scope="row" fw={400}>
                {line.label}
              </Table.Th>
              <Table.Td data-label="Planned">{say(line.planned, line)}</Table.Td>
              <Table.Td data-label="It was" fw={700}>
                {say(line.actual, line) ?? 'not known'}
              </Table.Td>
              <Table.Td c="dimmed">{line.note}</Table.Td>
            </Table.Tr>
          ))}
        </Table.Tbody>
      </Table>
    </WideTable>
  );
}

/** A conversion and feed that went beyond it are read to a hundredth. */
const roundFor = (value: number, id: string): number =>
  id === 'conversion' || id === 'waste' ? Math.round(100 * value) / 100 : value;
