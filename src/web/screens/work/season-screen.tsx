import { Stack, Title } from '@mantine/core';
import type { SavedFarm } from '../../api/queries.js';
import { useBatches } from '../../api/queries.js';
import { useWork } from '../../api/work-queries.js';
import { useAll } from '../../shell/states.js';
import { Section } from '../batch/section.js';
import { ArrivalMove } from './arrival-move.js';
import { PrintButton } from '../../shell/print-button.js';
import { JobBars } from './job-bars.js';
import { WeekHours } from './week-hours.js';
import { WorkNav } from './work-nav.js';

/** Hours against work week by week, every job as a bar, and what moving an arrival would do. */
export default function SeasonScreen({ farm }: { farm: SavedFarm }) {
  const all = useAll(useWork(farm.id), useBatches(farm.id));
  if ('waiting' in all) return all.waiting;
  const [plan, batches] = all.data;
  return (
    <Stack maw={1100}>
      <Title order={1}>The season’s work</Title>
      <WorkNav farmId={farm.id} />
      <PrintButton />
      <Section title="Hours by week">
        <WeekHours plan={plan} />
      </Section>
      <Section title="The season">
        <JobBars plan={plan} />
      </Section>
      {0 < batches.length && (
        <div className="no-print">
          <Section title="If an arrival moved">
            <ArrivalMove farm={farm} plan={plan} batches={batches} />
          </Section>
        </div>
      )}
    </Stack>
  );
}
