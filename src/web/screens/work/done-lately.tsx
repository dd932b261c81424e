import { Stack, Text } from '@mantine/core';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import type { SavedFarm } from '../../api/queries.js';
import { Section } from '../../shell/section.js';
import { useSayDate } from '../../explain/say-date.js';
import { DayJob } from '../../tick/day-job.js';
import { useWorkMarks } from '../../tick/work-marks.js';

/** What was ticked off or struck out, to be opened again. */
export function DoneLately({ plan, farm }: { plan: WorkPlan; farm: SavedFarm }) {
  const { said } = useWorkMarks();
  // What was ticked on this screen stays in its own place.
  const done = plan.done.filter(({ key }) => !said.has(key));
  const struckOut = plan.struckOut.filter(({ key }) => !said.has(key));
  const lately = done.filter(({ isEarlier }) => !isEarlier);
  const earlier = done.filter(({ isEarlier }) => isEarlier);
  if (done.length + struckOut.length === 0) return null;
  return (
    <div className="no-print">
      <Section title="Ticked off and struck out">
        <Stack gap="xs">
          <Done plan={plan} farm={farm} list={lately} />
          {0 < struckOut.length && (
            <details>
              <summary>Struck out: {struckOut.length}</summary>
              {struckOut.map(({ key, name, of, because }) => (
                <div key={key}>
                  <Text>
                    {name}
                    {of && ` · ${of}`}
                    {because && `: ${because}`}
                  </Text>
                  <DayJob
                    work={{ key, name, hours: 0, state: 'struck-out' }}
                    units={farm.units}
                    today={plan.today}
                  />
                </div>
              ))}
            </details>
          )}
          {0 < earlier.length && (
            <details>
              <summary>Done earlier: {earlier.length}</summary>
              <Done plan={plan} farm={farm} list={earlier} />
            </details>
          )}
        </Stack>
      </Section>
    </div>
  );
}

function Done({ plan, farm, list }: { plan: WorkPlan; farm: SavedFarm; list: WorkPlan['done'] }) {
  const sayDate = useSayDate();
  const newestFirst = [...list].sort((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : 0));
  return newestFirst.map(({ key, name, of, on, hours, doneBy }) => (
    <div key={key}>
      <Text>
        {name}
        {of && ` · ${of}`}, {sayDate(on)}
        {doneBy && `, by ${doneBy}`}
      </Text>
      <DayJob work={{ key, name, hours, state: 'done' }} units={farm.units} today={plan.today} />
    </div>
  ));
}
