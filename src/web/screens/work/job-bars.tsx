import './work.css';
import { Button, Table, Text } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import { daysBetween } from '../../../../shared/calendar/plain-date.js';
import type { KeyDate } from '../../../../shared/plan/tasks/event.js';
import { isGoneBy } from '../../../../shared/plan/work/gone-by.js';
import { isOfGarden } from '../../../../shared/plan/work/of-place.js';
import { inSeries, type Series } from '../../../../shared/farm/repeated-jobs.js';
import type { PlannedJob, WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { jobQuantities } from '../../../../shared/plan/work/work-quantities.js';
import { Num } from '../../explain/number.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { WideTable } from '../../shell/wide-table.js';
import type { SavedFarm } from '../../api/queries.js';
import { DayJob } from '../../tick/day-job.js';
import { eachHours } from '../../tick/each-hours.js';
import { useKeptJobs } from '../../tick/kept-jobs.js';
import { saySpare } from '../../tick/say-spare.js';
import { personName } from './person-name.js';

/** So many are read at a glance; the rest are asked for. */
const SHOWN = 10;

/** Every piece of work: the days it may be done, the days it is done, its days to spare; and the key dates it is tied to. */
export function JobBars({ plan, farm }: { plan: WorkPlan; farm: SavedFarm }) {
  const jobs = useKeptJobs(plan.jobs);
  const sayDate = useSayDate();
  const [isWhole, setWhole] = useState(false);
  // Dates of garden and hives are for households that have work of their own there.
  const hasOwn = jobs.some(({ key }) => key.startsWith('own/'));
  const events = plan.events.filter((event) => hasOwn || !isOfGarden(event));
  const rows = rowsOf({ jobs, events });
  const shown = rows.slice(0, isWhole ? undefined : SHOWN);
  const days = daysBetween(plan.today, lastDayOf(shown, plan.today)) + 1;
  if (plan.jobs.length === 0) return <Text>There is no work in sight.</Text>;
  return (
    <>
      <WideTable label="Work plan">
        <Table className="stacks">
          <Table.Thead>
            <Table.Tr>
              <Table.Th>Work</Table.Th>
              <Table.Th>Planned</Table.Th>
              <Table.Th>Who</Table.Th>
              <Table.Th>Due by</Table.Th>
              <Table.Th>Days to spare</Table.Th>
              <Table.Th aria-hidden />
            </Table.Tr>
          </Table.Thead>
          <Table.Tbody>
            {shown.map((row) =>
              'date' in row ? (
                <EventRow key={row.id} event={row} today={plan.today} days={days} />
              ) : (
                <SeriesRows key={row.next.key} series={row} plan={plan} farm={farm} days={days} />
              ),
            )}
          </Table.Tbody>
        </Table>
      </WideTable>
      {!isWhole && SHOWN < rows.length && (
        <Button variant="default" mt="xs" className="no-print" onClick={() => setWhole(true)}>
          All {rows.length} to {sayDate(plan.to)}
        </Button>
      )}
    </>
  );
}

/** Work and what it hangs on, by the first day of each; what comes again is one line. */
function rowsOf({
  jobs,
  events,
}: Pick<WorkPlan, 'jobs' | 'events'>): (Series<PlannedJob> | KeyDate)[] {
  const onDay = (job: PlannedJob): string => job.pieces[0]?.date ?? job.latest;
  const series = inSeries([...jobs].sort((a, b) => onDay(a).localeCompare(onDay(b))));
  const dayOf = (row: Series<PlannedJob> | KeyDate): string =>
    'date' in row ? row.date : onDay(row.next);
  return [...events, ...series].sort((a, b) => dayOf(a).localeCompare(dayOf(b)));
}

/** Bars reach to the last day of what stands there, so that they can be read. */
const lastDayOf = (rows: readonly (Series<PlannedJob> | KeyDate)[], today: string): string =>
  rows
    .map((row) => ('date' in row ? row.date : row.next.latest))
    .reduce((last, date) => (last < date ? date : last), today);

/** The next time of work that comes again, the later ones behind a touch. */
function SeriesRows({
  series: { next, later, often },
  ...around
}: { series: Series<PlannedJob> } & Omit<JobRowProps, 'job'>) {
  const [isOpen, setOpen] = useState(false);
  return (
    <>
      <JobRow job={next} {...around}>
        {often && (
          <Button
            variant="subtle"
            className="no-print"
            aria-expanded={isOpen}
            onClick={() => setOpen(!isOpen)}
          >
            {often}, {isOpen ? 'fold up' : `${later.length} more`}
          </Button>
        )}
      </JobRow>
      {isOpen && later.map((job) => <JobRow key={job.key} job={job} {...around} />)}
    </>
  );
}

function EventRow({ event, today, days }: { event: KeyDate; today: string; days: number }) {
  const sayDate = useSayDate();
  const left = `${(100 * daysBetween(today, event.date)) / days}%`;
  return (
    <Table.Tr className="event-row">
      <Table.Th scope="row">{event.name}</Table.Th>
      <Table.Td className="no-wrap">{sayDate(event.date)}</Table.Td>
      <Table.Td />
      <Table.Td />
      <Table.Td />
      <Table.Td aria-hidden className="job-bar-cell">
        <div className="job-bar">
          <div className="job-bar-event" style={{ left }} />
        </div>
      </Table.Td>
    </Table.Tr>
  );
}

interface JobRowProps {
  readonly job: PlannedJob;
  readonly plan: WorkPlan;
  readonly farm: SavedFarm;
  readonly days: number;
  readonly children?: ReactNode;
}

function JobRow({ job, plan, farm, days, children }: JobRowProps) {
  const sayDate = useSayDate();
  const { today } = plan;
  const { latest, spareDays } = jobQuantities(job, plan.basis);
  return (
    <Table.Tr>
      <Table.Th scope="row">
        {job.name}
        {job.belongsTo && <span className="job-of"> {job.belongsTo.name}</span>}
        {children}
      </Table.Th>
      <Table.Td>
        <details>
          <summary>
            {plannedText(job, sayDate)}
            {0 < job.lateDays && `, ${job.lateDays} ${job.lateDays === 1 ? 'day' : 'days'} late`}
          </summary>
          {job.why}
          <DayJob
            work={{
              ...job,
              of: job.belongsTo?.name,
              due: job.latest,
              ...(job.pieces[0] ? { planned: job.pieces[0].date } : {}),
            }}
            units={farm.units}
            today={today}
          />
        </details>
      </Table.Td>
      <Table.Td>
        {whoDoes(plan, job)}{' '}
        <span className="no-wrap">{eachHours(job.hours, job.peopleNeeded)}</span>
      </Table.Td>
      <Table.Td className="no-wrap" data-label="Due by">
        <Num of={latest} />
      </Table.Td>
      <Table.Td className="no-wrap" data-label="To spare">
        {job.alreadyLate ? (
          'already late'
        ) : (
          <Num
            of={spareDays}
            {...(0 < spareDays.value ? { said: saySpare(spareDays.value) } : {})}
          />
        )}
      </Table.Td>
      <Table.Td aria-hidden className="job-bar-cell">
        <Bar job={job} today={today} days={days} />
      </Table.Td>
    </Table.Tr>
  );
}

/** Everybody who takes part, on whichever of its days. */
const whoDoes = (plan: WorkPlan, { pieces }: PlannedJob): string =>
  [...new Set(pieces.flatMap(({ personIds }) => personIds))]
    .map((id) => personName(plan, id))
    .join(' and ');

function plannedText(job: PlannedJob, sayDate: SayDate): string {
  const { pieces } = job;
  if (isGoneBy(job)) return 'its last day is over';
  if (pieces.length === 0) return 'no time';
  const [first, last] = [pieces[0]!.date, pieces.at(-1)!.date];
  return first === last ? sayDate(first) : `${sayDate(first)} to ${sayDate(last)}`;
}

function Bar({ job, today, days }: { job: PlannedJob; today: string; days: number }) {
  const at = (date: string): number =>
    (100 * Math.min(days, Math.max(0, daysBetween(today, date)))) / days;
  const from = at(job.earliest);
  return (
    <div className="job-bar">
      <div
        className="job-bar-window"
        style={{ left: `${from}%`, width: `${Math.max(0.8, at(job.latest) - from)}%` }}
      />
      {[...new Set(job.pieces.map(({ date }) => date))].map((date) => (
        <div key={date} className="job-bar-piece" style={{ left: `${at(date)}%` }} />
      ))}
    </div>
  );
}
