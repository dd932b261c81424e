import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import './print.css';
import { Table, Text, Title } from '@mantine/core';
import type { BatchPlan } from '../../../../shared/plan/batch-plan.js';
import type { AskedBatch } from '../batch/use-plan.js';
import { isPastItsDay, type Task } from '../../../../shared/plan/tasks/task.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { formatHours, formatValue } from '../../../../shared/units/format.js';
import { inOwnUnits } from '../../../../shared/units/own-units.js';
import { useSayDate } from '../../explain/say-date.js';
import { inOrderOfDays, useAsTrips, useTaskDay, type TaskDay } from '../../tick/fitted-tasks.js';
import { useFitsPage } from '../../shell/fits-page.js';
import { WideTable } from '../../shell/wide-table.js';
import { LampWeeks } from './lamp-weeks.js';
import { unbroken } from '../../explain/unbroken.js';

export interface SheetProps {
  readonly plan: BatchPlan;
  readonly asked: AskedBatch;
}

/** A card to hang by the lamp: dates, temperatures, what to look for. */
export function BrooderCard({ plan, asked: { farm, tables } }: SheetProps) {
  const sayDate = useSayDate();
  const fits = useFitsPage(farm.units);
  const { brooding, heat, birds, outdoors, words } = plan;
  if (!brooding) return <Text>A hen keeps these {words.young} warm: there is no brooder.</Text>;
  return (
    <section ref={fits} className="brooder-card" aria-label="Brooder card">
      <Title order={1}>Brooder card: {plan.name}</Title>
      <Text>
        {plan.hatching
          ? `${birds.chicksPlaced.value} ${words.young} hatch ${formatLongDate(plan.arrivalDate, farm)}.`
          : `${birds.chicksPlaced.value} ${words.young} arrive ${formatLongDate(plan.arrivalDate, farm)} (hatched ${sayDate(plan.hatchDate)}).`}
        {heat &&
          ` ${heat.brooderName}: ${unbroken(`${Math.round(heat.installed.value / heat.heaterW)} × ${formatValue(heat.heaterW, 'W', farm)}`)}.`}
      </Text>
      <WideTable label="Temperatures">
        <Table fz="md" my="xs" verticalSpacing={2} withTableBorder withColumnBorders>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>From</Table.Th>
              <Table.Th>Under the heat, {words.youngOne} height</Table.Th>
              <Table.Th>Cool end</Table.Th>
              <Table.Th>Done</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {brooding.steps.map((step) => (
              <Table.Tr key={step.from}>
                <Table.Td className="no-wrap">{sayDate(step.from)}</Table.Td>
                <Table.Td fw={700}>{formatValue(step.underHeater.value, 'degC', farm)}</Table.Td>
                <Table.Td>
                  {formatValue(step.coolEnd.value, 'degC', farm)}
                  {step.hotNoon &&
                    `, ${formatValue(step.hotNoon.value, 'degC', farm)} at a hot noon`}
                </Table.Td>
                <Table.Td>☐</Table.Td>
              </Table.Tr>
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
      {heat && <LampWeeks heat={heat} farm={farm} />}
      {outdoors.moveOut && (
        <Text>
          Out of the brooder: {sayDate(String(outdoors.moveOut.value))}, if the nights hold.
        </Text>
      )}
      <div className="brooder-notes">
        <RoomLines plan={plan} farm={farm} />
        <Title order={2} size="h3" mt="xs">
          Look at the birds first
        </Title>
        {brooding.lookFor.map((line) => (
          <Text key={line}>{line}</Text>
        ))}
        {plan.cautions
          .filter((key) =>
            [
              'heat-lamp',
              'heat-plate',
              'carbon-monoxide',
              'power-cut',
              'gas-empty',
              'salmonella',
            ].includes(key),
          )
          .map((key) => (
            <Text key={key} size="sm" mt="xs">
              <b>{tables.cautions[key]!.title}.</b>{' '}
              {inOwnUnits(tables.cautions[key]!.text, farm.units)}
            </Text>
          ))}
        <Text size="sm" mt="xs">
          {brooding.scheduleName};{' '}
          {tables.broodingSchedules
            .find((s) => s.id === brooding.scheduleId)!
            .sources.map((id) => tables.sources[id]?.title)
            .join('; ')}
          .
        </Text>
      </div>
    </section>
  );
}

/** A line for each day that decides whether they fit. */
function RoomLines({ plan, farm }: { plan: BatchPlan; farm: SheetProps['asked']['farm'] }) {
  const sayDate = useSayDate();
  return plan.space.stocking.map(({ when, on, place, birds, needed, fits }) => (
    <Text key={place + when} size="sm">
      {place}, {when.toLowerCase()} ({sayDate(on)}): {birds.value} birds need{' '}
      {formatValue(needed.value, 'm2', farm)}
      {fits && `; ${fits.value} fit`}.
    </Text>
  ));
}

/** Every task by date, with a box to tick. */
export function TaskList({ plan, asked: { farm, picture } }: SheetProps) {
  const dayOf = useTaskDay('batch');
  const asTrips = useAsTrips(picture.progress);
  return (
    <>
      <Title order={1}>Tasks: {plan.name}</Title>
      <Text>
        {formatHours(plan.tasks.hoursInAll.value)} in all. Arrival{' '}
        {formatLongDate(plan.arrivalDate, farm)}.
      </Text>
      <WideTable label="Tasks">
        <Table className="stacks" my="sm" withTableBorder verticalSpacing={4}>
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Planned for</Table.Th>
              <Table.Th>Due by</Table.Th>
              <Table.Th>Task</Table.Th>
              <Table.Th>Hours</Table.Th>
              <Table.Th>Done</Table.Th>
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {inOrderOfDays(asTrips(plan.tasks.tasks), dayOf).map((task) => (
              <TaskRow key={task.id} task={task} day={dayOf(task)} today={plan.today} />
            ))}
          </Table.Tbody>
        </Table>
      </WideTable>
    </>
  );
}

function TaskRow({ task, day, today }: { task: Task; day: TaskDay; today: PlainDate }) {
  const sayDate = useSayDate();
  const { on, until, dueBy, isWaiting } = day;
  return (
    <Table.Tr className={isWaiting ? 'avoid-break is-waiting' : 'avoid-break'}>
      <Table.Td style={{ whiteSpace: 'nowrap' }}>
        {sayDate(on)}
        {until !== undefined && (
          <>
            <br />
            to {sayDate(until)}
          </>
        )}
      </Table.Td>
      <Table.Td data-label="Due by" style={{ whiteSpace: 'nowrap' }}>
        {isPastItsDay(task, today) ? 'already late' : dueBy < (until ?? on) ? '' : sayDate(dueBy)}
      </Table.Td>
      <Table.Td className="whole-line">
        {task.name}
        {task.needs && <Text size="sm">{task.needs}</Text>}
      </Table.Td>
      <Table.Td style={{ whiteSpace: 'nowrap' }}>{formatHours(task.hours)}</Table.Td>
      <Table.Td>☐</Table.Td>
    </Table.Tr>
  );
}
