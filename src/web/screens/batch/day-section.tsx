import { Chip, Group, Stack, Switch } from '@mantine/core';
import { useState } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../../../shared/explain/daily-series.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { daysOfBirds } from '../../../../shared/plan/days-of-birds.js';
import { useSayDate } from '../../explain/say-date.js';
import { AgeTable, type AgeColumn } from './age-table.js';

const FIRST_COLUMNS = [
  'alive',
  'weight-mean',
  'feed-day',
  'water-day',
  'under-heater',
  'night-low',
];

/** Every daily value of the plan as a table. Each cell opens. */
export function DaySection({ plan }: { plan: BatchPlan }) {
  const sayDate = useSayDate();
  const [columns, setColumns] = useState(FIRST_COLUMNS);
  const [isWeekly, setWeekly] = useState(true);
  const shown = plan.daily.filter((s) => columns.includes(s.id));
  const days = daysOfBirds(plan);
  const rows = Array.from({ length: days }, (_, i) => i).filter(
    (i) => !isWeekly || i % 7 === 0 || i === days - 1,
  );
  return (
    <Stack>
      <details>
        <summary>
          Shown: {shown.length} of {plan.daily.length}
        </summary>
        <Chip.Group multiple value={columns} onChange={setColumns}>
          <Group gap="xs">
            {plan.daily.map((s) => (
              <Chip key={s.id} value={s.id}>
                {s.label}
              </Chip>
            ))}
          </Group>
        </Chip.Group>
      </details>
      <Switch
        size="md"
        label="One row a week"
        checked={isWeekly}
        onChange={(e) => setWeekly(e.currentTarget.checked)}
      />
      <AgeTable
        label="Day by day"
        ageLabel="Day"
        rows={rows}
        columns={shown.map((s): AgeColumn<number> => [
          s.label,
          (i) => quantityOfDay(plan.daily, s.id, i),
        ])}
        ageOf={(i) => sayDate(addDays(plan.arrivalDate, i))}
      />
    </Stack>
  );
}
