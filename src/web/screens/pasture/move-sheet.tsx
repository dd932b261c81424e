import './pasture.css';
import { Button, Group, Table, Text, Title } from '@mantine/core';
import { Link } from 'wouter';
import type { Paddock } from '../../../../shared/farm/paddock.js';
import { moveHeads } from '../../../../shared/plan/pasture/move-quantities.js';
import type { PasturePlan } from '../../../../shared/plan/pasture/pasture-plan.js';
import {
  rowNotes,
  rowTitle,
  seasonRows,
  type GrazeRow,
} from '../../../../shared/plan/pasture/season-rows.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { useAll, Working } from '../../shell/states.js';
import { WideTable } from '../../shell/wide-table.js';
import { keyOf, RowAmount } from './move-list.js';
import { useFittedDays, usePasturePlan } from './use-pasture.js';

/** The moves of the season on paper, with room to write what really happened. */
export default function MoveSheet({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const sayDate = useSayDate();
  const all = useAll(usePicture(farm.id));
  const laid = useFittedDays(farm.id);
  const picture = 'waiting' in all ? undefined : all.data[0];
  const { plan } = usePasturePlan(picture, tables);
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
            {plan.herds.map((herd) => herd.name).join(', ')}, {sayDate(plan.from)} to{' '}
            {sayDate(plan.to)}. Planned on {formatLongDate(plan.today, farm)}. Go by the grass: move
            earlier where it is down to the residual, later where it is not.
          </Text>
          <WideTable label="Moves" minWidth={640}>
            <Table className="print-table move-table">
              <Table.Thead>
                <Table.Tr>
                  <Table.Th>On</Table.Th>
                  <Table.Th>What</Table.Th>
                  <Table.Th>Days</Table.Th>
                  <Table.Th>Entry height</Table.Th>
                  <Table.Th>Exit height</Table.Th>
                  <Table.Th>Notes</Table.Th>
                  <Table.Th>Actual</Table.Th>
                </Table.Tr>
              </Table.Thead>
              <Table.Tbody>
                {seasonRows(plan, laid).map((row) => (
                  <Table.Tr key={keyOf(row)}>
                    {row.kind === 'graze' ? (
                      <StayCells plan={plan} row={row} paddocks={picture?.paddocks ?? []} />
                    ) : (
                      <>
                        <Table.Td>{sayDate(row.from)}</Table.Td>
                        <Table.Td>{rowTitle(plan, row)}</Table.Td>
                        <Table.Td colSpan={4}>
                          <RowAmount row={row} />
                          {rowNotes(row).map((note) => `, ${note}`)}
                        </Table.Td>
                      </>
                    )}
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

function StayCells({
  plan,
  row,
  paddocks,
}: {
  plan: PasturePlan;
  row: GrazeRow;
  paddocks: readonly Paddock[];
}) {
  const { date, days, heightBefore, heightAfter } = moveHeads(plan, row.move);
  const isDry = paddocks.find((p) => p.id === row.move.paddockId)?.hasWater === false;
  return (
    <>
      <Table.Td>
        <Num of={date} />
      </Table.Td>
      <Table.Td>{rowTitle(plan, row)}</Table.Td>
      <Table.Td>
        <Num of={days} />
      </Table.Td>
      <Table.Td>
        <Num of={heightBefore} />
      </Table.Td>
      <Table.Td>
        <Num of={heightAfter} />
      </Table.Td>
      <Table.Td>{[...(isDry ? ['bring water'] : []), ...rowNotes(row)].join(', ')}</Table.Td>
    </>
  );
}
