import { List, Stack, Text } from '@mantine/core';
import type { SeasonPlan } from '../../../../shared/plan/season/season-plan.js';
import { formatShortDate } from '../../../../shared/units/format.js';
import { Section } from '../batch/section.js';
import { hoursText } from './hours-text.js';

/** What does not fit, why, and what would make it fit. */
export function NotFitting({ plan }: { plan: SeasonPlan }) {
  const unfit = plan.jobs.filter((job) => job.pieces.length === 0);
  return (
    <Section title={unfit.length === 0 ? 'Everything fits' : 'Will not fit'}>
      {unfit.length === 0 && (
        <Text>All {plan.jobs.length} pieces of work fit into the hours and days there are.</Text>
      )}
      <Stack gap="sm">
        {unfit.map((job) => (
          <div key={job.key}>
            <Text fw={600}>
              {job.name}
              {job.belongsTo && ` · ${job.belongsTo.name}`}
            </Text>
            <Text size="sm">
              {hoursText(job.hours)}
              {1 < job.people && ` for ${job.people} people`}, due by {formatShortDate(job.latest)}.{' '}
              {job.why}
            </Text>
            {0 < job.remedies.length && (
              <>
                <Text size="sm">What would make it fit:</Text>
                <List size="sm">
                  {job.remedies.map((remedy) => (
                    <List.Item key={remedy}>{remedy}</List.Item>
                  ))}
                </List>
              </>
            )}
          </div>
        ))}
      </Stack>
    </Section>
  );
}
