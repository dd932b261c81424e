import { Anchor, Button, Card, Group, SimpleGrid, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { takenSetFields, type OwnJob } from '../../../../shared/farm/job.js';
import {
  eventsOfSet,
  hoursOfSet,
  jobsToTake,
  passedOfSet,
  suggestedAnchor,
  turnOutOf,
} from '../../../../shared/plan/work/job-sets.js';
import type { JobSet } from '../../../../shared/tables/job-sets.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import type { Climate } from '../../../../shared/weather/climate.js';
import type { SavedFarm } from '../../api/queries.js';
import { useLeaveSet, useTakeSet } from '../../api/work-queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { DateField } from '../../fields/date-input.js';
import { QuantityInput } from '../../fields/quantity-input.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';
import { rowOfJob } from './own-jobs.js';

/** Sets of work to take or leave, each on the date it hangs on. */
export function JobSets({
  farm,
  tables,
  jobs,
  climate,
  events,
  today,
}: {
  farm: SavedFarm;
  tables: Tables;
  jobs: readonly OwnJob[];
  climate: Climate;
  events: readonly KeyDate[];
  today: string;
}) {
  return (
    <SimpleGrid cols={{ base: 1, sm: 2 }}>
      {tables.jobSets.map((set) => {
        const turnOut = turnOutOf(set, events, today);
        return (
          <SetCard
            key={set.id}
            farm={farm}
            climate={climate}
            set={set}
            taken={jobs.filter((job) => job.setId === set.id)}
            events={eventsOfSet(set, events)}
            suggested={turnOut?.date ?? suggestedAnchor(set, { farm, climate, tables, today })}
            today={today}
          />
        );
      })}
    </SimpleGrid>
  );
}

function SetCard({
  farm,
  climate,
  set,
  taken,
  events,
  suggested,
  today,
}: {
  farm: SavedFarm;
  climate: Climate;
  set: JobSet;
  /** Its jobs among the household's own, the first due first. */
  taken: readonly OwnJob[];
  events: readonly KeyDate[];
  suggested: string;
  today: string;
}) {
  const sayDate = useSayDate();
  const [anchorOn, setAnchorOn] = useState<string | undefined>(suggested);
  const [count, setCount] = useState<number | undefined>(1);
  const { unit, each } = set.counted[farm.units];
  const take = useTakeSet(farm.id);
  const leave = useLeaveSet(farm.id);
  const tied = events.find(({ date }) => date === anchorOn);
  const place = { climate, latitudeDeg: farm.latitudeDeg };
  const on =
    anchorOn === undefined ? undefined : { anchorOn, count: each * (count ?? 0), today, place };
  const dated = on ? jobsToTake(set, on) : [];
  const passed = on ? passedOfSet(set, on) : [];
  const hours = hoursOfSet(set, dated, { count: count ?? 0, unit });
  return (
    <Card withBorder padding="sm" component="section" aria-label={set.name}>
      <Stack gap="xs">
        <Title order={3} size="h4">
          {set.name}
        </Title>
        {taken[0] === undefined ? (
          <>
            <Group align="end" gap="xs">
              <DateField label={set.anchorName} value={anchorOn} onChange={setAnchorOn} />
              <QuantityInput
                w={110}
                aria-label={`${set.name}: how many ${unit}`}
                field={takenSetFields.fields.count}
                units={farm.units}
                value={count}
                onChange={setCount}
              />
            </Group>
            <Text size="sm">
              Counted in {unit}. {dated.length} jobs, <Num of={hours} /> in all
              {dated[0] && `, from ${sayDate(firstOf(dated))} on`}.
              {tied && ` Tied to “${tied.name}”.`}
            </Text>
            {0 < passed.length && (
              <Text size="sm">
                Over for this time:{' '}
                {passed
                  .map(({ name, dueOn }) => `${name} (would have been by ${sayDate(dueOn)})`)
                  .join('; ')}
                .
              </Text>
            )}
            <details>
              <summary>What is in it</summary>
              {set.jobs.map((job) => (
                <Text key={job.id} size="sm">
                  {job.name}
                  {job.times !== undefined && `, ${job.times} times`}
                </Text>
              ))}
            </details>
            <Group>
              <Button
                variant="light"
                disabled={anchorOn === undefined || !count || take.isPending}
                onClick={() =>
                  take.mutate({
                    setId: set.id,
                    anchorOn: anchorOn!,
                    count: each * count!,
                    ...(tied ? { eventId: tied.id } : {}),
                  })
                }
                aria-label={`Add these jobs: ${set.name}`}
              >
                Add these jobs
              </Button>
            </Group>
          </>
        ) : (
          <Group justify="space-between">
            <Text size="sm" role="status">
              {taken.length} of its jobs are among yours, by the day they are due: the first{' '}
              {sayDate(taken[0].dueOn)}, the last {sayDate(taken.at(-1)!.dueOn)}.{' '}
              <Anchor href={`#${rowOfJob(taken[0])}`} inherit>
                See the first
              </Anchor>
            </Text>
            <ConfirmButton
              label={`Remove them: ${set.name}`}
              question={`Remove all jobs of “${set.name}”?`}
              onConfirm={() => leave.mutate(set.id)}
            >
              Remove them
            </ConfirmButton>
          </Group>
        )}
        <Failure error={take.error ?? leave.error} />
      </Stack>
    </Card>
  );
}

const firstOf = (jobs: readonly { readonly notBefore?: string; readonly dueOn: string }[]) =>
  jobs.reduce((first, { notBefore, dueOn }) => {
    const from = notBefore ?? dueOn;
    return from < first ? from : first;
  }, '9999');
