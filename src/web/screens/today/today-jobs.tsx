import { lazy, Suspense, useState } from 'react';
import { addDays, type PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { TickedToday } from '../../../../shared/plan/today/today.js';
import type { TodayJob } from '../../../../shared/plan/today/today-work.js';
import { formatHours } from '../../../../shared/units/format.js';
import type { UnitSystem } from '../../../../shared/units/unit.js';
import type { SavedFarm } from '../../api/queries.js';
import type { Tick } from '../../api/today-queries.js';
import type { SaidOrBought } from '../../api/mark-queries.js';
import type { Said } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { whoUses } from '../../kept/whose-phone.js';
import { Working } from '../../shell/states.js';
import { HoursTook } from '../../tick/hours-took.js';
import { DoneBy } from './done-by.js';
import { useInPlace } from './in-place.js';
import { OverJobs } from './over-jobs.js';
import { TickButton, type TickState } from './tick-button.js';

/** Asked for once somebody opens a piece of work. */
const ChangeWork = lazy(() =>
  import('../../tick/change-work.js').then((each) => ({ default: each.ChangeWork })),
);

/** Asked for on a day on which somebody found the ground too wet. */
const WaitForDryGround = lazy(() =>
  import('./wet-ground.js').then((each) => ({ default: each.WaitForDryGround })),
);

/** Asked for once a trip to buy was ticked off. */
const BoughtWith = lazy(() => import('../../tell/bought-with.js'));

/** Of work that has no day those that matter most; after weeks away it would be longer than the page. */
const SHOWN_OF_LATE = 3;

interface Ticks {
  readonly said: (key: string) => boolean | undefined;
  readonly tick: (one: Tick) => void;
}

/** Work of today: who, how long, why now; one touch for done, and undo where the touch was. */
export function TodayJobs({
  jobs,
  date,
  farm,
  names,
  bought,
  ...ticks
}: Ticks & {
  jobs: readonly TodayJob[];
  bought: TickedToday['bought'];
  date: PlainDate;
  farm: SavedFarm;
  names: readonly string[];
}) {
  const [struck, setStruck] = useState<readonly TodayJob[]>([]);
  const rows = useInPlace(
    [
      ...jobs.filter((job) => !isOver(job)),
      ...struck.filter(({ key }) => !jobs.some((j) => j.key === key)),
    ],
    hasNoDay,
  );
  const [isWhole, setWhole] = useState(false);
  const over = jobs.filter(isOver);
  const folded = isWhole ? [] : rows.filter(hasNoDay).slice(SHOWN_OF_LATE);
  const shown = rows.filter((job) => !folded.includes(job));
  const rowOf = (job: TodayJob) => (
    <JobRow
      key={job.key}
      {...{ job, date, farm, names, ...ticks }}
      bought={bought.filter(({ about }) => about === job.key)}
      isStruck={struck.some(({ key }) => key === job.key)}
      onStruck={(isStruck) =>
        setStruck((before) => [
          ...before.filter(({ key }) => key !== job.key),
          ...(isStruck ? [job] : []),
        ])
      }
    />
  );
  return (
    <>
      {0 < shown.length && <ul className="today-rows">{shown.map(rowOf)}</ul>}
      {0 < folded.length && (
        <button type="button" className="today-button" onClick={() => setWhole(true)}>
          {folded.length} more that there is no time for
        </button>
      )}
      <OverJobs jobs={over} tick={ticks.tick}>
        <ul className="today-rows">{over.map(rowOf)}</ul>
      </OverJobs>
    </>
  );
}

const isOver = ({ overSince }: TodayJob): boolean => overSince !== undefined;
const hasNoDay = ({ hasNoHours = false }: TodayJob): boolean => hasNoHours;

function JobRow({
  job,
  date,
  farm,
  names,
  bought,
  said,
  tick,
  isStruck,
  onStruck,
}: Ticks & {
  job: TodayJob;
  date: PlainDate;
  farm: SavedFarm;
  names: readonly string[];
  bought: TickedToday['bought'];
  isStruck: boolean;
  onStruck: (isStruck: boolean) => void;
}) {
  const [isOpen, setOpen] = useState(false);
  const [doneBy, setBy] = useState<string>();
  const [isAll, setAll] = useState(false);
  const { units } = farm;
  const { key, name, buys, hoursInAll, hoursDone = 0, hours, state } = job;
  const isDone = isStruck || (said(key) ?? state !== 'open');
  const before = 0 < hoursDone ? { hoursDone } : {};
  const isPart = hoursInAll !== undefined;
  /** The day was read since its part of today was ticked. */
  const isRead = state === 'later';
  const isPartDone = !isAll && (isRead ? job.hoursDone !== undefined : isPart);
  // Who holds a phone that is somebody's did it, else the one it was laid for.
  const by = doneBy ?? whoUses(farm.id) ?? job.doneBy;
  const done = { key, doneOn: date, ...(by === undefined ? {} : { doneBy: by }), ...before };
  const restLater = { key, notBefore: addDays(date, 1) };
  const tell = (told: Said): void => tick({ is: 'job', key, name, isDone: true, told, buys });
  const tellAll = (before: number): void => {
    setAll(true);
    tell({ ...done, ...(0 < before ? { hoursDone: before } : {}) });
  };
  const change = ({ buys: _bought, ...told }: SaidOrBought): void => {
    if (told.doneOn !== undefined) {
      setAll(true);
      return tell({ ...told, ...before });
    }
    if (told.struckOut) onStruck(true);
    tick({ is: 'change', key, name, told });
  };
  return (
    <li className={isDone ? 'today-row today-row-done' : 'today-row'}>
      <TickButton
        name={name}
        state={stateOf(job, isDone, isStruck)}
        onTick={() => tell(isPart ? { ...restLater, hoursDone: hoursDone + hours } : done)}
        onUndo={() => {
          onStruck(false);
          setAll(false);
          tick({ is: 'job', key, name, isDone: false, told: { key, undo: true } });
        }}
      />
      <div>
        <p className="today-job">
          {name}
          {job.of && <span> · {job.of}</span>}
        </p>
        {isStruck ? (
          <p className="today-words">Struck out</p>
        ) : isDone ? (
          <>
            <DoneWords job={job} units={units} onHours={(took) => tell({ key, hours: took })} />
            {0 < bought.length && (
              <Suspense fallback={null}>
                <BoughtWith farm={farm} today={date} facts={bought} />
              </Suspense>
            )}
            {isPartDone && (
              // Two days of one piece of work are often done in one go: it is asked, not guessed.
              <button
                type="button"
                className="today-button"
                aria-label={`All of it is done: ${name}`}
                onClick={() => tellAll(isRead ? hoursDone : hoursDone + hours)}
              >
                All of it is done
              </button>
            )}
            {job.state !== 'later' && !isPart && (
              <DoneBy
                {...{ name, names, by }}
                onChange={(other) => {
                  setBy(other);
                  tell({ key, doneBy: other });
                }}
              />
            )}
          </>
        ) : (
          <details className="today-why" onToggle={(e) => setOpen(e.currentTarget.open)}>
            <summary>
              <JobWords job={job} />
            </summary>
            {job.why && job.why.replace(/\.$/, '') !== job.dueWords && <p>{job.why}</p>}
            {job.ifLate && <p>If not: {job.ifLate}.</p>}
            {isPart && (
              <button type="button" className="today-button" onClick={() => tellAll(hoursDone)}>
                All of it is done
              </button>
            )}
            {isOpen && (
              <Suspense fallback={<Working label="Loading" />}>
                <ChangeWork
                  work={{
                    key,
                    name,
                    of: job.of,
                    ifLate: job.ifLate,
                    latest: job.latest,
                    others: job.others,
                    hours: hoursInAll ?? hours,
                    ...before,
                  }}
                  units={units}
                  today={date}
                  say={change}
                />
              </Suspense>
            )}
          </details>
        )}
        {job.isOnWetGround && !isDone && (
          <Suspense fallback={null}>
            <WaitForDryGround of={job} farm={farm} />
          </Suspense>
        )}
      </div>
    </li>
  );
}

/** Work that was put off is not done: only of a part that was, the rest comes later. */
function stateOf({ state, hoursDone }: TodayJob, isDone: boolean, isStruck: boolean): TickState {
  if (isStruck) return 'struck-out';
  if (!isDone) return 'open';
  return state === 'later' && hoursDone === undefined ? 'put-off' : 'done';
}

function JobWords({ job }: { job: TodayJob }) {
  const { people, hours, hoursInAll, dueWords, hasNoHours, unfitToday, shortHours, overSince } =
    job;
  const sayDate = useSayDate();
  return (
    <span>
      {0 < people.length && `${people.join(' + ')} · `}
      <b>{formatHours(hours)}</b>
      {hoursInAll !== undefined && ` of ${formatHours(hoursInAll)}`}
      {overSince === undefined &&
        hasNoHours &&
        (unfitToday ? ` · not today: ${unfitToday}` : ' · no time for it')}
      {shortHours !== undefined && ` · ${formatHours(shortHours)} more than anyone has`}
      {overSince !== undefined
        ? ` · it was due by ${sayDate(overSince)}`
        : dueWords && ` · ${dueWords}`}
    </span>
  );
}

/** What became of it; hours that it took are asked after. */
function DoneWords({
  job: { name, hours, hoursDone, state, restOn },
  units,
  onHours,
}: {
  job: TodayJob;
  units: UnitSystem;
  onHours: (hours: number) => void;
}) {
  const sayDate = useSayDate();
  if (state === 'later') {
    const when = restOn ? sayDate(restOn) : 'another day';
    return (
      <p className="today-words">
        {hoursDone === undefined ? `Put off to ${when}` : `The rest ${when}`}
      </p>
    );
  }
  return <HoursTook className="today-took" {...{ name, hours, units, onHours }} />;
}
