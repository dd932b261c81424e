import { Button, Table, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { RULE_OF_NIGHTS, sayNights } from '../../../../shared/plan/say-ways-out.js';
import type { WayOut, WayOutDay } from '../../../../shared/plan/ways-out.js';
import { Num } from '../../explain/number.js';
import { WideTable } from '../../shell/wide-table.js';
import { sayAge } from './say-age.js';
import type { BatchDraft } from './use-plan.js';

interface Props {
  readonly plan: BatchPlan;
  readonly onChoose: (more: BatchDraft) => void;
}

/** The ways to go out, side by side: when, how cold it may be, what must be ready; one touch each. */
export function WaysOutTable({ plan, onChoose }: Props) {
  const floorHave = plan.space.needs.find(({ name }) => name === 'Brooder floor')?.have;
  return (
    <div>
      <WideTable label="When they go out" minWidth={720}>
        <Table>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>If each night is to be warm enough on</Table.Th>
              <Table.Th>Out from</Table.Th>
              <Table.Th>A night too cold in the first week</Table.Th>
              <Table.Th>One costs</Table.Th>
              <Table.Th>
                Brooder floor by then
                {floorHave && (
                  <>
                    , you have <Num of={floorHave} />
                  </>
                )}
              </Table.Th>
              <Table.Th className="no-print">
                <span className="whole">Go by it</span>
              </Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {plan.outdoors.waysOut.map((way) => (
              <WayRow key={way.id} way={way} floorHave={floorHave?.value} onChoose={onChoose} />
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      <Text size="sm" mt="xs">
        {RULE_OF_NIGHTS}
      </Text>
    </div>
  );
}

interface RowProps extends Pick<Props, 'onChoose'> {
  readonly way: WayOut;
  readonly floorHave: number | undefined;
}

function WayRow({ way, floorHave, onChoose }: RowProps) {
  const { name, takes, out, isChosen, chosenBy } = way;
  return (
    <Table.Tr {...(isChosen ? { className: 'way-chosen' } : {})}>
      <Table.Th scope="row" fw={isChosen ? 600 : 400}>
        {name}
        <Text size="sm" fw={400}>
          {takes}
        </Text>
        {out?.because && (
          <Text size="sm" fw={400} c="dimmed">
            {out.because}
          </Text>
        )}
      </Table.Th>
      {out ? (
        <DayCells out={out} floorHave={floorHave} />
      ) : (
        <Table.Td colSpan={4}>not before the end</Table.Td>
      )}
      <Table.Td className="no-print">
        {isChosen ? (
          <b>Chosen</b>
        ) : (
          <Button
            variant="light"
            size="compact-md"
            aria-label={`Choose: ${name}`}
            onClick={() => onChoose({ ...chosenBy, moveOutDate: undefined })}
          >
            Choose
          </Button>
        )}
      </Table.Td>
    </Table.Tr>
  );
}

function DayCells({ out, floorHave }: { out: WayOutDay } & Pick<RowProps, 'floorHave'>) {
  const { on, age, coldNight, coldNights, stand, oneColdNight, floor } = out;
  const { money, heat, feed } = oneColdNight;
  return (
    <>
      <Table.Td>
        <Num of={on} />
        <Text size="sm">
          <Num of={age} said={sayAge(age.value)} /> old
        </Text>
      </Table.Td>
      <Table.Td>
        <Num of={coldNight} />
        <Text size="sm">
          <Num of={coldNights} said={sayNights(coldNights.value)} />, below <Num of={stand} />
        </Text>
      </Table.Td>
      <Table.Td>
        <Num of={money ?? feed} /> feed
        {heat && (
          <>
            , or <Num of={heat} /> for heat
          </>
        )}
      </Table.Td>
      <Table.Td>
        {floor && <Num of={floor} />}
        {floor && floorHave !== undefined && floorHave + 1e-9 < floor.value && (
          <Text size="sm" fw={600} c="stop">
            short
          </Text>
        )}
      </Table.Td>
    </>
  );
}
