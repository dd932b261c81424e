import { Alert, Button, Group, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import type { SavedFarm } from '../../api/queries.js';
import { useWork } from '../../api/work-queries.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { KeptSaid, type Kept } from '../../shell/kept-said.js';
import { PrintButton } from '../../shell/print-button.js';
import { useAll } from '../../shell/states.js';
import { Section } from '../../shell/section.js';
import { ChangeList } from './change-list.js';
import { DayCards } from './day-cards.js';
import { DoneLately } from './done-lately.js';
import { ForecastForm } from './forecast-form.js';
import { NotFitting } from './not-fitting.js';
import { TooSoon } from './too-soon.js';
import { WhoIsThere } from './who-is-there.js';
import { WorkMarksOf } from '../../tick/work-marks.js';
import { WorkNav } from './work-nav.js';

/** The work of the next days: what to do, what changed, and what will not fit. */
export default function NextDaysScreen({ farm }: { farm: SavedFarm }) {
  const sayDate = useSayDate();
  const all = useAll(useWork(farm.id));
  const [kept, setKept] = useState<Kept>();
  if ('waiting' in all) return all.waiting;
  const [plan] = all.data;
  const { changes } = plan;
  return (
    <Stack maw={1100}>
      <Group justify="space-between">
        <Title order={1}>Work</Title>
        <PrintButton />
      </Group>
      <WorkNav farmId={farm.id} />
      {plan.people.length === 0 && (
        <Alert color="accent" title="Who does the work?">
          <Text>Without people there are no hours to plan. Add them with their hours.</Text>
          <Button component={Link} href={`/farm/${farm.id}/place`} mt="sm">
            Your place
          </Button>
        </Alert>
      )}
      {0 < plan.unplanned.length && (
        <Alert color="warn" title="Work that is missing here">
          {plan.unplanned.join(', ')}: no plan can be made as it stands, so that its work is not
          counted. Open it to see what is wrong.
        </Alert>
      )}
      <WhoIsThere plan={plan} />
      {kept && <KeptSaid key={kept.words} of={kept} onUndone={() => setKept(undefined)} />}
      <TooSoon plan={plan} farm={farm} onKept={setKept} />
      <WorkMarksOf farmId={farm.id}>
        <Section title="Today and the next three days">
          <DayCards plan={plan} farm={farm} />
          <details className="no-print">
            <summary>Forecast</summary>
            <ForecastForm key={plan.weather.isForecast.join('')} plan={plan} farm={farm} />
          </details>
        </Section>
        {changes && (
          <Section title={`What changed since ${sayDate(changes.since)}`}>
            <ChangeList changes={changes.list} none="Nothing: the plan stands as it was." />
          </Section>
        )}
        <NotFitting plan={plan} farm={farm} onKept={setKept} />
        <DoneLately plan={plan} farm={farm} />
      </WorkMarksOf>
      <Text size="sm" c="dimmed">
        Work from {sayDate(plan.today)} to {sayDate(plan.to)}. Weather:{' '}
        {plan.weather.label.toLowerCase()}
        {plan.weather.forecastDays === 0
          ? '; no forecast, so wet days are spread as they usually come'
          : `, ${plan.weather.forecastDays} days of forecast${gapsText(plan, sayDate)}, then as many wet days as usual`}
        . {provenText(plan)} Most hours are estimates.
      </Text>
    </Stack>
  );
}

/** Days before the last one forecast that the forecast leaves out. */
function gapsText({ weather, today }: WorkPlan, sayDate: SayDate): string {
  const last = weather.isForecast.lastIndexOf(1);
  const gaps = weather.isForecast.slice(0, last).flatMap((is, k) => (is === 1 ? [] : [k]));
  if (gaps.length === 0) return '';
  return ` (none for ${gaps.map((k) => sayDate(addDays(today, k))).join('; ')}: usual weather there)`;
}

/** Says so when no plan of these hours and days can leave less late or lost. */
function provenText({ cost, costAtLeast }: WorkPlan): string {
  return cost <= costAtLeast + 0.5 ? 'No better plan is known.' : '';
}
