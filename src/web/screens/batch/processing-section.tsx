import { Table, Text } from '@mantine/core';
import type { LeavingPart } from '../../../../shared/plan/leaving.js';
import type { SlotPart } from '../../../../shared/plan/slot.js';
import { formatHour } from '../../../../shared/units/dates.js';
import { ConversionUnit, Fact, Facts, Num } from '../../explain/number.js';
import { useOpener } from '../../explain/explain-panel.js';
import { useSayDate } from '../../explain/say-date.js';
import { Section } from '../../shell/section.js';

export function Processing({ leaving }: { leaving: LeavingPart }) {
  return (
    <>
      <Section level={3} title="Weights">
        <Facts>
          <Fact of={leaving.on} />
          <Fact of={leaving.reached} />
          {leaving.ready?.map((day) => (
            <Fact key={day.label} of={day} />
          ))}
          <Fact of={leaving.age} />
          <Fact of={leaving.liveEach} />
          <Fact of={leaving.liveMale} />
          <Fact of={leaving.liveFemale} />
          <Fact of={leaving.liveAll} />
          <Fact of={leaving.dressedEach} note={`${leaving.dressedDefinition}. `} />
          <Fact of={leaving.dressedAll} />
          <Fact of={leaving.packedAll} />
          <Fact of={leaving.conversion} note={<ConversionUnit />} />
        </Facts>
      </Section>
      {leaving.slot && <TheSlot slot={leaving.slot} />}
      <TheDay leaving={leaving} />
      <Section level={3} title="In the freezer">
        <Facts>
          <Fact of={leaving.freezerNeed} />
          <Fact of={leaving.freezerFree} />
          <Fact of={leaving.eatenUp} />
        </Facts>
        {leaving.freezerSteps && <FreezerSteps steps={leaving.freezerSteps} />}
      </Section>
    </>
  );
}

function TheSlot({ slot: { wanted, over, arrivals, slots } }: { slot: SlotPart }) {
  return (
    <Section level={3} title="The slot">
      <Facts>
        <Fact of={wanted} />
        <Fact of={over} />
        <Fact
          of={arrivals.best}
          label="Arrival that suits the slot"
          note={<Around of={arrivals} />}
        />
        <Fact of={slots.best} label="Slot that suits the arrival" note={<Around of={slots} />} />
      </Facts>
    </Section>
  );
}

const Around = ({ of: { from, to } }: { of: SlotPart['slots'] }) => (
  <>
    near enough from <Num of={from} /> to <Num of={to} />.{' '}
  </>
);

function TheDay({ leaving }: { leaving: LeavingPart }) {
  const sayDate = useSayDate();
  const [day, ...hour] = leaving.feedOffAt.split(' ');
  const days = leaving.processingDays;
  return (
    <Section level={3} title={days.length <= 1 ? 'The last day' : 'The last days'}>
      <DaysOfIt days={days} />
      {leaving.birdsWithoutHands !== undefined && (
        <Text mb="xs" c="stop">
          {leaving.birdsWithoutHands} birds have nobody to process them yet.
        </Text>
      )}
      {leaving.slowest && <Text mb="xs">What holds the day up is {leaving.slowest}.</Text>}
      <Facts>
        <Fact
          of={leaving.feedOff}
          note={`feeders up ${sayDate(day!)} at ${hour.join(' ')}, water stays. `}
        />
        <Fact of={leaving.birdsADay} />
        <Fact of={leaving.birdsAnHour} />
        <Fact of={leaving.dayHours} />
        {0 < leaving.iceDays.length && (
          <Fact
            of={leaving.ice}
            note={
              <>
                <Num of={leaving.iceBags} />,{' '}
              </>
            }
          />
        )}
        <Fact of={leaving.chillTime} />
        <Fact of={leaving.chillingAtOnce} />
        <Fact of={leaving.chillLimit} note="a limit, not what it takes. " />
        <Fact of={leaving.freezerBags} />
        <Fact of={leaving.scaldGas} />
      </Facts>
    </Section>
  );
}

/** How many on which day, from when until when, and who. */
function DaysOfIt({ days }: { days: LeavingPart['processingDays'] }) {
  const sayDate = useSayDate();
  const { reader } = useOpener();
  const hour = (h: number): string => formatHour(h, reader.units);
  return days
    .filter(({ fromH }) => fromH !== undefined || 1 < days.length)
    .map(({ on, birds, fromH, untilH, who }) => (
      <Text key={on} mb="xs">
        <b>{sayDate(on)}</b>: {birds} birds
        {fromH !== undefined &&
          untilH !== undefined &&
          `, ${hour(fromH)} to ${hour(untilH)}, ${who}`}
        .
      </Text>
    ));
}

function FreezerSteps({ steps }: { steps: NonNullable<LeavingPart['freezerSteps']> }) {
  const sayDate = useSayDate();
  return (
    <Table aria-label="What comes into the freezer" mt="sm">
      <Table.Thead>
        <Table.Tr>
          <Table.Th>Packed on</Table.Th>
          <Table.Th>Batch</Table.Th>
          <Table.Th ta="right">Birds</Table.Th>
          <Table.Th ta="right">In it then</Table.Th>
        </Table.Tr>
      </Table.Thead>
      <Table.Tbody>
        {steps.map((step) => (
          <Table.Tr key={step.on + step.batchName}>
            <Table.Td>{sayDate(step.on)}</Table.Td>
            <Table.Td>{step.batchName}</Table.Td>
            <Table.Td ta="right">{step.birds}</Table.Td>
            <Table.Td ta="right">
              <Num of={step.filled} />
              {step.isOver && (
                <Text component="span" c="stop">
                  {' '}
                  over
                </Text>
              )}
            </Table.Td>
          </Table.Tr>
        ))}
      </Table.Tbody>
    </Table>
  );
}
