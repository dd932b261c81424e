import { Checkbox, Stack, Title } from '@mantine/core';
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
      <Part
        title="Cattle"
        rows={next.herds.map((herd) => ({
          id: herd.ofId,
          label: `${herd.name}: ${sayHerd(herd, sayDate)}`,
          isThere: herd.isThere,
        }))}
        chosen={herdIds}
        onChange={onHerds}
      />
      <Part
        title="Paddocks"
        rows={next.paddocks.map((paddock) => ({
          id: paddock.ofId,
          label: `${paddock.name}: ${sayPaddock(paddock, sayDate)}`,
          isThere: false,
        }))}
        chosen={paddockIds}
        onChange={onPaddocks}
      />
    </>
  );
}

interface PartProps {
  readonly title: string;
  readonly rows: readonly {
    readonly id: string;
    readonly label: string;
    readonly isThere: boolean;
  }[];
  readonly chosen: readonly string[];
  readonly onChange: (ids: string[]) => void;
}

/** What comes again of one kind, each with a box to tick; nothing where there is none. */
function Part({ title, rows, chosen, onChange }: PartProps) {
  if (rows.length === 0) return null;
  return (
    <>
      <Title order={3} size="h4">
        {title}
      </Title>
      <Stack gap="xs" role="group" aria-label={title}>
        {rows.map(({ id, label, isThere }) => (
          <Checkbox
            key={id}
            size="md"
            label={label}
            {...(isThere ? { description: 'There already' } : {})}
            checked={chosen.includes(id)}
            onChange={({ currentTarget: { checked } }) => onChange(toggled(chosen, id, checked))}
          />
        ))}
      </Stack>
    </>
  );
}

type SayDate = (date: string) => string;

const sayHerd = ({ groups, turnOutOn, calvings = [] }: NextHerd, say: SayDate): string =>
  listed([
    ...groups.map(
      ({ head, arrivesOn, leavesOn }) =>
        `${head} head from ${say(arrivesOn!)}${leavesOn === undefined ? '' : ` to ${say(leavesOn)}`}`,
    ),
    ...calvings.map(
      ({ who, was, calvesOn }) =>
        `${who} calving about ${say(calvesOn)}, if bred as for ${say(was)}`,
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
