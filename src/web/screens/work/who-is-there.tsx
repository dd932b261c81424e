import { List, Text } from '@mantine/core';
import type { WorkPlan } from '../../../../shared/plan/work/work-plan.js';
import { Section } from '../../shell/section.js';

/** Days on which the animals have nobody, said before anything else of the plan. */
export function WhoIsThere({ gaps }: { gaps: WorkPlan['careGaps'] }) {
  if (gaps.length === 0) return null;
  return (
    <Section title="Who is there for the animals?">
      <List>
        {gaps.map(({ kind, from, of, said, ways }) => (
          <List.Item key={`${kind}/${from}/${of.join()}`}>
            <Text fw={kind === 'nobody-there' ? 700 : undefined}>{said}</Text>
            <Text size="sm">What would do: {ways.join(' Or: ')}</Text>
          </List.Item>
        ))}
      </List>
    </Section>
  );
}
