import { List, Stack, Text } from '@mantine/core';
import { Link } from 'wouter';
import { inSeries } from '../../../../shared/farm/repeated-jobs.js';
import { goneByInWords, isGoneBy } from '../../../../shared/plan/work/gone-by.js';
import type { LaterMove } from '../../../../shared/plan/work/later-event.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { saidOnce } from '../../../../shared/plan/work/said-once.js';
import { waysOfDay, type ShortDay } from '../../../../shared/plan/work/short-day.js';
import { listed } from '../../../../shared/units/listed.js';
import type { SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import type { Kept } from '../../shell/kept-said.js';
import { Section } from '../../shell/section.js';
import { Ways } from '../../shell/ways.js';
import { MoveLater } from '../../tick/move-later.js';
import { DayJob } from '../../tick/day-job.js';
import { eachHours } from '../../tick/each-hours.js';
import { useKeptJobs } from '../../tick/kept-jobs.js';

/** What does not fit, why, and what would make it fit. */
export function NotFitting({
  plan,
  farm,
  onKept,
}: {
  plan: WorkPlan;
  farm: SavedFarm;
  onKept: (kept: Kept) => void;
}) {
  const sayDate = useSayDate();
  const open = useKeptJobs(plan.jobs).filter((job) => job.pieces.length === 0);
  const unfit = open.filter((job) => !isGoneBy(job));
  const goneBy = open.filter(isGoneBy);
  // Birds that nobody has the hours for are not done on their day all the same.
  const handless = plan.shortDays.flatMap(({ said, keys }) =>
    plan.jobs.flatMap((job) =>
      job.isForWantOfHands && keys.includes(job.key) ? [{ said, job }] : [],
    ),
  );
  const short = plan.shortDays.filter(({ keys }) =>
    handless.every(({ job }) => !keys.includes(job.key)),
  );
  const late = plan.jobs.filter((job) => 0 < job.lateDays);
  // What is late and in part is told once.
  const part = plan.jobs.filter((job) => 0 < job.lostHours && job.lateDays === 0);
  const ways = saidOnce([...late, ...part, ...unfit]);
  const waysOf = ({ key }: { key: string }): readonly string[] => ways.get(key) ?? [];
  const isAllIn = [unfit, part, short, late, handless].every((list) => list.length === 0);
  return (
    <Section
      title={
        isAllIn
          ? plan.careGaps.length + goneBy.length === 0
            ? 'Time for everything'
            : 'Time for the rest'
          : 'No time for these'
      }
    >
      {isAllIn && (
        <Text>
          {plan.jobs.length === 0
            ? 'There is no work in sight.'
            : `There are hours and days for all of the work${goneBy.length === 0 ? '' : ' whose days are not over'}.`}
        </Text>
      )}
      {handless.map(({ said, job }) => (
        <Text key={job.key} mb="sm">
          <b>Processing</b>
          {job.belongsTo && ` · ${job.belongsTo.name}`}: {said} {job.name}
          {job.pieces[0] && `, planned for ${sayDate(job.pieces[0].date)}`}.
        </Text>
      ))}
      {0 < late.length && (
        <>
          <Text>Done late:</Text>
          <List mb="sm" spacing="sm">
            {inSeries(late).map(({ next: job, later, often }) => (
              <List.Item key={job.key}>
                <b>{job.name}</b>
                {job.belongsTo && ` · ${job.belongsTo.name}`}
                {often && `, ${often}, ${1 + later.length} times late`}: planned for{' '}
                {sayDate(job.pieces.at(-1)!.date)}, {job.lateDays}{' '}
                {job.lateDays === 1 ? 'day' : 'days'} late. {job.whyPart} {job.why}
                {job.ifLate && ` If late: ${job.ifLate}.`}
                {0 < waysOf(job).length && ' To be in time:'}
                <Ways ways={waysOf(job)} />
              </List.Item>
            ))}
          </List>
        </>
      )}
      {0 < part.length && (
        <>
          <Text>Done in part:</Text>
          <List mb="sm" spacing="sm">
            {inSeries(part).map(({ next: job, later, often }) => (
              <List.Item key={job.key}>
                <b>{job.name}</b>
                {job.belongsTo && ` · ${job.belongsTo.name}`}
                {often && `, ${often}, ${1 + later.length} times in part`}: {job.whyPart}
                {0 < waysOf(job).length && ' Ways to make room:'}
                <Ways ways={waysOf(job)} />
              </List.Item>
            ))}
          </List>
        </>
      )}
      {0 < short.length && (
        <>
          <Text>Done on its day all the same, because animals, or their meat, depend on it:</Text>
          <List mb="sm" spacing="sm">
            {short.map((day) => (
              <List.Item key={day.date}>
                {0 < day.of.length && `${listed(day.of)}: `}
                <Ways ways={waysOfDay(day, plan.jobs)} />
                {laterOf(day, plan).map((later) => (
                  <div key={`${later.ofId} ${later.to}`}>
                    <MoveLater {...{ farm, later, onKept }} />
                  </div>
                ))}
              </List.Item>
            ))}
          </List>
        </>
      )}
      <Stack gap="sm">
        {inSeries(unfit).map(({ next: job, later, often }) => (
          <div key={job.key}>
            <Text fw={600}>
              {job.name}
              {job.belongsTo && ` · ${job.belongsTo.name}`}
              {often && `, ${often}: ${1 + later.length} times`}
            </Text>
            <Text>
              {eachHours(job.hours, job.peopleNeeded)}, due by {sayDate(job.latest)}. {job.why}
            </Text>
            {0 < waysOf(job).length && (
              <>
                <Text>Ways to make room:</Text>
                <Ways ways={waysOf(job)} />
              </>
            )}
            {waysOf(job).length === 0 && 0 < job.waysToFit.length && (
              <Text>What is said above would make room for it too.</Text>
            )}
            {job.later && <MoveLater key={job.later.to} {...{ farm, onKept }} later={job.later} />}
            <DayJob
              work={{ ...job, of: job.belongsTo?.name, due: job.latest }}
              units={farm.units}
              today={plan.today}
            />
          </div>
        ))}
      </Stack>
      {0 < goneBy.length && (
        <Text size="sm" mt="sm">
          Their last day is over, and nobody said whether they were done: {goneByInWords(goneBy)}.{' '}
          <Link href={`/farm/${farm.id}/today`}>Today asks it</Link>.
        </Text>
      )}
    </Section>
  );
}

/** Later days of what is to come that have the hours which a day lacks, each once. */
function laterOf({ keys }: ShortDay, { jobs }: WorkPlan): LaterMove[] {
  const found = jobs.flatMap(({ key, later }) => (later && keys.includes(key) ? [later] : []));
  return [...new Map(found.map((later) => [`${later.ofId} ${later.to}`, later])).values()];
}
