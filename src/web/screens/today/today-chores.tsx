import type { PlainDate } from '../../../../shared/calendar/plain-date.js';
import type { TickedToday } from '../../../../shared/plan/today/today.js';
import { choreHoursSaid, roundsSaid } from '../../../../shared/plan/work/rounds-said.js';
import type { Tick } from '../../api/today-queries.js';
import { whoUses } from '../../kept/whose-phone.js';
import { DoneBy } from './done-by.js';
import { TickButton } from './tick-button.js';

/** The round of the day, a tick each. */
export function TodayChores({
  farmId,
  chores,
  names,
  on,
  said,
  tick,
}: {
  farmId: string;
  chores: TickedToday['chores'];
  names: readonly string[];
  /** The day they are done on. */
  on: PlainDate;
  said: (key: string) => boolean | undefined;
  tick: (one: Tick) => void;
}) {
  return (
    <ul className="today-rows today-round">
      {chores.map(({ key, name, of, hours, person, anyOf, rounds, goes, ...row }) => {
        const isDone = said(key) ?? row.isDone;
        const tickBy = (doneBy: string | undefined, isOther?: true): void =>
          tick({
            is: 'chore',
            key,
            on,
            name,
            isDone: true,
            goes,
            doneBy,
            ...(isOther ? { isOther } : {}),
          });
        return (
          <li key={key} className={isDone ? 'today-row today-row-done' : 'today-row'}>
            <TickButton
              name={of === undefined ? name : `${name}, ${of}`}
              state={isDone ? 'done' : 'open'}
              onTick={() => tickBy(whoUses(farmId) ?? person)}
              onUndo={() => tick({ is: 'chore', key, on, name, isDone: false })}
            />
            <div>
              <p className="today-job">{name}</p>
              <p className="today-words">
                {of !== undefined && `${of} · `}
                {goes && `to ${goes.paddock} · `}
                <b>{choreHoursSaid({ hours, ...row })}</b>
                {(person ?? anyOf) && !isDone && ` · ${person ?? anyOf}`}
                {rounds && ` · ${roundsSaid(rounds)}`}
              </p>
              {isDone && (
                <DoneBy
                  name={of === undefined ? name : `${name}, ${of}`}
                  names={names}
                  by={row.doneBy ?? whoUses(farmId) ?? person}
                  onChange={(other) => tickBy(other, true)}
                />
              )}
            </div>
          </li>
        );
      })}
    </ul>
  );
}
