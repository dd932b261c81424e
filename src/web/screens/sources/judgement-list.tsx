import { Card, Table, Title } from '@mantine/core';
import { shownJudgements } from '../../../../shared/formulas/judgements.js';
import type { Judgements } from '../../../../shared/tables/judgements.js';
import { Num } from '../../explain/number.js';
import { WideTable } from '../../shell/wide-table.js';

const TITLES: Record<keyof Judgements, string> = {
  arrival: 'What an arrival week loses points for',
  birds: 'Brooder, moving out, processing',
  grazing: 'What moves of cattle are decided by',
  grass: 'Grass and cattle',
  rations: 'Feed you mix',
  work: 'Work',
  buying: 'Buying feed and hay',
  alarms: 'Alarms, and what is asked when something goes wrong',
};

/** What the plans go by where no publication decides, in the farm's units. */
export function JudgementList({ judgements }: { judgements: Judgements }) {
  const shown = shownJudgements(judgements);
  return (Object.keys(TITLES) as (keyof Judgements)[]).map((group) => (
    <Card key={group} withBorder component="section">
      <Title order={3} size="h4" mb="xs">
        {TITLES[group]}
      </Title>
      <WideTable label={TITLES[group]}>
        <Table>
          <Table.Tbody>
            {shown[group].map(({ words, value }) => (
              <Table.Tr key={value.label}>
                <Table.Th scope="row" fw={400}>
                  {words}
                </Table.Th>
                <Table.Td ta="right" className="no-wrap">
                  <Num of={value} />
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Card>
  ));
}
