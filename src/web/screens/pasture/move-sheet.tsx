import { Button, Group, Table, Text, Title } from '@mantine/core';
import { useMemo } from 'react';
import { Link } from 'wouter';
import type { Paddock } from '../../../../shared/farm/paddock.js';
import type { Move } from '../../../../shared/plan/pasture/moves.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatDate, formatShortDate, formatValue } from '../../../../shared/units/format.js';
import { usePasture } from '../../api/pasture-queries.js';
import type { SavedFarm } from '../../api/queries.js';
import { useAll, Working } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { herdName, paddockName } from './season-strip.js';
import { usePasturePlan } from './use-pasture.js';

/** The moves of the season on paper, with room to write what really happened. */
export default function MoveSheet({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePasture(farm.id));
  const onFarm = 'waiting' in all ? undefined : all.data[0];
  const request = useMemo(() => onFarm && { ...onFarm, tables }, [onFarm, tables]);
  const { plan } = usePasturePlan(request);
  if ('waiting' in all) return all.waiting;
  return (
    <main style={{ maxWidth: '46rem', margin: '0 auto', padding: '1rem' }}>
      <Group className="no-print" mb="md">
        <Button onClick={() => window.print()} disabled={!plan}>
          Print
        </Button>
        <Button component={Link} href={`/farm/${farm.id}/pasture`} variant="default">
          Back to the season
        </Button>
      </Group>
      {!plan && <Working label="Planning the season" />}
      {plan && (
        <>
          <Title order={1} size="h2">
            Moves, {farm.name}
          </Title>
          <Text>
            {plan.herds.map((herd) => herd.name).join(', ')}, {formatDate(plan.from)} to{' '}
            {formatDate(plan.to)}. Planned on {formatDate(plan.today)}. Go by the grass: move
            earlier where it is down to the residual, later where it is not.
          </Text>
          <WideTable label="Moves">
            <Table className="print-table">
              <Table.Thead>
                <Table.Tr>
                  <Table.Th>In on</Table.Th>
                  <Table.Th>Paddock</Table.Th>
                  {1 < plan.herds.length && <Table.Th>Herd</Table.Th>}
                  <Table.Th>Days</Table.Th>
                  <Table.Th>In at</Table.Th>
                  <Table.Th>Leave</Table.Th>
                  <Table.Th>Mind</Table.Th>
                  <Table.Th>Really</Table.Th>
                </Table.Tr>
              </Table.Thead>
              <Table.Tbody>
                {plan.moves.map((move) => (
                  <Table.Tr key={`${move.herdId}${move.from}`}>
                    <Table.Td>{formatShortDate(move.from)}</Table.Td>
                    <Table.Td>{paddockName(plan, move.paddockId)}</Table.Td>
                    {1 < plan.herds.length && <Table.Td>{herdName(plan, move.herdId)}</Table.Td>}
                    <Table.Td>{move.days}</Table.Td>
                    <Table.Td>{formatValue(move.heightBeforeCm, 'cm', farm)}</Table.Td>
                    <Table.Td>{formatValue(move.heightAfterCm, 'cm', farm)}</Table.Td>
                    <Table.Td>{notesOf(move, onFarm?.paddocks ?? [])}</Table.Td>
                    <Table.Td>________</Table.Td>
                  </Table.Tr>
                ))}
              </Table.Tbody>
            </Table>
          </WideTable>
          <Text size="sm" mt="sm">
            {tables.cautions['electric-fence']?.text} {tables.cautions['bloat']?.text}
          </Text>
        </>
      )}
    </main>
  );
}

/** What to mind at the gate. */
function notesOf(move: Move, paddocks: readonly Paddock[]): string {
  return [
    paddocks.find((p) => p.id === move.paddockId)?.hasWater === false ? 'bring water' : '',
    move.isEarly ? 'short grass' : '',
    move.isRank ? 'rank' : '',
    0.5 < move.hayKg ? 'hay beside' : '',
  ]
    .filter(Boolean)
    .join(', ');
}
