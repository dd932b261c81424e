import { Checkbox, Stack, Title } from '@mantine/core';
import type { ReactNode } from 'react';
import type { NextHerd, NextPaddock } from '../../../../shared/plan/record/next-land.js';
import type { NextYear } from '../../../../shared/plan/record/next-year.js';
import { listed } from '../../../../shared/units/listed.js';
import { useSayDate } from '../../explain/say-date.js';
import { toggled } from './toggled.js';

interface Props {
  readonly next: Pick<NextYear, 'herds' | 'paddocks'>;
  readonly herdIds: readonly string[];
  readonly paddockIds: readonly string[];
  readonly onHerds: (ids: string[]) => void;
  readonly onPaddocks: (ids: string[]) => void;
}

/** Cattle that come again, and days of paddocks. */
export function Land({ next, herdIds, paddockIds, onHerds, onPaddocks }: Props) {
  const sayDate = useSayDate();
  return (
    <>
      {next.herds.length > 0 && (
        <Part title="Cattle">
          {next.herds.map((herd) => (
            <Checkbox
              key={herd.ofId}
              size="md"
              label={`${herd.name}: ${sayHerd(herd, sayDate)}`}
              {...(herd.isThere ? { description: 'There already' } : {})}
              checked={herdIds.includes(herd.ofId)}
              onChange={({ currentTarget: { checked } }) =>
                onHerds(toggled(herdIds, herd.ofId, checked))
              }
            />
          ))}
        </Part>
      )}
      {next.paddocks.length > 0 && (
        <Part title="Paddocks">
          {next.paddocks.map((paddock) => (
            <Checkbox
              key={paddock.ofId}
              size="md"
              label={`${paddock.name}: ${sayPaddock(paddock, sayDate)}`}
              checked={paddockIds.includes(paddock.ofId)}
              onChange={({ currentTarget: { checked } }) =>
                onPaddocks(toggled(paddockIds, paddock.ofId, checked))
              }
            />
          ))}
        </Part>
      )}
    </>
  );
}

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <>
      <Title order={3} size="h4">
        {title}
      </Title>
      <Stack gap="xs" role="group" aria-label={title}>
        {children}
      </Stack>
    </>
  );
}

type SayDate = (date: string) => string;

const sayHerd = ({ groups, turnOutOn }: NextHerd, say: SayDate): string =>
  listed([
    ...groups.map(
      ({ head, arrivesOn, leavesOn }) =>
        `${head} head from ${say(arrivesOn!)}${leavesOn === undefined ? '' : ` to ${say(leavesOn)}`}`,
    ),
    ...(turnOutOn === undefined ? [] : [`not on grass before ${say(turnOutOn)}`]),
  ]);

const sayPaddock = ({ closedDays, harvestOn, lastHarvestOn }: NextPaddock, say: SayDate): string =>
  listed([
    ...closedDays.map(
      ({ from, to, why }) =>
        `closed ${say(from)} to ${say(to)}${why === 'other' ? '' : ` (${why})`}`,
    ),
    ...(harvestOn === undefined
      ? []
      : [
          `harvest ${say(harvestOn)}${lastHarvestOn === undefined ? '' : ` to ${say(lastHarvestOn)}`}`,
        ]),
  ]);
