import { Table, Text } from '@mantine/core';
import type { WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import { frostLow } from '../../../../shared/plan/work/work-quantities.js';
import type { FrostDates } from '../../../../shared/weather/frost.js';
import { formatMonthDay } from '../../../../shared/units/dates.js';
import { formatValue, formatYears } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { WideTable } from '../../shell/wide-table.js';

/** Last spring and first fall frost in few, half and most years. */
export function FrostTable({ outlook, farm }: { outlook: WorkOutlook; farm: SavedFarm }) {
  const sure = formatYears(outlook.sureShare, 'of');
  return (
    <>
      <WideTable label="Frost dates" minWidth={560}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>At or below</Table.Th>
              <Table.Th>Last in spring, in half of the years by</Table.Th>
              <Table.Th>in {sure} by</Table.Th>
              <Table.Th>First in fall, in half after</Table.Th>
              <Table.Th>in {sure} after</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {outlook.frost.map((frost) => (
              <Table.Tr key={frost.thresholdC}>
                <Table.Th scope="row">
                  {frost.name}, <Num of={frostLow(outlook, frost)} />
                </Table.Th>
                <Table.Td>{dateIn(frost.lastSpring?.half, farm)}</Table.Td>
                <Table.Td>{dateIn(frost.lastSpring?.ninetieth, farm)}</Table.Td>
                <Table.Td>{dateIn(frost.firstAutumn?.half, farm)}</Table.Td>
                <Table.Td>{dateIn(frost.firstAutumn?.tenth, farm)}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" c="dimmed" mt="sm">
        Your own usual dates are {formatMonthDay(farm.lastFrost, farm)} and{' '}
        {formatMonthDay(farm.firstFrost, farm)}. {yearsWithFrost(outlook.frost, farm)}
        {outlook.isMeasured ? '' : 'Drawn from monthly averages: a rough guide. '}
        Hollows freeze later in spring and sooner in fall than a station does.
      </Text>
    </>
  );
}

const dateIn = (monthDay: string | undefined, farm: SavedFarm): string =>
  monthDay === undefined ? 'no frost in any year' : formatMonthDay(monthDay, farm);

function yearsWithFrost(frost: readonly FrostDates[], farm: SavedFarm): string {
  const rare = frost.filter((each) => each.springsWithFrost < each.springs);
  return rare.length === 0
    ? ''
    : `${rare
        .map(
          (each) =>
            `${each.springsWithFrost} of ${each.springs} springs had ${formatValue(each.thresholdC, 'degC', farm)} or less`,
        )
        .join('; ')}; dates are of those. `;
}
