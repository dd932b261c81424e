import { Group, Progress, Stack, Text, Title } from '@mantine/core';
import type { WorkOutlook } from '../../../../shared/plan/work/work-outlook.js';
import type { SavedFarm } from '../../api/queries.js';
import { useOutlook, useOutlookProgress } from '../../api/work-queries.js';
import { playedWords } from '../../../../shared/plan/work/chance-words.js';
import { PrintButton } from '../../shell/print-button.js';
import { useAll } from '../../shell/states.js';
import { Folded } from '../../shell/folded.js';
import { Section } from '../../shell/section.js';
import { FrostTable } from './frost-table.js';
import { LikelyWork } from './job-chances.js';
import { UnlikelyWork } from './unlikely-work.js';
import { WorkNav } from './work-nav.js';
import { WorkableDays } from './workable-days.js';

/** The season played through many years of weather: what gets done, what helps, dry days, frost. */
export default function ChancesScreen({ farm }: { farm: SavedFarm }) {
  const asked = useOutlook(farm.id);
  const all = useAll(asked);
  if ('waiting' in all) return asked.error ? all.waiting : <Playing farmId={farm.id} />;
  const [outlook] = all.data;
  return (
    <Stack maw={1100}>
      <Group justify="space-between">
        <Title order={1}>Will it get done?</Title>
        <PrintButton />
      </Group>
      <WorkNav farmId={farm.id} />
      <Section title="Probably not in time">
        <UnlikelyWork outlook={outlook} />
      </Section>
      <Section title="Likely in time">
        <LikelyWork outlook={outlook} />
      </Section>
      <Text size="sm" c="dimmed">
        {yearsText(outlook)} {playedWords(outlook)}
      </Text>
      <Folded
        id="dry-enough"
        title="Days dry enough to work"
        answer="In a wet year, half of the years, and a dry one"
      >
        <WorkableDays outlook={outlook} />
      </Folded>
      <Folded id="frost" title="Frost" answer="How late it freezes in spring, how early in fall">
        <FrostTable outlook={outlook} farm={farm} />
      </Folded>
    </Stack>
  );
}

/** How much of the years is played. */
function Playing({ farmId }: { farmId: string }) {
  const played = useOutlookProgress(farmId).data?.played ?? 0;
  return (
    <Stack p="xl" maw={600} role="status" aria-label="Loading">
      <Text>Playing your work through years of weather …</Text>
      <Progress value={100 * played} aria-label="Played so far" />
    </Stack>
  );
}

function yearsText(outlook: WorkOutlook): string {
  const { years, isMeasured, label, hasRain } = outlook;
  const source = isMeasured
    ? `Played through the ${years} years of your daily weather that cover this stretch (${label.toLowerCase()}).`
    : `Played through ${years.toLocaleString('en')} years drawn by chance from ${label.toLowerCase()}. Ten years or more of daily weather of your own place would be better: fetch or import them under Your place.`;
  return hasRain ? source : `${source} No rain is known, so that every day counts as dry.`;
}
