import { Stack, Table, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Fact, Facts, Num } from '../../explain/number.js';
import { Cautions, Section } from '../../shell/section.js';

export function OutdoorsSection({ plan, tables }: { plan: BatchPlan; tables: Tables }) {
  const { outdoors } = plan;
  return (
    <Stack>
      <Section title="Out of the brooder">
        <Text size="sm" mb="xs">
          Rule: {outdoors.rule}.
        </Text>
        {outdoors.moveOut ? (
          <Facts>
            <Fact of={outdoors.moveOut} />
            <Fact of={outdoors.ageAtMove} />
            <Fact of={outdoors.nightLow} />
            <Fact of={outdoors.coldNight} />
            <Fact of={outdoors.hardenFrom} />
          </Facts>
        ) : (
          <Text>No date with nights warm enough was found.</Text>
        )}
        <Table mt="sm" aria-label="How sure the nights are">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Each night warm enough on</Table.Th>
              <Table.Th>Out from</Table.Th>
              <Table.Th>Still a cold night that week</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {outdoors.daysOut.map(({ surety, on, coldNight }) => (
              <Table.Tr key={surety}>
                <Table.Th scope="row" fw={400}>
                  {surety}
                </Table.Th>
                <Table.Td>{on ? <Num of={on} /> : 'not before the end'}</Table.Td>
                <Table.Td>{coldNight && <Num of={coldNight} />}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </Section>
      <Section title={outdoors.home ? `Room in ${outdoors.home}` : 'Room after the move'}>
        <Facts>
          <Fact of={outdoors.floorNeeded} />
          <Fact of={outdoors.floorHave} />
          <Fact of={outdoors.pensNeeded} />
          <Fact of={outdoors.density} />
          <Fact of={outdoors.nests} />
          <Fact of={outdoors.roost} />
        </Facts>
      </Section>
      {outdoors.ground && (
        <Section title="Ground">
          <Facts>
            <Fact of={outdoors.movesPerDay} />
            <Fact of={outdoors.ground} />
            <Fact of={outdoors.nitrogen} />
          </Facts>
        </Section>
      )}
      <Cautions keys={plan.cautions} of={['cold', 'manure', 'behavior']} tables={tables} />
    </Stack>
  );
}
