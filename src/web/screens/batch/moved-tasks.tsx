import { Text } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { useSayDate } from '../../explain/say-date.js';
import { More } from './story-section.js';

/** What another arrival than the saved one moves. */
export function MovedTasks({ plan: { tasks } }: { plan: BatchPlan }) {
  const sayDate = useSayDate();
  const { changes = [] } = tasks;
  if (changes.length === 0) return null;
  const nowLate = changes.filter((c) => c.nowLate);
  return (
    <div role="status">
      {0 < nowLate.length && (
        <Text fw={600}>Already late now: {nowLate.map((c) => c.name).join('; ')}.</Text>
      )}
      <More title={`${changes.length} tasks moved with the arrival`}>
        {changes.map((c) => (
          <Text key={c.id} size="sm">
            {c.name}: {sayDate(c.before)} → {sayDate(c.after)}
          </Text>
        ))}
      </More>
    </div>
  );
}
