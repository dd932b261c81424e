import { Anchor, Stack, Text } from '@mantine/core';
import { Link } from 'wouter';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { Fact, Facts } from '../../explain/number.js';
import { useBatchCost } from './use-batch-cost.js';
import type { AskedBatch } from './use-plan.js';
import { AgesOfHens } from './ages-of-hens.js';

/** What a pound or a dozen must bring, beside the price that was given. */
export default function BringSection({
  plan,
  asked,
}: {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
}) {
  const costs = useBatchCost(plan, asked);
  if (!costs) return <Text>Working it out …</Text>;
  const { breakEven, layAges } = costs;
  const { mustBring, beside, ownHours } = breakEven;
  return (
    <Stack>
      {breakEven.said.map((line) => (
        <Text key={line}>{line}</Text>
      ))}
      {mustBring.length === 0 && <Text>Not known before everything in the bill has a price.</Text>}
      <Facts>
        {mustBring.flatMap(({ label, withoutHours, withHours }) => [
          <Fact key={label} of={withoutHours} />,
          <Fact key={`${label}, hours`} of={withHours} />,
        ])}
        <Fact of={breakEven.priceWanted} />
        <Fact of={breakEven.left} />
        <Fact of={breakEven.hourBrings} />
        <Fact of={breakEven.withoutHours} />
        <Fact of={ownHours?.cost} />
        {beside.map(({ label, cost }) => (
          <Fact key={label} of={cost} />
        ))}
      </Facts>
      <Text size="sm" c="dimmed">
        What an hour of yours is worth, a trip, gear that lasts, and what a pound brings stand under{' '}
        <Anchor component={Link} href={`/farm/${asked.farm.id}/place`} inherit>
          prices of your place
        </Anchor>
        . What is not there is not counted.
      </Text>
      {layAges && <AgesOfHens ages={layAges} />}
    </Stack>
  );
}
