import { Button, Group, Stack, Text } from '@mantine/core';
import type { OwnJob } from '../../../../shared/farm/job.js';
import { formatHours } from '../../../../shared/units/format.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';

/** The household's own jobs, to change or remove. */
export function OwnJobs({
  farm,
  jobs,
  resting,
  onEdit,
}: {
  farm: SavedFarm;
  jobs: readonly OwnJob[];
  resting: readonly OwnJob[];
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
            {job.name}: {formatHours(job.hours)}, due {sayDate(job.dueOn)}
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
