import { List } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { Fact, Facts } from '../../explain/number.js';

/** How long drinkers and feeders last in the brooder, or after it, and how often they are filled. */
export function RefillFacts({ plan, isBrooder }: { plan: BatchPlan; isBrooder: boolean }) {
  const parts = plan.refills.filter(({ isBrooder: isIn }) => isIn === isBrooder);
  if (parts.length === 0) return null;
  return (
    <>
      <Facts>
        {parts.map(({ kind, share }) => (
          <Fact key={kind} of={share} />
        ))}
      </Facts>
      <List size="sm" mb="sm">
        {parts.map(({ kind, said }) => (
          <List.Item key={kind}>{said}</List.Item>
        ))}
      </List>
    </>
  );
}
