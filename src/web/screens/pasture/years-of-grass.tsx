import { Button, Text } from '@mantine/core';
import { useEffect, useRef, useState } from 'react';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import { GRASS_YEARS } from '../../../../shared/plan/pasture/grass-years.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { Fact, Facts } from '../../explain/number.js';
import type { YearsAnswered, YearsAsked } from './years.worker.js';

/** The season played through many years of weather, when somebody asks for it. */
export function YearsOfGrass({ picture, tables }: YearsAsked) {
  const [found, setFound] = useState<YearsAnswered>();
  const [isWorking, setWorking] = useState(false);
  const worker = useRef<Worker>(undefined);
  useEffect(() => () => worker.current?.terminate(), []);
  // What was played is of the farm as it was then.
  useEffect(() => setFound(undefined), [picture]);
  const play = (of: FarmPicture, by: Tables) => {
    worker.current?.terminate();
    const own = new Worker(new URL('./years.worker.ts', import.meta.url), { type: 'module' });
    worker.current = own;
    setWorking(true);
    own.onmessage = ({ data }: MessageEvent<YearsAnswered>) => {
      setWorking(false);
      setFound(data);
    };
    own.postMessage({ picture: of, tables: by } satisfies YearsAsked);
  };
  return (
    <>
      <Button variant="light" mt="sm" loading={isWorking} onClick={() => play(picture, tables)}>
        Play through twenty years of weather
      </Button>
      {found && 'failed' in found && (
        <Text c="stop" role="alert">
          {found.failed}
        </Text>
      )}
      {found && 'years' in found && (
        <>
          <Facts>
            {found.years.fed.map(({ inTen, kg }) => (
              <Fact key={inTen} of={kg} />
            ))}
            <Fact of={found.years.shortDays} />
            <Fact of={found.years.mown} />
          </Facts>
          <Text size="sm">{GRASS_YEARS}</Text>
        </>
      )}
    </>
  );
}
