import { Button, Group, Table, Text } from '@mantine/core';
import { useId, useState } from 'react';
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
  const [isWhole, setWhole] = useState(false);
  const id = useId();
  const floorHave = plan.space.needs.find(({ name }) => name === 'Brooder floor')?.have;
  const { waysOut } = plan.outdoors;
  const others = waysOut.filter(({ isChosen }) => !isChosen).length;
  // With a date of the household's own none is chosen: then there is nothing to keep in sight.
  const isFolded = !isWhole && others < waysOut.length;
  return (
    <div>
      <Text size="sm" mb="xs">
        How sure each of the first nights is to be warm enough for birds of their age:
      </Text>
      <WideTable label="When they go out">
        <Table
          id={id}
          withRowBorders={false}
          className={isFolded ? 'stacks ways-folded' : 'stacks'}
        >
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Out from</Table.Th>
              <Table.Th>Nights too cold in the first week</Table.Th>
              <Table.Th>
                Brooder floor by then
                {floorHave && (
                  <>
                    , you have <Num of={floorHave} />
                  </>
                )}
              </Table.Th>
            </Table.Tr>
          </Table.Thead>
          {waysOut.map((way) => (
            <Way key={way.id} way={way} floorHave={floorHave?.value} onChoose={onChoose} />
          ))}
        </Table>
      </WideTable>
      {0 < others && others < waysOut.length && (
        <Button
          hiddenFrom="sm"
          className="no-print"
          variant="subtle"
          aria-expanded={!isFolded}
          aria-controls={id}
          onClick={() => setWhole(isFolded)}
        >
          {isFolded
            ? `${others} other ${others === 1 ? 'way' : 'ways'} to go out`
            : 'Only the chosen way'}
        </Button>
      )}
      <Text size="sm" mt="xs">
        {RULE_OF_NIGHTS}
      </Text>
    </div>
  );
}

interface WayProps extends Pick<Props, 'onChoose'> {
  readonly way: WayOut;
  readonly floorHave: number | undefined;
}

function Way({ way, floorHave, onChoose }: WayProps) {
  const { name, takes, out, isChosen, chosenBy } = way;
  return (
    <Table.Tbody className={isChosen ? 'way way-chosen' : 'way'}>
      <Table.Tr>
        <Table.Th scope="rowgroup" colSpan={3}>
          <Group justify="space-between" wrap="nowrap">
            <span>{name}</span>
            {isChosen ? (
              <b>Chosen</b>
            ) : (
              <Button
                className="no-print"
                variant="light"
                size="compact-md"
                flex="none"
                aria-label={`Choose: ${name}`}
                onClick={() => onChoose({ ...chosenBy, moveOutDate: undefined })}
              >
                Choose
              </Button>
            )}
          </Group>
        </Table.Th>
      </Table.Tr>
      <Table.Tr>
        {out ? (
          <DayCells out={out} floorHave={floorHave} />
        ) : (
          <Table.Td colSpan={3}>not before the end</Table.Td>
        )}
      </Table.Tr>
      <Table.Tr>
        <Table.Td colSpan={3} className="whole-line">
          <Text size="sm">
            {takes} {out && <Costs of={out} />} {out?.because}
          </Text>
        </Table.Td>
      </Table.Tr>
    </Table.Tbody>
  );
}

function DayCells({
  out: { on, age, coldNights, stand, floor },
  floorHave,
}: { out: WayOutDay } & Pick<WayProps, 'floorHave'>) {
  const isShort = floor && floorHave !== undefined && floorHave + 1e-9 < floor.value;
  return (
    <>
      <Table.Td data-label="Out from">
        <Num of={on} />
        <Text size="sm">
          <Num of={age} said={`${sayAge(age.value)} old`} />
        </Text>
      </Table.Td>
      <Table.Td data-label="Nights too cold in the first week">
        <Num of={coldNights} said={sayNights(coldNights.value)} />
        <Text size="sm">
          below <Num of={stand} />
        </Text>
      </Table.Td>
      <Table.Td data-label={floor && 'Brooder floor by then'}>
        {floor && <Num of={floor} />}
        {isShort && (
          <Text size="sm" fw={600} c="stop">
            short
          </Text>
        )}
      </Table.Td>
    </>
  );
}

/** What one night that is too cold costs: in feed, or in heat where the household has some. */
function Costs({ of: { oneColdNight } }: { of: WayOutDay }) {
  const { money, feed, heat } = oneColdNight;
  return (
    <>
      One such night costs <Num of={money ?? feed} /> of feed
      {heat && (
        <>
          , or <Num of={heat} /> of heat
        </>
      )}
      .
    </>
  );
}
