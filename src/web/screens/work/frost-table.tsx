import './work.css';
import { Table, Text } from '@mantine/core';
import type { NamedFrost, WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import { frostFree, frostLow } from '../../../../shared/plan/work/work-quantities.js';
import { formatMonthDay } from '../../../../shared/units/dates.js';
import { formatValue, formatYears } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { AssumedHeight } from '../../fields/assumed-height.js';
import { WideTable } from '../../shell/wide-table.js';

/** Last spring and first fall frost in few, half and most years. */
export function FrostTable({ outlook, farm }: { outlook: WorkOutlook; farm: SavedFarm }) {
  const sure = formatYears(outlook.sureShare, 'of');
  return (
    <>
      <WideTable label="Frost dates">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>At or below</Table.Th>
              <Table.Th>Last in spring, in half of the years by</Table.Th>
              <Table.Th>in {sure} by</Table.Th>
              <Table.Th>First in fall, in half after</Table.Th>
              <Table.Th>in {sure} after</Table.Th>
              <Table.Th>Frost-free days</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {outlook.frost.map((frost) => (
              <Table.Tr key={frost.thresholdC}>
                <Table.Th scope="row">
                  {frost.name}, <Num of={frostLow(outlook, frost)} />
                </Table.Th>
                <Table.Td data-label="last, in half of the years by">
                  {dateIn(frost.last?.usual, frost, farm)}
                </Table.Td>
                <Table.Td data-label={`in ${sure} by`}>
                  {dateIn(frost.last?.safe, frost, farm)}
                </Table.Td>
                <Table.Td data-label="first, in half after">
                  {dateIn(frost.first?.usual, frost, farm)}
                </Table.Td>
                <Table.Td data-label={`in ${sure} after`}>
                  {dateIn(frost.first?.safe, frost, farm)}
                </Table.Td>
                <Table.Td data-label="frost-free days">
                  <FrostFree outlook={outlook} frost={frost} farm={farm} />
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <AssumedHeight farm={farm} what="Reckoned" />
      <Text size="sm" c="dimmed" mt="sm">
        {restsOn(outlook.frost, farm)} Hollows freeze later in spring and sooner in fall than a
        station does.
      </Text>
    </>
  );
}

function FrostFree({
  outlook,
  frost,
  farm,
}: {
  outlook: WorkOutlook;
  frost: NamedFrost;
  farm: SavedFarm;
}) {
  const days = frostFree(outlook, frost, farm);
  return days ? <Num of={days} /> : 'no such day here';
}

function dateIn(monthDay: string | undefined, { basis }: NamedFrost, farm: SavedFarm): string {
  if (monthDay !== undefined) return formatMonthDay(monthDay, farm);
  return basis === 'record' ? 'no frost in any year' : 'no such day here';
}

/** What the dates rest on: the record, or the household's own dates and the climate between them. */
function restsOn(frost: readonly NamedFrost[], farm: SavedFarm): string {
  const own = `${formatMonthDay(farm.lastFrost, farm)} and ${formatMonthDay(farm.firstFrost, farm)}`;
  const kind = farm.frostDatesAre === 'safe' ? 'safe' : 'usual';
  if (frost.some(({ basis }) => basis === 'nights'))
    return `Set by your own ${kind} dates, ${own}; how far years differ is reckoned from the climate, a rough guide.`;
  return `Of the daily record. Your own ${kind} dates are ${own}. ${rareFrosts(frost, farm)}`.trimEnd();
}

const rareFrosts = (frost: readonly NamedFrost[], farm: SavedFarm): string =>
  frost
    .flatMap(({ springs, thresholdC }) =>
      springs && springs.withFrost < springs.all
        ? [
            `${springs.withFrost} of ${springs.all} springs had ${formatValue(thresholdC, 'degC', farm)} or less; dates are of those.`,
          ]
        : [],
    )
    .join(' ');
