import { Link } from 'wouter';
import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { TickedToday } from '../../../../shared/plan/today/today.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { listed } from '../../../../shared/units/listed.js';
import type { SavedFarm } from '../../api/queries.js';
import { useGroundSaid, useLook } from '../../api/mark-queries.js';
import { Num } from '../../explain/number.js';
import { useSayDate } from '../../explain/say-date.js';
import { Failure } from '../../shell/states.js';

interface HeadProps {
  /** `on` is the day it is, which may be later than the day that was read. */
  readonly day: TickedToday & { readonly on: PlainDate };
  readonly farm: SavedFarm;
}

/** The date, the weather of the day and night, the rain to come, and the ground. */
export function TodayHead({ day, farm }: HeadProps) {
  const sayDate = useSayDate();
  // Read before a program of today knew of it, a day in the pocket has none.
  const { weather, date, away = [] } = day;
  const { rain, forecastTo } = weather;
  return (
    <header className="today-head">
      <h1>{formatLongDate(date, farm)}</h1>
      {0 < away.length && (
        <p>
          {listed(
            away.map(
              ({ name, to, isIll = false }) =>
                `${name} is ${isIll ? 'ill' : 'away'} ${to === date ? 'today' : `until ${sayDate(to)}`}`,
            ),
          )}
        </p>
      )}
      <p className="today-weather">
        <Num of={weather.tonight} /> tonight · <Num of={weather.high} /> today
        {rain ? (
          <>
            {' '}
            · rain {sayDate(rain.on)}, <Num of={rain.amount} />
          </>
        ) : (
          forecastTo && ` · dry until ${sayDate(forecastTo)}`
        )}
        {!weather.isForecast && (
          <>
            {' '}
            · <Link href={`/farm/${farm.id}/work`}>usual, no forecast</Link>
          </>
        )}
      </p>
      <Ground day={day} farm={farm} />
    </header>
  );
}

/** The ground by the reckoning, and one touch to say what it really is. */
function Ground({ day: { ground, on: date }, farm }: HeadProps) {
  const sayDate = useSayDate();
  const look = useLook(farm.id);
  // What was pressed is seen at once; the plan of the work follows.
  const said = useGroundSaid(farm.id);
  const found = said ? said.isWorkable : ground.found;
  const isWorkable = found ?? ground.isWorkable;
  const words = isWorkable
    ? 'dry enough'
    : found === undefined
      ? String(ground.now.value)
      : 'too wet';
  const isTold = found !== undefined;
  // Short, so that it stands beside what it answers on a phone.
  const otherwise = isWorkable ? 'Too wet' : words === 'too wet' ? 'Dry enough' : 'Can be dug';
  const tell = (answer?: boolean): void =>
    look.mutate({ date, ...(answer === undefined ? {} : { isWorkable: answer }) });
  return (
    <div className="today-ground">
      <p>
        Ground <Num of={ground.now} said={words} />
        {isTold && ', as you found it'}
        {!isTold && ground.changesOn && ` until ${sayDate(ground.changesOn)}`}
      </p>
      {!isTold ? (
        <button
          type="button"
          className="today-button"
          aria-label={`The ground: ${otherwise.toLowerCase()}`}
          onClick={() => tell(!isWorkable)}
        >
          {otherwise}
        </button>
      ) : (
        <button type="button" className="today-button" onClick={() => tell()}>
          Undo
        </button>
      )}
      <Failure error={look.error} />
    </div>
  );
}
