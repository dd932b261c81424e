import { Chip, Group, Stack, Switch, Table, Text } from '@mantine/core';
import { useState } from 'react';
import { addDays } from '../../../../shared/calendar/plain-date.js';
import { quantityOfDay } from '../../../../shared/explain/daily-series.js';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import { WideTable } from '../../shell/wide-table.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';

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
  const days = plan.daily[0]!.values.length;
  const rows = Array.from({ length: days }, (_, i) => i).filter(
    (i) => !isWeekly || i % 7 === 0 || i === days - 1,
  );
  return (
    <Stack>
      <Chip.Group multiple value={columns} onChange={setColumns}>
        <Group gap="xs">
          {plan.daily.map((s) => (
            <Chip key={s.id} value={s.id}>
              {s.label}
            </Chip>
          ))}
        </Group>
      </Chip.Group>
      <Switch
        size="md"
        label="One row a week"
        checked={isWeekly}
        onChange={(e) => setWeekly(e.currentTarget.checked)}
      />
      <WideTable label="Day by day" minWidth={300}>
        <Table striped stickyHeader aria-label="Day by day">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Day</Table.Th>
              {shown.map((s) => (
                <Table.Th key={s.id}>{s.label}</Table.Th>
              ))}
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {rows.map((i) => (
              <Table.Tr key={i}>
                <Table.Th scope="row" fw={400} style={{ whiteSpace: 'nowrap' }}>
                  {sayDate(addDays(plan.arrivalDate, i))}{' '}
                  <Text component="span" c="dimmed" size="sm">
                    +{i}
                  </Text>
                </Table.Th>
                {shown.map((s) => {
                  const q = quantityOfDay(plan.daily, s.id, i);
                  return <Table.Td key={s.id}>{q ? <Num of={q} /> : '–'}</Table.Td>;
                })}
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </Stack>
  );
}
