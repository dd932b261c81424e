import { Group, Stack, Text, Title } from '@mantine/core';
import { overWeeks, overWeeksInWords } from '../../../../shared/plan/work/full-weeks.js';
import type { SavedFarm } from '../../api/queries.js';
import { useBatches } from '../../api/queries.js';
import { useWork } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { useAll } from '../../shell/states.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';
import { ArrivalMove } from './arrival-move.js';
import { PrintButton } from '../../shell/print-button.js';
import { JobBars } from './job-bars.js';
import { WeekHours } from './week-hours.js';
import { WorkMarksOf } from '../../tick/work-marks.js';
import { WorkNav } from './work-nav.js';

/** Every job as a bar, hours against work week by week, and what moving an arrival would do. */
export default function WorkPlanScreen({ farm }: { farm: SavedFarm }) {
  const sayDate = useSayDate();
  const all = useAll(useWork(farm.id), useBatches(farm.id));
  if ('waiting' in all) return all.waiting;
  const [plan, batches] = all.data;
  // Of birds that are there, and of those beyond the plan, nothing can be asked.
  const coming = batches.filter(
    ({ arrivalDate }) => plan.today < arrivalDate && arrivalDate < plan.to,
  );
  return (
    <Stack maw={1100}>
      <Group justify="space-between">
        <Title order={1}>Work plan</Title>
        <PrintButton />
      </Group>
      <WorkNav farmId={farm.id} />
      <Section title="Day by day">
        <Text size="sm" mb="sm">
          <span className="job-bar-words">
            Gray are the days on which it may be done, green those on which it is planned, brown the
            key dates it is tied to.{' '}
          </span>
          The plan goes to {sayDate(plan.to)}; what is due later comes into it as the days go by.
        </Text>
        <WorkMarksOf farmId={farm.id}>
          <JobBars plan={plan} farm={farm} />
        </WorkMarksOf>
      </Section>
      <Folded id="hours" title="Hours by week" answer={overWeeksInWords(overWeeks(plan), sayDate)}>
        <WeekHours plan={plan} farmId={farm.id} />
      </Folded>
      {0 < coming.length && (
        <Folded
          id="arrival"
          title="If an arrival moved"
          answer="What that would free, and what would no longer fit"
          isForScreen
        >
          <ArrivalMove farm={farm} batches={coming} />
        </Folded>
      )}
    </Stack>
  );
}
