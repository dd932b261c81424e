import { Button, Progress } from '@mantine/core';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import {
  useAllowFetch,
  useFetchWeather,
  usePicture,
  useTables,
  useWeather,
  type SavedFarm,
} from '../../api/queries.js';
import { comingWhileAway } from '../../../../shared/plan/today/coming-while-away.js';
import { Failure } from '../../shell/states.js';
import { BetterWeeks } from './better-weeks.js';
import { startedFacts } from './started-facts.js';

/** The plan stands: what it rests on, thirty years of days if they are wanted, and the way in. */
export default function Started({ farm, isOnline }: { farm: SavedFarm; isOnline: boolean }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const picture = usePicture(farm.id).data;
  const tables = useTables().data;
  return (
    <main className="start">
      <h1 ref={heading} tabIndex={-1}>
        Your plan is made
      </h1>
      <p className="start-lead">
        What you have not said is assumed, and marked so. Touch it to change it, whenever you like.
      </p>
      {picture &&
        comingWhileAway(picture).map(({ batchId, says }) => (
          <p key={batchId} className="start-asked">
            {says} <Link href={`/farm/${farm.id}/batches/${batchId}`}>Change the day</Link>
          </p>
        ))}
      <Button component={Link} href={`/farm/${farm.id}/today`} size="md">
        Go to my farm
      </Button>
      {picture && tables && (
        <ul className="start-facts">
          {startedFacts(picture, tables).map(({ name, says, isAssumed, to }) => (
            <li key={`${to} ${name}`}>
              <Link href={`/farm/${farm.id}/${to}`}>
                <b>{name}</b>
                <span>
                  {says} {isAssumed && <span className="assumed">assumed</span>}
                </span>
              </Link>
            </li>
          ))}
        </ul>
      )}
      {picture && tables && <BetterWeeks {...{ farm, picture, tables }} />}
      <section className="start-block" aria-label="Weather">
        <ThirtyYears farm={farm} isOnline={isOnline} />
      </section>
    </main>
  );
}

/** Daily weather in the place of the estimate, from outside only when that is pressed. */
function ThirtyYears({ farm, isOnline }: { farm: SavedFarm; isOnline: boolean }) {
  const allow = useAllowFetch(farm.id);
  const { fetchNow, isFetching, error } = useFetchWeather(farm.id);
  const weather = useWeather(farm.id).data;
  if (weather && 0 < weather.fetchedDays)
    return <p role="status">Now by real days: {weather.label}.</p>;
  const start = async (): Promise<void> => {
    if (!isOnline) await allow.mutateAsync(true);
    await fetchNow(undefined);
  };
  const isBusy = allow.isPending || isFetching;
  return (
    <div className="start-rows">
      <p>
        The climate is an estimate. Thirty years of real days say how likely a cold night or a dry
        week is. The farm’s coordinates go to Open-Meteo for that.
      </p>
      {isBusy ? (
        <div role="status">
          <Progress value={100} animated aria-label="Fetching" />
          <p className="start-small">
            Fetching thirty years of days. Your plan is there meanwhile; go on if you like.
          </p>
        </div>
      ) : (
        <div>
          <Button
            variant="default"
            onClick={() => {
              // What goes wrong is shown below.
              start().catch(() => undefined);
            }}
          >
            Fetch thirty years of days
          </Button>
        </div>
      )}
      <Failure error={error ?? allow.error} />
    </div>
  );
}
