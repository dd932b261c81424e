import './work.css';
import { useMediaQuery } from '@mantine/hooks';
import { Card, SimpleGrid, Stack, Text, Title } from '@mantine/core';
import { addDays, type PlainDate } from '../../../../shared/calendar/plain-date.js';
import { groundOn, groundWord } from '../../../../shared/plan/work/ground-quantities.js';
import type {
  PlannedChoreDay,
  PlannedJob,
  WorkPlan,
} from '../../../../shared/plan/work/planned-work.js';
import { choreHoursSaid, roundsSaid } from '../../../../shared/plan/work/rounds-said.js';
import { formatHours } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { DayWork } from './day-work.js';
import { useKeptJobs } from '../../tick/kept-jobs.js';
import { GroundLookButtons } from './ground-check.js';
import { personName } from './person-name.js';

const SHOWN_DAYS = 4;
/** On a phone what comes after these is one touch deeper. */
const NEXT_DAYS = 2;

/** What to do on each of the next days: who, how long, why then, and what if not. */
export function DayCards({ plan, farm }: { plan: WorkPlan; farm: SavedFarm }) {
  const sayDate = useSayDate();
  const kept = useKeptJobs(plan.jobs);
  const isWide = useMediaQuery('(min-width: 48em)', true, { getInitialValueInEffect: false });
  const days = Array.from({ length: SHOWN_DAYS }, (_, k) => addDays(plan.today, k));
  const workOn = (date: PlainDate, k: number) => ({
    jobs: kept.filter((job) => job.pieces.some((piece) => piece.date === date)),
    chores: plan.chores[k] ?? [],
    unfit: kept.filter(({ pieces, latest }) => pieces.length === 0 && latest === date),
  });
  const isFree = days.every((date, k) => 0 === countOf(workOn(date, k)));
  const cardOf = (date: PlainDate, k: number) => {
    const { jobs, chores, unfit } = workOn(date, k);
    return (
      <Card key={date} withBorder padding="sm" component="section" aria-label={sayDate(date)}>
        <Title order={3} size="h4">
          {k === 0 ? `Today, ${sayDate(date)}` : sayDate(date)}
        </Title>
        <Text size="sm" c="dimmed">
          {dayWeather(plan, k)}
          <Num of={groundOn(plan, k)} said={groundWords(plan, k)} />
        </Text>
        {k === 0 && <GroundLookButtons plan={plan} farm={farm} />}
        {!isFree && countOf({ jobs, chores, unfit }) === 0 && (
          <Text mt="xs">Nothing has to be done.</Text>
        )}
        <Round plan={plan} chores={chores} />
        {[...unfit, ...jobs].map((job) => (
          <DayWork key={job.key} plan={plan} farm={farm} job={job} date={date} />
        ))}
      </Card>
    );
  };
  return (
    <Stack>
      {isFree && <Text>Nothing has to be done through {sayDate(days.at(-1)!)}.</Text>}
      <SimpleGrid cols={{ base: 1, sm: 2 }}>
        {days.slice(0, isWide ? SHOWN_DAYS : NEXT_DAYS).map(cardOf)}
      </SimpleGrid>
      {!isWide &&
        days.slice(NEXT_DAYS).map((date, k) => (
          <details key={date}>
            <summary>
              {sayDate(date)}: {piecesSaid(workOn(date, NEXT_DAYS + k))}
            </summary>
            {cardOf(date, NEXT_DAYS + k)}
          </details>
        ))}
    </Stack>
  );
}

const countOf = (work: Readonly<Record<string, readonly unknown[]>>): number =>
  Object.values(work).reduce((count, some) => count + some.length, 0);

/** What a day that is folded holds: its work by name, beside the round. */
function piecesSaid({
  jobs,
  unfit,
}: {
  jobs: readonly PlannedJob[];
  unfit: readonly PlannedJob[];
}): string {
  const all = [...unfit, ...jobs];
  return all.length === 0 ? 'the round' : all.map(({ name }) => name).join('; ');
}

/** The chores of a day in one line; each of them is one touch deeper. */
function Round({ plan, chores }: { plan: WorkPlan; chores: readonly PlannedChoreDay[] }) {
  if (chores.length === 0) return null;
  const sum = (of: 'hours' | 'shortHours'): number =>
    chores.reduce((hours, chore) => hours + chore[of], 0);
  const shortHours = sum('shortHours');
  return (
    <details className="day-round">
      <summary>
        <b>The round</b> · {formatHours(sum('hours'))}
        {0 < shortHours && `, ${formatHours(shortHours)} more than anyone has`}
      </summary>
      <ul>
        {chores.map((chore) => (
          <li key={chore.key}>
            {chore.name}
            {chore.belongsTo && ` (${chore.belongsTo})`}: {choreHoursSaid(chore)}
            {chore.personId && `, ${personName(plan, chore.personId)}`}
            {chore.rounds && `; ${roundsSaid(chore.rounds)}`}
            {0 < chore.shortHours && `, ${formatHours(chore.shortHours)} more than anyone has`}
          </li>
        ))}
      </ul>
    </details>
  );
}

function dayWeather({ weather }: WorkPlan, day: number): string {
  const isKnown = weather.isForecast[day] === 1;
  const rain = weather.rainMm[day]!;
  return isKnown ? `Forecast: ${0 < rain ? 'rain' : 'dry'}, ` : 'Usual weather, ';
}

const groundWords = (plan: WorkPlan, day: number): string => `ground ${groundWord(plan, day)}`;
