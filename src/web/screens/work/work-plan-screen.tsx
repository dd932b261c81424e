import { Alert, Button, Group, Modal, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { OwnJob } from '../../../../shared/farm/job.js';
import { formatDate } from '../../../../shared/units/format.js';
import { usePeople, type SavedFarm } from '../../api/queries.js';
import { useJobs, useWork } from '../../api/work-queries.js';
import { Section } from '../batch/section.js';
import { useAll } from '../../shell/states.js';
import { DayCards } from './day-cards.js';
import { JobBars } from './job-bars.js';
import { JobForm } from './job-form.js';
import { NotFitting } from './not-fitting.js';
import { OwnJobs } from './own-jobs.js';
import { WeekHours } from './week-hours.js';

/** The household's work: what to do now, what will not fit, and the season's bars. */
export default function WorkPlanScreen({ farm }: { farm: SavedFarm }) {
  const [editing, setEditing] = useState<OwnJob | 'new'>();
  const all = useAll(useWork(farm.id), useJobs(farm.id), usePeople(farm.id));
  if ('waiting' in all) return all.waiting;
  const [plan, jobs, people] = all.data;
  return (
    <Stack maw={1100}>
      <Title order={1}>The work</Title>
      {plan.people.length === 0 && (
        <Alert color="moss" title="Who does the work?">
          <Text>Without people there are no hours to plan. Add them with their hours.</Text>
          <Button component={Link} href={`/farm/${farm.id}/place`} mt="sm">
            Farm, weather, people
          </Button>
        </Alert>
      )}
      {0 < plan.unplanned.length && (
        <Alert color="orange" title="Work that is missing here">
          {plan.unplanned.join(', ')}: no plan can be made as it stands, so that its work is not
          counted. Open it to see what is wrong.
        </Alert>
      )}
      <Section title="Today and the next three days">
        <DayCards plan={plan} farm={farm} />
      </Section>
      <NotFitting plan={plan} />
      <Section title="Hours by week">
        <WeekHours plan={plan} />
      </Section>
      <Section title="The season">
        <JobBars plan={plan} />
      </Section>
      <Section title="Work of your own">
        <OwnJobs farm={farm} jobs={jobs} onEdit={setEditing} />
        <Group mt="sm">
          <Button onClick={() => setEditing('new')}>Add a job</Button>
        </Group>
      </Section>
      <Text size="sm" c="dimmed">
        Planned on {formatDate(plan.today)} to {formatDate(plan.to)}. Weather:{' '}
        {plan.weather.label.toLowerCase()}
        {plan.weather.forecastDays === 0
          ? '; no forecast, so wet days are spread as they usually come'
          : `, ${plan.weather.forecastDays} days of forecast, then as many wet days as usual`}
        . Most hours are estimates.
      </Text>
      <Modal
        opened={editing !== undefined}
        onClose={() => setEditing(undefined)}
        title={editing === 'new' ? 'Add a job' : 'Change a job'}
        size="lg"
      >
        {editing !== undefined && (
          <JobForm
            farm={farm}
            people={people}
            jobs={jobs}
            today={plan.today}
            start={editing === 'new' ? undefined : editing}
            onDone={() => setEditing(undefined)}
          />
        )}
      </Modal>
    </Stack>
  );
}
