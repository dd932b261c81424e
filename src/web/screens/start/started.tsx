import { Button, Progress } from '@mantine/core';
import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import {
  useAllowFetch,
  useBatches,
  useFacilities,
  useFetchWeather,
  useWeather,
  type SavedFarm,
} from '../../api/queries.js';
import { formatLongDate } from '../../../../shared/units/dates.js';
import { formatValue } from '../../../../shared/units/format.js';
import { Failure } from '../../shell/states.js';

/** The plan stands: what it rests on, thirty years of days if they are wanted, and the way in. */
export function Started({ farm, isOnline }: { farm: SavedFarm; isOnline: boolean }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const batches = useBatches(farm.id).data ?? [];
  const facilities = useFacilities(farm.id).data ?? [];
  const reader = { ...farm, today: '' };
  const length = (meters: number) => formatValue(meters, 'm', reader);
  return (
    <main className="start">
      <h1 ref={heading} tabIndex={-1}>
        Your plan stands
      </h1>
      <p className="start-lead">
        What you have not said is assumed, and marked so. Touch it to change it, whenever you like.
      </p>
      <dl className="start-facts">
        {batches.map((batch) => (
          <Fact key={batch.id} name={batch.name}>
            {batch.wantedBirds}, arriving {formatLongDate(batch.arrivalDate, farm)}
          </Fact>
        ))}
        {facilities.map((facility) =>
          facility.kind === 'brooder' ? (
            <Fact key={facility.id} name={facility.name}>
              {length(facility.widthM)} by {length(facility.lengthM)}, {facility.heat.count}{' '}
              {facility.heat.kind === 'gas'
                ? 'gas heaters'
                : `lamps of ${facility.heat.wattsEach} W`}{' '}
              <span className="assumed">assumed</span>
            </Fact>
          ) : facility.kind === 'freezer' ? (
            <Fact key={facility.id} name={facility.name}>
              {formatValue(facility.liters, 'freezerL', reader)}{' '}
              <span className="assumed">assumed</span>
            </Fact>
          ) : null,
        )}
      </dl>
      <section className="start-block" aria-label="Weather">
        <ThirtyYears farm={farm} isOnline={isOnline} />
      </section>
      <Button component={Link} href={`/farm/${farm.id}/today`} size="md">
        Go to my farm
      </Button>
    </main>
  );
}

function Fact({ name, children }: { name: string; children: React.ReactNode }) {
  return (
    <>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </>
  );
}

/** Daily weather in the place of the estimate, from outside only when that is pressed. */
function ThirtyYears({ farm, isOnline }: { farm: SavedFarm; isOnline: boolean }) {
  const allow = useAllowFetch(farm.id);
  const fetchDays = useFetchWeather(farm.id);
  const weather = useWeather(farm.id).data;
  if (weather && 0 < weather.fetchedDays)
    return <p role="status">Now by real days: {weather.label}.</p>;
  const start = async (): Promise<void> => {
    if (!isOnline) await allow.mutateAsync(true);
    await fetchDays.mutateAsync(undefined);
  };
  const isBusy = allow.isPending || fetchDays.isPending;
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
            Fetching thirty years of days. Your plan stands meanwhile; go on if you like.
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
      <Failure error={fetchDays.error ?? allow.error} />
    </div>
  );
}
