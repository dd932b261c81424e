import './work.css';
import { Button, Stack, Table, Text } from '@mantine/core';
import { useMemo, useState } from 'react';
import type { AboutNumbers } from '../../../../shared/explain/moved.js';
import { overWeeks, overWeeksInWords } from '../../../../shared/plan/work/full-weeks.js';
import { weeksToTell } from '../../../../shared/plan/work/weeks-to-tell.js';
import { aboutWeeks } from '../../../../shared/plan/work/about-work.js';
import type { WorkPlan, WorkWeek } from '../../../../shared/plan/work/planned-work.js';
import { weekQuantities } from '../../../../shared/plan/work/work-quantities.js';
import { usePeople, useTables } from '../../api/queries.js';
import { useHandovers } from '../../api/work-queries.js';
import { NumbersOf } from '../../explain/about-numbers.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';

/** So many weeks are read at a glance; the rest are asked for. */
const SHOWN = 8;

/** Hours people give beside what chores and work take, week by week. */
export function WeekHours({ plan, farmId }: { plan: WorkPlan; farmId: string }) {
  const sayDate = useSayDate();
  const about = useAboutHours(plan, farmId);
  const [isWhole, setWhole] = useState(false);
  const most = Math.max(1, ...plan.weeks.map((w) => Math.max(w.hours, w.choreHours + w.dueHours)));
  const busy = weeksToTell(plan);
  const over = overWeeks(plan);
  const early = plan.weeks.filter((week) => week.isOverloaded);
  const content = (
    <Stack gap="xs">
      <Text size="sm">
        {over.length <= 1
          ? `${overWeeksInWords(over, sayDate)}.`
          : `These weeks ask for more than fits: ${over.map(sayDate).join('; ')}. What is missing stands under Work, as “No time for these”.`}
      </Text>
      {0 < early.length && (
        <Text size="sm">
          {`More work is due than hours available in the week of ${early
            .map((week) => sayDate(week.from))
            .join('; ')}: what can be is done before.`}
        </Text>
      )}
      {busy.length < plan.weeks.length && (
        <Text size="sm">
          {plan.weeks.length - busy.length} of {plan.weeks.length} weeks have no work but chores at
          most, and are left out.
        </Text>
      )}
      <WideTable label="Hours by week">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Week of</Table.Th>
              <Table.Th>Hours available</Table.Th>
              <Table.Th>Chores</Table.Th>
              <Table.Th>Planned</Table.Th>
              <Table.Th>Due</Table.Th>
              <Table.Th aria-hidden />
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {busy.slice(0, isWhole ? undefined : SHOWN).map((week) => (
              <Table.Tr key={week.from}>
                <Table.Th scope="row" className="no-wrap">
                  {sayDate(week.from)}
                </Table.Th>
                <Table.Td data-label="Hours available">
                  <Num of={weekQuantities(week, plan.basis).given} />
                </Table.Td>
                <Table.Td data-label="Chores">
                  <Num of={weekQuantities(week, plan.basis).chores} />
                </Table.Td>
                <Table.Td data-label="Planned">
                  <Num of={weekQuantities(week, plan.basis).planned} />
                </Table.Td>
                <Table.Td data-label="Due">
                  <Num of={weekQuantities(week, plan.basis).due} />
                </Table.Td>
                <Table.Td aria-hidden className="week-bar-cell">
                  <Bar week={week} most={most} />
                </Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      {!isWhole && SHOWN < busy.length && (
        <div className="no-print">
          <Button variant="default" onClick={() => setWhole(true)}>
            All {busy.length} weeks
          </Button>
        </div>
      )}
    </Stack>
  );
  return about ? <NumbersOf about={about}>{content}</NumbersOf> : content;
}

/** What is asked of hours beside their sum; undefined until people are read. */
function useAboutHours(plan: WorkPlan, farmId: string): AboutNumbers | undefined {
  const people = usePeople(farmId).data;
  const handovers = useHandovers(farmId).data;
  const tables = useTables().data;
  return useMemo(
    () => people && handovers && tables && aboutWeeks(plan, { people, handovers, tables }),
    [plan, people, handovers, tables],
  );
}

function Bar({ week, most }: { week: WorkWeek; most: number }) {
  const share = (hours: number): string => `${(100 * hours) / most}%`;
  return (
    <div className="week-bar">
      <div className="week-bar-given" style={{ width: share(week.hours) }} />
      <div className="week-bar-chores" style={{ width: share(week.choreHours) }} />
      <div
        className="week-bar-planned"
        style={{ left: share(week.choreHours), width: share(week.plannedHours) }}
      />
    </div>
  );
}
