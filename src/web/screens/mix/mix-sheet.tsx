import { Table, Text } from '@mantine/core';
import type { Ration } from '../../../../shared/ration/ration.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatMoney, formatValue } from '../../../../shared/units/format.js';
import { sayOnScale } from '../../../../shared/units/scale.js';
import type { SavedFarm } from '../../api/queries.js';
import { IssueList } from '../../explain/issue-list.js';
import { Num } from '../../explain/number.js';
import { Cautions, Section } from '../../shell/section.js';

/** What to weigh in, what it costs, and what to know of it. */
export function MixSheet({
  farm,
  tables,
  ration,
}: {
  farm: SavedFarm;
  tables: Tables;
  ration: Ration;
}) {
  const { mix, title, issues } = ration;
  return (
    <Section title={title}>
      {mix && (
        <>
          <Table className="mix-table">
            <Table.Thead>
              <Table.Tr>
                <Table.Th>Weigh in</Table.Th>
                <Table.Th>
                  <span className="only-heard">Ingredient</span>
                </Table.Th>
                <Table.Th className="mix-money">Costs</Table.Th>
              </Table.Tr>
            </Table.Thead>
            <Table.Tbody>
              {mix.lines.map((line) => (
                <Table.Tr key={line.id}>
                  <Table.Td className="mix-weight">
                    <Num of={line.amount} said={sayOnScale(line.amount.value, farm.units)} />
                  </Table.Td>
                  <Table.Td>
                    {line.name}
                    {line.isStirredFirst && <small> · stir first</small>}
                  </Table.Td>
                  <Table.Td className="mix-money">
                    {formatMoney(line.costMinor, farm.currency)}
                  </Table.Td>
                </Table.Tr>
              ))}
              <Table.Tr>
                <Table.Th className="mix-weight">{formatValue(mix.totalKg, 'kg', farm)}</Table.Th>
                <Table.Th>in all</Table.Th>
                <Table.Th className="mix-money">
                  {formatMoney(mix.totalMinor, farm.currency)}
                </Table.Th>
              </Table.Tr>
            </Table.Tbody>
          </Table>
          {mix.lines.some(({ isStirredFirst }) => isStirredFirst) && (
            <Text size="sm" mt="xs">
              Stir first: into a bucket of the grain, then that into the rest.
            </Text>
          )}
          <p className="only-print">Mixed on ______________ by ______________</p>
          <Text mt="sm">
            <Num of={mix.perKg} />; to begin with, whole bags cost <Num of={mix.toBegin} />.
            {mix.against && (
              <>
                {' '}
                For what a bag of {mix.against.product} does (<Num of={mix.against.bought} />) your
                mix costs <Num of={mix.against.likeBag} />. {mix.against.words}
              </>
            )}
          </Text>
        </>
      )}
      <IssueList issues={issues} tables={tables} />
      <Cautions keys={ration.cautions} of={ration.cautions} tables={tables} />
    </Section>
  );
}
