import { Anchor, Code, Stack, Text } from '@mantine/core';
import { useQuery } from '@tanstack/react-query';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { postJson } from '../../api/client.js';
import { ofFarm, useChange } from '../../api/queries.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure, useAll } from '../../shell/states.js';

interface CalendarAddress {
  readonly path: string;
  readonly isKeyNeeded: boolean;
}

/** Addresses that a calendar program can subscribe to: everyone's, and one for each person. */
export function CalendarLinks({ farmId, people }: { farmId: string; people: WorkPlan['people'] }) {
  const all = useAll(useQuery(ofFarm<CalendarAddress>(farmId, '/calendar')));
  const renew = useChange(() => postJson<CalendarAddress>(`/farms/${farmId}/calendar/key`));
  if ('waiting' in all) return all.waiting;
  const [{ path, isKeyNeeded }] = all.data;
  const everyone = new URL(path, window.location.origin);
  const feeds = [
    { name: 'Everyone', whose: 'everyone', href: everyone.href },
    ...people.map(({ id, name }) => {
      const theirs = new URL(everyone);
      theirs.searchParams.set('person', id);
      return { name, whose: name, href: theirs.href };
    }),
  ];
  return (
    <Stack gap="xs">
      <Text>
        Subscribe to one of these in a calendar program that reaches this computer: work, arrivals
        and moves then shift by themselves when the plan does. What has no days to spare reminds you
        at nine on the morning before.
      </Text>
      <div className="rows">
        {feeds.map(({ name, whose, href }) => (
          <details key={href}>
            <summary>{name}</summary>
            <Text style={{ overflowWrap: 'anywhere' }}>
              <Anchor href={href}>Open the calendar of {whose}</Anchor>, or type its address:{' '}
              <Code>{href}</Code>
            </Text>
          </details>
        ))}
      </div>
      {isKeyNeeded && (
        <>
          <Text>
            Whoever has an address sees this calendar, so give it to nobody else. If one got out,
            make new addresses: the old ones then show nothing, and each phone subscribes again.
          </Text>
          <ConfirmButton
            label="Make new addresses"
            question="The old addresses stop at once."
            yes="Make new ones"
            no="Keep them"
            onConfirm={() => renew.mutate(undefined)}
          >
            Make new addresses
          </ConfirmButton>
          <Failure error={renew.error} />
        </>
      )}
    </Stack>
  );
}
