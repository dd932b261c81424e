import { Alert, Button, Checkbox, Group, Modal, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import type { NextYear } from '../../../../shared/plan/record/next-year.js';
import { farmDay, type SavedFarm } from '../../api/queries.js';
import { useBeginYear, useNextYear, useTakeOutYear } from '../../api/record-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { Failure, useAll } from '../../shell/states.js';
import { Land } from './next-land.js';
import { toggled } from './toggled.js';

interface Props {
  readonly farm: SavedFarm;
  readonly year: number;
  readonly onDone: () => void;
}

/** What of a year comes again in the next one: seen before it is saved, each thing to be left out. */
export default function NextYearDialog(props: Props) {
  const { year, onDone } = props;
  return (
    <Modal
      opened
      onClose={onDone}
      size="lg"
      title={`Start ${year + 1} from ${year}`}
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      <Which {...props} />
    </Modal>
  );
}

function Which({ farm, year, onDone }: Props) {
  const all = useAll(useNextYear(farm.id, year));
  if ('waiting' in all) return all.waiting;
  return <Choice next={all.data[0]} {...{ farm, year, onDone }} />;
}

function Choice({ next, farm, year, onDone }: Props & { next: NextYear }) {
  const sayDate = useSayDate();
  const begin = useBeginYear(
    farm.id,
    next.herds
      .flatMap(({ calvings = [] }) => calvings)
      .flatMap(({ of }) => ('cowId' in of ? [of.cowId] : [])),
  );
  const takeOut = useTakeOutYear(farm.id);
  const made = begin.data;
  const today = farmDay(farm);
  const [batchIds, setBatchIds] = useState(() =>
    next.batches
      .filter((each) => each.isThere === undefined && today <= each.next.arrivalDate)
      .map(({ ofId }) => ofId),
  );
  const [jobIds, setJobIds] = useState(() =>
    next.jobs.filter((each) => !each.isThere && today <= each.next.dueOn).map(({ ofId }) => ofId),
  );
  const [herdIds, setHerdIds] = useState(() =>
    next.herds.filter((each) => !each.isThere).map(({ ofId }) => ofId),
  );
  const [paddockIds, setPaddockIds] = useState(() => next.paddocks.map(({ ofId }) => ofId));
  const { batches, jobs, herds, paddocks } = next;
  if (batches.length + jobs.length + herds.length + paddocks.length === 0)
    return (
      <Text>
        No batch and no cattle came in {year}, no other job was due in it and no paddock was closed.
      </Text>
    );
  const hasAny = 0 < batchIds.length + jobIds.length + herdIds.length + paddockIds.length;
  return (
    <Stack>
      <Text>
        Each date comes 52 weeks later, on the same day of the week. Orders, slots and dates you
        fixed by hand are open again. Cattle that were there before and jobs that repeat go on by
        themselves.
      </Text>
      <Stack gap="xs" role="group" aria-label="Batches">
        {next.batches.map(({ ofId, plannedFor, cameOn, next: batch, learned, isThere }) => (
          <div key={ofId}>
            <Checkbox
              size="md"
              label={`${batch.name}, ${sayDate(batch.arrivalDate)}`}
              description={
                isThere === undefined
                  ? `${batch.wantedBirds} wanted; ${cameOn === undefined ? `planned for ${sayDate(plannedFor)}` : `came ${sayDate(cameOn)}`}`
                  : `There already: ${isThere}`
              }
              checked={batchIds.includes(ofId)}
              onChange={(event) =>
                setBatchIds(toggled(batchIds, ofId, event.currentTarget.checked))
              }
            />
            {learned.length > 0 && (
              <Text size="sm" mt={4} ml="xl">
                From your record: {learned.join(' ')}
              </Text>
            )}
          </div>
        ))}
      </Stack>
      {next.jobs.length > 0 && (
        <>
          <Title order={3} size="h4">
            Other jobs
          </Title>
          <Stack gap="xs" role="group" aria-label="Other jobs">
            {next.jobs.map(({ ofId, next: job, isThere }) => (
              <Checkbox
                key={ofId}
                size="md"
                label={`${job.name}, due ${sayDate(job.dueOn)}`}
                {...(isThere ? { description: 'There already' } : {})}
                checked={jobIds.includes(ofId)}
                onChange={(event) => setJobIds(toggled(jobIds, ofId, event.currentTarget.checked))}
              />
            ))}
          </Stack>
        </>
      )}
      <Land {...{ next, herdIds, paddockIds }} onHerds={setHerdIds} onPaddocks={setPaddockIds} />
      <Failure error={takeOut.error ?? begin.error} />
      {takeOut.isSuccess ? (
        <Alert color="accent">
          {takeOut.data.kept.length === 0
            ? 'All of it is taken out again.'
            : `Taken out again, but for what was changed or told of since, and what such a job waits for: ${takeOut.data.kept.join(', ')}. Change or delete it where it stands.`}
        </Alert>
      ) : made ? (
        <Alert color="accent">
          Saved. They stand among your batches, jobs, herds and paddocks, to be changed one by one.
          <Group mt="xs">
            <Button
              variant="default"
              loading={takeOut.isPending}
              onClick={() => takeOut.mutate(made)}
            >
              Undo
            </Button>
          </Group>
        </Alert>
      ) : (
        <Group>
          <Button
            loading={begin.isPending}
            disabled={!hasAny}
            onClick={() => begin.mutate({ year, batchIds, jobIds, herdIds, paddockIds })}
          >
            Plan these for {year + 1}
          </Button>
          <Button variant="default" onClick={onDone}>
            Not now
          </Button>
        </Group>
      )}
    </Stack>
  );
}
