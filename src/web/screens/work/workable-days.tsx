import './work.css';
import { Table, Text } from '@mantine/core';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { dryEnoughFrom } from '../../../../shared/plan/work/ground-quantities.js';
import type { WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import { formatYears } from '../../../../shared/units/format.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

/** Days with dry enough ground in each fortnight, in few, half and most years. */
export function WorkableDays({ outlook }: { outlook: WorkOutlook }) {
  const sayDate = useSayDate();
  return (
    <>
      <WideTable label="Suitable days">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Days</Table.Th>
              <Table.Th>In a wet year</Table.Th>
              <Table.Th>In half of the years</Table.Th>
              <Table.Th>In a dry year</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {outlook.workable.map(({ from, days, tenth, half, ninetieth }) => (
              <Table.Tr key={from}>
                <Table.Th scope="row" className="no-wrap">
                  {sayDate(from)} to {sayDate(addDays(from, days - 1))}
                </Table.Th>
                <Table.Td data-label="in a wet year">{tenth}</Table.Td>
                <Table.Td data-label="in half of the years">{half}</Table.Td>
                <Table.Td data-label="in a dry year">{ninetieth}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" c="dimmed" mt="sm">
        Wet and dry: {formatYears(1 - outlook.sureShare)} years have no more, and as many no fewer.
        A day counts when it stays dry and the top of the soil lacks{' '}
        <Num of={dryEnoughFrom(outlook.dryEnough)} /> of water, by the soil of your garden. Correct
        it under Today when you find it otherwise.
      </Text>
    </>
  );
}
