import { List, Stack, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { Fact, Facts } from '../../explain/number.js';
import { Section } from '../../shell/section.js';
import { ColdNights } from './cold-nights.js';
import { RefillFacts } from './refill-facts.js';
import { StockingTable } from './stocking-table.js';

export function OutdoorsSection({ plan }: { plan: BatchPlan }) {
  const { outdoors } = plan;
  return (
    <Stack>
      {outdoors.moveOut?.value !== plan.arrivalDate && <TheMove plan={plan} />}
      {outdoors.oneColdNight && <OneColdNight plan={plan} />}
      <Section level={3} title={outdoors.home ? `Room in ${outdoors.home}` : 'Room after the move'}>
        <Facts>
          <Fact of={outdoors.floorNeeded} />
          <Fact of={outdoors.floorHave} />
          <Fact of={outdoors.pensNeeded} />
          <Fact of={outdoors.density} />
          <Fact of={outdoors.nests} />
          <Fact of={outdoors.roost} />
        </Facts>
        <RefillFacts plan={plan} isBrooder={false} />
        <StockingTable rows={plan.space.stocking.filter(({ isBrooder }) => !isBrooder)} />
      </Section>
      {outdoors.ground && (
        <Section level={3} title="Ground">
          <Facts>
            <Fact of={outdoors.movesPerDay} />
            <Fact of={outdoors.ground} />
            <Fact of={outdoors.nitrogen} />
          </Facts>
        </Section>
      )}
    </Stack>
  );
}

function TheMove({ plan: { outdoors, space } }: { plan: BatchPlan }) {
  return (
    <Section level={3} title="Out of the brooder">
      <Text size="sm" mb="xs">
        Rule: {outdoors.rule}.
      </Text>
      {outdoors.moveOut ? (
        <Facts>
          <Fact of={outdoors.moveOut} />
          <Fact of={outdoors.ageAtMove} />
          <Fact of={outdoors.nightLow} />
          <ColdNights of={outdoors.coldNights} />
          <Fact of={outdoors.hardenFrom} />
          <Fact of={space.spare} />
        </Facts>
      ) : (
        <Text>No date with nights warm enough in time was found.</Text>
      )}
    </Section>
  );
}

/** What one night that is too cold costs, and what to do before it comes. */
function OneColdNight({ plan: { outdoors } }: { plan: BatchPlan }) {
  const { oneColdNight, shelter, wetDay } = outdoors;
  return (
    <Section level={3} title="One cold night">
      <Facts>
        <Fact of={oneColdNight?.low} />
        <Fact of={oneColdNight?.feed} />
        <Fact of={oneColdNight?.money} />
        <Fact of={oneColdNight?.heat} />
        <Fact of={wetDay} />
      </Facts>
      <Text mt="sm">
        In feed it is little. What it can cost is birds: chilled ones pile up in a corner, and those
        inside smother.
      </Text>
      <List mt="xs" spacing={4}>
        {shelter && <List.Item>{SHELTER[shelter]}</List.Item>}
        <List.Item>Read the lows of the next seven nights, and wait if you can.</List.Item>
        <List.Item>Lay deep, dry bedding, and board off the corners.</List.Item>
        <List.Item>
          Have heat ready for that night, or take them back to the brooder. Look once after dark.
        </List.Item>
      </List>
    </Section>
  );
}

const SHELTER = {
  closed: 'Roof and windward side are closed: the nights above hold while they stay dry.',
  open: 'Open to wind and rain: close the roof and the windward side with boards or a tarp first.',
  'not known':
    'Wind and rain: say of the pen whether it is closed. If it is not, close the roof and the windward side with boards or a tarp first.',
} as const;
