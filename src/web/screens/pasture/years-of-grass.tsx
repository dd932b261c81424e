import { Text } from '@mantine/core';
import { useEffect, useState } from 'react';
import { GRASS_YEARS, type GrassYears } from '../../../../shared/plan/pasture/grass-years.js';
import { Fact, Facts } from '../../explain/number.js';
import type { YearsAnswered, YearsAsked } from './years.worker.js';

/** What was played, or undefined until it is. */
export type Played = YearsAnswered | undefined;

/** The page settles first, and a change that is being typed is done. */
const SETTLES_MS = 1200;

/** The season played through many years of weather, anew for each picture of the farm. */
export function useGrassYears({ picture, tables }: YearsAsked): Played {
  const [found, setFound] = useState<{ of: YearsAsked['picture']; answered: YearsAnswered }>();
  useEffect(() => {
    let worker: Worker | undefined;
    const timer = setTimeout(() => {
      worker = new Worker(new URL('./years.worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<YearsAnswered>) =>
        setFound({ of: picture, answered: data });
      worker.postMessage({ picture, tables } satisfies YearsAsked);
    }, SETTLES_MS);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [picture, tables]);
  // What was played is of the farm as it was then.
  return found?.of === picture ? found.answered : undefined;
}

/** That the years are not played yet, or why they cannot be. */
export function YearsWaiting({ played }: { played: Played }) {
  if (!played)
    return (
      <Text size="sm" role="status">
        Twenty years of weather are being played, to say what is enough in most of them. Until then
        go by the usual weather, which feeds less than most years do.
      </Text>
    );
  if ('failed' in played)
    return (
      <Text c="stop" role="alert">
        {played.failed}
      </Text>
    );
  return null;
}

type ToBuy = Pick<GrassYears, 'balesToBuy' | 'toBuy' | 'byWinter'>;

/** Bales to buy: of each winter, where a plan feeds in two. */
export function BalesToBuy({ of: { balesToBuy, byWinter } }: { of: ToBuy }) {
  if (!byWinter) return <Fact of={balesToBuy} />;
  return (
    <>
      <Fact of={byWinter.balesUntilOut} />
      <Fact of={byWinter.balesNextWinter} />
    </>
  );
}

/** The same by weight. */
export function HayToBuy({ of: { toBuy, byWinter } }: { of: ToBuy }) {
  return (
    <>
      <Fact of={toBuy} />
      <Fact of={byWinter?.untilOut} />
      <Fact of={byWinter?.nextWinter} />
    </>
  );
}

/** Bales to buy so that they are enough in most years, among other facts. */
export function SureBales({ played }: { played: Played }) {
  return played && 'years' in played ? <BalesToBuy of={played.years} /> : null;
}

/** The same by weight. */
export function SureHay({ played }: { played: Played }) {
  return played && 'years' in played ? <HayToBuy of={played.years} /> : null;
}

/** What the years fed by hand and gave. */
export function YearsOfGrass({ played }: { played: Played }) {
  if (!played || 'failed' in played) return null;
  const { years } = played;
  return (
    <>
      <Text fw={600} mt="sm">
        Through {years.years} years of weather
      </Text>
      <Facts>
        {years.fed.map(({ inTen, kg }) => (
          <Fact key={inTen} of={kg} />
        ))}
        <Fact of={years.shortDays} />
        <Fact of={years.mown} />
      </Facts>
      <Text size="sm">{GRASS_YEARS}</Text>
    </>
  );
}
