import { Button, Group, Stack, Text } from '@mantine/core';
import { addDays, type PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { OwnJob } from '../../../../shared/farm/job.js';
import {
  isRepeated,
  repeatWords,
  timesBetween,
} from '../../../../shared/farm/repeated-jobs.js';
import { formatHours } from '../../../../shared/units/format.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';

/** The household's own jobs, to change or remove. */
export function OwnJobs({
  farm,
  jobs,
  resting,
  today,
  onEdit,
}: {
  farm: SavedFarm;
  jobs: readonly OwnJob[];
  resting: readonly OwnJob[];
  today: PlainDate;
  onEdit: (job: OwnJob) => void;
}) {
  const sayDate = useSayDate();
  const remove = useRemove(farm, 'jobs');
  return (
    <Stack gap="xs">
      {jobs.length === 0 && (
        <Text>
          Beds, orchard, hives, fence, firewood: what competes with the animals for the same hours.
        </Text>
      )}
      {jobs.map((job) => (
        <Group key={job.id} justify="space-between" gap="xs">
          <Text>
            {job.name}: {formatHours(job.hours)}, {whenText(job, today, sayDate)}
          </Text>
          <Group gap="xs">
            <Button variant="default" onClick={() => onEdit(job)} aria-label={`Change ${job.name}`}>
              Change
            </Button>
            <ConfirmButton
              label={`Remove ${job.name}`}
              question={`Remove ${job.name}?`}
              onConfirm={() => remove.mutate(job)}
            >
              Remove
            </ConfirmButton>
          </Group>
        </Group>
      ))}
      {0 < resting.length && (
        <details>
          <summary>Done and put away: {resting.length}</summary>
          {resting.map(({ id, name, dueOn }) => (
            <Text key={id}>
              {name}, {sayDate(dueOn)}
            </Text>
          ))}
        </details>
      )}
      <Failure error={remove.error} />
    </Stack>
  );
}

/** When it is due; of what comes again how often, and when it is the next time. */
function whenText(job: OwnJob, today: PlainDate, sayDate: SayDate): string {
  if (!isRepeated(job)) return `due ${sayDate(job.dueOn)}`;
  const [next] = timesBetween(job, today, addDays(today, FAR_DAYS));
  const often = repeatWords(job.repeats);
  return next === undefined ? `${often}, no more` : `${often}, next on ${sayDate(next)}`;
}

/** The longest from one time to the next, and a job may begin only in a year. */
const FAR_DAYS = 2 * 366;
