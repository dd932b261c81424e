import { useState, type ReactNode } from 'react';
import type { TodayJob } from '../../../../shared/plan/today/today-work.js';
import { struckTogether } from '../../../../shared/plan/work/at-risk.js';
import type { Tick } from '../../api/today-queries.js';
import { useSayDate } from '../../explain/say-date.js';

/**
 * Work whose last day is over and that nobody ticked: one question for all of it, below the work of
 * the day, and each by itself once it is opened.
 */
export function OverJobs({
  jobs,
  tick,
  children,
}: {
  jobs: readonly TodayJob[];
  tick: (one: Tick) => void;
  children: ReactNode;
}) {
  const [told, setTold] = useState<{ jobs: readonly TodayJob[]; isDone: boolean }>();
  const open = jobs.filter(({ key }) => !told?.jobs.some((each) => each.key === key));
  const sayDate = useSayDate();
  const strikable = struckTogether(open);
  const tell = (isDone: boolean): void => {
    const of = isDone ? open : strikable;
    setTold({ jobs: of, isDone });
    for (const { key, name, overSince } of of)
      tick(
        isDone
          ? // It was done in its time: it takes no hours of today.
            { is: 'job', key, name, isDone, told: { key, doneOn: overSince! } }
          : { is: 'change', key, name, told: { key, struckOut: true } },
      );
  };
  const takeBack = (): void => {
    for (const { key, name } of told?.jobs ?? [])
      tick({ is: 'job', key, name, isDone: false, told: { key, undo: true } });
    setTold(undefined);
  };
  return (
    <>
      {told && (
        <p className="today-words">
          {told.isDone
            ? `${told.jobs.length} done by the last day`
            : `${told.jobs.length} struck out`}{' '}
          <button type="button" className="today-button" onClick={takeBack}>
            Undo
          </button>
        </p>
      )}
      {0 < open.length && (
        <details className="today-why">
          <summary>
            {open.length === 1
              ? 'An older job was not ticked: was it done?'
              : `${open.length} older jobs were not ticked: were they done?`}
          </summary>
          <button type="button" className="today-button" onClick={() => tell(true)}>
            {open.length === 1
              ? `It was done by ${sayDate(open[0]!.overSince!)}`
              : 'All were done, each by its last day'}
          </button>
          {0 < strikable.length && (
            <button type="button" className="today-button" onClick={() => tell(false)}>
              {open.length === 1
                ? 'No: strike it out'
                : strikable.length === open.length
                  ? 'None: strike them out'
                  : `Strike out the ${strikable.length} that no animals wait for`}
            </button>
          )}
          {children}
        </details>
      )}
    </>
  );
}
