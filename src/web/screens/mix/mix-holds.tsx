import { Table } from '@mantine/core';
import type { Mix } from '../../../../shared/ration/mix.js';
import { Num } from '../../explain/number.js';
import { Folded } from '../../shell/folded.js';
import { WideTable } from '../../shell/wide-table.js';

/** Nutrient by nutrient: what the mix holds beside what the birds need in it. */
export function MixHolds({ mix }: { mix: Mix }) {
  return (
    <Folded id="holds" title="What it holds" answer={<Protein mix={mix} />} isOpenFirst>
      <WideTable label="What the mix holds and what they need">
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>
                <span className="only-heard">Nutrient</span>
              </Table.Th>
              <Table.Th>Mix</Table.Th>
              <Table.Th>Need</Table.Th>
              <Table.Th>At most</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {mix.nutrients.map((line) => (
              <Table.Tr key={line.nutrient}>
                <Table.Td>
                  {line.name}
                  {line.isMissed ? (
                    <strong className="mix-missed"> missed</strong>
                  ) : (
                    line.holdsMix && <small> sets the mix</small>
                  )}
                </Table.Td>
                <Table.Td>
                  <Num of={line.has} />
                </Table.Td>
                <Table.Td>{line.need && <Num of={line.need} />}</Table.Td>
                <Table.Td>{line.most && <Num of={line.most} />}</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Folded>
  );
}

function Protein({ mix }: { mix: Mix }) {
  const line = mix.nutrients.find(({ nutrient }) => nutrient === 'proteinPercent');
  return line && <Num of={line.has} said={`${Math.round(line.has.value)} % protein`} />;
}
