import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import type { OwnJob } from '../../../../shared/farm/job.js';
import { movedWithEvent } from '../../../../shared/plan/work/hanging-jobs.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { usePicture, type SavedFarm } from '../../api/queries.js';
import { useJobs, useWork } from '../../api/work-queries.js';
import { AssumedHeight } from '../../fields/assumed-height.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { useAll } from '../../shell/states.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';
import { JobForm } from './job-form.js';
import { JobSets } from './job-sets.js';
import { OwnJobs } from './own-jobs.js';
import { WorkNav } from './work-nav.js';

/** The household's own jobs, and ready-made sets of work to take or leave. */
export default function OwnScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const [editing, setEditing] = useState<OwnJob | 'new'>();
  const all = useAll(useWork(farm.id), usePicture(farm.id), useJobs(farm.id));
  if ('waiting' in all) return all.waiting;
  const [plan, { people, climate, progress }, saved] = all.data;
  const jobs = saved
    .filter(({ restingSince }) => restingSince === undefined)
    .map((job) => movedWithEvent(job, plan.events))
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn));
  return (
    <Stack maw={1100}>
      <Title order={1}>Other jobs</Title>
      <WorkNav farmId={farm.id} />
      <Section title="Your jobs">
        <OwnJobs
          farm={farm}
          jobs={jobs}
          progress={progress}
          today={plan.today}
          resting={saved.filter(({ restingSince }) => restingSince !== undefined)}
          onEdit={setEditing}
        />
        <Group mt="sm">
          <Button onClick={() => setEditing('new')}>Add a job</Button>
        </Group>
      </Section>
      <Folded
        id="ready-made-sets"
        title="Ready-made sets"
        answer={tables.jobSets.map(({ name }) => name).join(', ')}
        isOpenFirst={jobs.length === 0}
        isForScreen
      >
        <Text mb="sm">
          Work that wants the same hours and dry days as the animals. Add a set, then change or
          remove any of its jobs. Hours are estimates.
        </Text>
        <AssumedHeight farm={farm} what="Frost dates and turn-out are reckoned" />
        <JobSets
          farm={farm}
          tables={tables}
          jobs={jobs}
          climate={climate}
          events={plan.events}
          today={plan.today}
        />
      </Folded>
      <FormDialog
        isOpen={editing !== undefined}
        onClose={() => setEditing(undefined)}
        title={editing === 'new' ? 'Add a job' : 'Change a job'}
      >
        {editing !== undefined && (
          <JobForm
            farm={farm}
            people={people}
            jobs={jobs}
            today={plan.today}
            events={plan.events}
            start={editing === 'new' ? undefined : editing}
            onDone={() => setEditing(undefined)}
          />
        )}
      </FormDialog>
    </Stack>
  );
}
