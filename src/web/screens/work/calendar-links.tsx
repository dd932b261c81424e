import { Anchor, Code, Stack, Text } from '@mantine/core';
import type { SeasonPlan } from '../../../../shared/plan/season/season-plan.js';

/** Addresses that a calendar program can subscribe to: everyone's, and one for each person. */
export function CalendarLinks({
  farmId,
  people,
}: {
  farmId: string;
  people: SeasonPlan['people'];
}) {
  const base = `${window.location.origin}/api/farms/${farmId}/calendar.ics`;
  const feeds = [
    { name: 'Everyone', href: base },
    ...people.map(({ id, name }) => ({ name, href: `${base}?person=${encodeURIComponent(id)}` })),
  ];
  return (
    <Stack gap="xs">
      <Text>
        Subscribe to one of these in a calendar program that reaches this computer: work, arrivals
        and moves then shift by themselves when the plan does. What cannot slip reminds you at nine
        on the morning before.
      </Text>
      {feeds.map(({ name, href }) => (
        <Text key={href} style={{ overflowWrap: 'anywhere' }}>
          <Anchor href={href} underline="always">
            {name}
          </Anchor>
          : <Code>{href}</Code>
        </Text>
      ))}
    </Stack>
  );
}
