import { Stack, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Fact, Facts } from '../../explain/number.js';
import { Cautions, Section } from '../../shell/section.js';

export function OutdoorsSection({ plan, tables }: { plan: BatchPlan; tables: Tables }) {
  const { outdoors } = plan;
  return (
    <Stack>
      <Section title="Out of the brooder">
        <Text size="sm" mb="xs">
          Rule: {outdoors.rule}.
        </Text>
        {outdoors.moveOut ? (
          <Facts>
            <Fact of={outdoors.moveOut} />
            <Fact of={outdoors.ageAtMove} />
            <Fact of={outdoors.nightLow} />
            <Fact of={outdoors.chance} />
          </Facts>
        ) : (
          <Text>No date with nights warm enough was found.</Text>
        )}
        {outdoors.moveOut && !outdoors.chance && (
          <Text size="sm" mt="xs">
            With daily weather (fetched, or from a file) the chance of warm nights would stand here.
          </Text>
        )}
      </Section>
      <Section title={outdoors.home ? `Room in ${outdoors.home}` : 'Room after the move'}>
        <Facts>
          <Fact of={outdoors.floorNeeded} />
          <Fact of={outdoors.floorHave} />
          <Fact of={outdoors.pensNeeded} />
          <Fact of={outdoors.density} />
          <Fact of={outdoors.nests} />
          <Fact of={outdoors.roost} />
        </Facts>
      </Section>
      {outdoors.ground && (
        <Section title="Ground">
          <Facts>
            <Fact of={outdoors.movesPerDay} />
            <Fact of={outdoors.ground} />
            <Fact of={outdoors.nitrogen} />
          </Facts>
        </Section>
      )}
      <Cautions keys={plan.cautions} of={['cold', 'manure', 'behavior']} tables={tables} />
    </Stack>
  );
}
