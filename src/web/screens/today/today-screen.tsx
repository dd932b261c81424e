import { lazy, Suspense, useState, type MouseEvent } from 'react';
import { Link } from 'wouter';
import type { Attention } from '../../../../shared/plan/today/looked-at.js';
import { firstOfAll, hoursLeft } from '../../../../shared/plan/today/left-today.js';
import { formatHours } from '../../../../shared/units/format.js';
import type { SavedFarm } from '../../api/queries.js';
import { useReadAhead } from '../../api/read-ahead.js';
import { onDayItIs, useTicks, useToday } from '../../api/today-queries.js';
import { Num } from '../../explain/number.js';
import { Failure, useAll } from '../../shell/states.js';
import { AnimalList } from './animal-list.js';
import { TodayAttention, TodayDates } from './today-ahead.js';
import { TodayChores } from './today-chores.js';
import { TodayHead } from './today-head.js';
import { TodayJobs } from './today-jobs.js';
import { KeptSaid, type Kept } from '../../shell/kept-said.js';
import { THE_PLACE, useTelling } from '../../tell/use-telling.js';
import { NoticeChoice } from '../../notices/notice-choice.js';
import './today.css';

const MishapDialog = lazy(() => import('../../mishap/mishap-dialog.js'));

/** The day it is: the page that a farm opens on. */
export default function TodayScreen({ farm }: { farm: SavedFarm }) {
  const today = useToday(farm.id);
  const all = useAll(today);
  useReadAhead(farm, today.isSuccess && !today.isFetching);
  if ('waiting' in all) return all.waiting;
  return <TodayPage day={onDayItIs(all.data[0], farm)} farm={farm} />;
}

function TodayPage({ day, farm }: { day: ReturnType<typeof onDayItIs>; farm: SavedFarm }) {
  const { animals, keyDates } = day;
  const isNow = ({ isAlarm, level }: Attention): boolean => isAlarm === true && level === 'stop';
  const now = day.attention.filter(isNow);
  const attention = day.attention.filter((each) => !isNow(each));
  const telling = useTelling(farm, day.on, animals);
  const { ask, saidOf, dialog } = telling;
  const [isWrong, setWrong] = useState(false);
  const [kept, setKept] = useState<Kept>();
  const [touched, setTouched] = useState<Kept>();
  return (
    <div className="today">
      <a className="shell-skip" href="#today-do" onClick={toWork}>
        To what to do
      </a>
      <TodayHead day={day} farm={farm} />
      {0 < now.length && (
        <section aria-labelledby="today-now">
          <div className="today-part">
            <h2 id="today-now">Look at now</h2>
          </div>
          <TodayAttention
            farm={farm}
            attention={now}
            today={day.date}
            telling={telling}
            onKept={setTouched}
            isNow
          />
        </section>
      )}
      <section className="today-animals" aria-labelledby="today-animals">
        <div className="today-part">
          <h2 id="today-animals">Animals</h2>
          <button
            type="button"
            className="today-button"
            aria-label="Rain, shopping, note: tell what happened to the place"
            onClick={() => ask()}
          >
            Rain, shopping, note
          </button>
        </div>
        {saidOf(THE_PLACE)}
        {animals.length === 0 ? (
          <NoAnimals farmId={farm.id} />
        ) : (
          <AnimalList
            farmId={farm.id}
            animals={animals}
            today={day.on}
            weather={day.weather}
            ask={ask}
            saidOf={saidOf}
          />
        )}
        {0 < animals.length && (
          <p className="today-foot">
            <Link href={`/farm/${farm.id}/record`}>All that was told</Link>
            <button type="button" className="today-button" onClick={() => setWrong(true)}>
              Something went wrong
            </button>
          </p>
        )}
        {kept && <KeptSaid key={kept.words} of={kept} onUndone={() => setKept(undefined)} />}
        {dialog}
        {isWrong && (
          <Suspense>
            <MishapDialog
              farm={farm}
              animals={animals}
              lowC={Number(day.weather.tonight.value)}
              onTell={(line, first) => {
                setWrong(false);
                ask(line, first);
              }}
              onDone={(now) => {
                setWrong(false);
                setKept(now);
              }}
              onClose={() => setWrong(false)}
            />
          </Suspense>
        )}
        {0 < day.unplanned.length && (
          <p className="today-stop">
            {day.unplanned.join(', ')}: no plan can be made as it stands. Open it to see what is
            wrong.
          </p>
        )}
      </section>
      <div className="today-columns">
        <TodayWork day={day} farm={farm} />
        <div>
          {(0 < attention.length || touched) && (
            <section aria-labelledby="today-attention">
              <div className="today-part">
                <h2 id="today-attention">Look at</h2>
              </div>
              {touched && (
                <KeptSaid key={touched.words} of={touched} onUndone={() => setTouched(undefined)} />
              )}
              <TodayAttention
                farm={farm}
                attention={attention}
                today={day.date}
                telling={telling}
                onKept={setTouched}
              />
            </section>
          )}
          {0 < keyDates.length && (
            <section aria-labelledby="today-dates">
              <div className="today-part">
                <h2 id="today-dates">Coming up</h2>
              </div>
              <TodayDates farmId={farm.id} dates={keyDates} />
            </section>
          )}
          <NoticeChoice farmId={farm.id} />
        </div>
      </div>
    </div>
  );
}

/** Past the numbers of all animals, each of which can be opened. */
const toWork = (event: MouseEvent): void => {
  event.preventDefault();
  document.getElementById('today-do')?.focus();
};

/** What to do, and the round. A tick draws this part anew, not the page. */
function TodayWork({ day, farm }: { day: ReturnType<typeof onDayItIs>; farm: SavedFarm }) {
  const { said, tick, error } = useTicks(farm.id);
  const { chores, jobs, bought } = day;
  const first = firstOfAll(day);
  return (
    <section aria-labelledby="today-do">
      <div className="today-part">
        <h2 id="today-do" tabIndex={-1}>
          Do today
        </h2>
        <span>
          {formatHours(hoursLeft(day))} left of <Num of={day.hours.used} />, you have{' '}
          <Num of={day.hours.had} />
        </span>
      </div>
      {first !== undefined && <p className="today-words">{first}</p>}
      <Failure error={error} />
      {!day.hasPeople && (
        <p>
          Who does the work? <Link href={`/farm/${farm.id}/place`}>Add people</Link> with their
          hours.
        </p>
      )}
      <TodayJobs
        key={day.on}
        {...{ jobs, bought, farm, said, tick }}
        date={day.on}
        names={day.names}
      />
      <div className="today-none">
        {jobs.length === 0 && (
          <p>{0 < chores.length ? 'Only the round today.' : 'Nothing is planned for today.'}</p>
        )}
        <Link className="today-button" href={`/farm/${farm.id}/work/own`}>
          Add a job
        </Link>
      </div>
      {0 < chores.length && (
        <>
          <h3>The round</h3>
          <TodayChores {...{ chores, said, tick }} farmId={farm.id} on={day.on} names={day.names} />
        </>
      )}
    </section>
  );
}

/** An empty farm says the next step. */
const NoAnimals = ({ farmId }: { farmId: string }) => (
  <div className="today-none">
    <p>No birds or cattle now.</p>
    <Link className="today-button" href={`/farm/${farmId}/batches/new`}>
      Plan a batch of birds
    </Link>
    <Link className="today-button" href={`/farm/${farmId}/pasture/land`}>
      Add a herd
    </Link>
  </div>
);
