import { Stack, Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { HatchingPart } from '../../../../shared/plan/hatching.js';
import { Fact, Facts } from '../../explain/number.js';
import { Section } from '../../shell/section.js';

interface Props {
  readonly plan: BatchPlan;
  readonly hatching: HatchingPart;
}

export function HatchingSection({ plan, hatching }: Props) {
  const { incubator } = hatching;
  return (
    <Stack>
      <Section level={3} title="How many eggs">
        <Facts>
          <Fact of={hatching.eggsToSet} />
          {hatching.eggSizes.map((size) => (
            <Fact key={size.label} of={size} />
          ))}
          <Fact of={hatching.eggs} />
          <Fact of={hatching.share} />
          <Fact of={hatching.chicksExpected} />
          <Fact of={plan.birds.enough} />
          <Fact of={hatching.hens} />
          <Fact of={hatching.withHen} />
        </Facts>
      </Section>
      <Section level={3} title="Dates">
        <Facts>
          <Fact of={hatching.keepFrom} />
          <Fact of={hatching.keepAt} />
          <Fact of={hatching.setOn} />
          {hatching.candleOn.map((candle) => (
            <Fact key={candle.value} of={candle} />
          ))}
          <Fact of={incubator?.lockdownOn} />
          <Fact of={hatching.hatchOn} />
        </Facts>
        <Text size="sm" c="dimmed" mt="sm">
          Candle: hold each egg against a light in the dark, and take out clear and dead ones.
          {incubator && ' Lockdown: the last days, when eggs are no longer turned.'}
        </Text>
      </Section>
      {incubator ? (
        <Section level={3} title={`Incubator: ${incubator.kind.toLowerCase()}`}>
          <Text size="sm" mb="xs">
            Read the thermometer {incubator.where}. The maker’s instructions come first.
          </Text>
          <Facts>
            <Fact of={incubator.airC} />
            <Fact of={incubator.humidity} />
            <Fact of={incubator.hatchHumidity} />
            <Fact of={incubator.turning} />
            <Fact of={incubator.weightLoss} />
          </Facts>
        </Section>
      ) : (
        <Section level={3} title="Under a hen">
          <Text>
            The hen keeps the {plan.words.young} warm: no brooder, no lamp, and none of their work.
            The plan looks at the nights from the day she leaves them.
          </Text>
        </Section>
      )}
    </Stack>
  );
}
