import { ActionIcon, Button, Checkbox, Group, Stack, Text, TextInput, Title } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { Herd } from '../../../../shared/farm/herd.js';
import type { Paddock } from '../../../../shared/farm/paddock.js';
import type { FarmPicture } from '../../../../shared/farm/picture.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useJoin, useSplit } from '../../api/pasture-queries.js';
import { usePicture, useRemove, type SavedBatch, type SavedFarm } from '../../api/queries.js';
import { Section } from '../../shell/section.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { Failure, useAll } from '../../shell/states.js';
import { HerdForm } from './herd-form.js';
import { ImportOutlines } from './import-outlines.js';
import { NamedCows } from './named-cows.js';
import { PaddockForm } from './paddock-form.js';
import { PastureNav } from './pasture-nav.js';

/** Equal strips that a paddock is split into with one touch. */
const STRIPS = [2, 3, 4, 6, 8, 12];

/** Paddocks and herds: adding, changing, splitting, joining, importing outlines. */
export default function LandScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(usePicture(farm.id));
  if ('waiting' in all) return all.waiting;
  const [picture] = all.data;
  return (
    <Stack maw={900}>
      <Title order={1}>Paddocks and herds</Title>
      <PastureNav farmId={farm.id} />
      <Paddocks farm={farm} tables={tables} picture={picture} />
      <Herds farm={farm} tables={tables} picture={picture} batches={picture.batches} />
    </Stack>
  );
}

function Paddocks({
  farm,
  tables,
  picture,
}: {
  farm: SavedFarm;
  tables: Tables;
  picture: FarmPicture;
}) {
  const [edited, setEdited] = useState<Paddock | 'new'>();
  const [picked, setPicked] = useState<readonly string[]>([]);
  const [joined, setJoined] = useState('');
  const remove = useRemove(farm, 'paddocks');
  const split = useSplit(farm.id);
  const join = useJoin(farm.id);
  const reshaped = [...(split.data ?? []), ...(join.data ? [join.data] : [])];
  const lost = reshaped.find((paddock) => paddock.noOutlineBecause !== undefined);
  return (
    <Section title="Paddocks">
      <Group mb="sm">
        <Button variant="light" onClick={() => setEdited('new')}>
          Add a paddock
        </Button>
        <ImportOutlines farm={farm} tables={tables} />
      </Group>
      <Text size="sm" mb="xs">
        Tick one paddock to split it into strips, several to join them. Outlines are cut across the
        longer side, and drawn around paddocks that touch.
      </Text>
      {lost && (
        <Text role="status" mb="xs">
          {lost.name} has no outline now, because {lost.noOutlineBecause}. Draw it anew under
          “Change {lost.name}” to see it on the map.
        </Text>
      )}
      <Failure error={remove.error ?? split.error ?? join.error} />
      <div className="rows">
        {picture.paddocks.map((paddock) => (
          <Group key={paddock.id} justify="space-between" wrap="nowrap">
            <Checkbox
              checked={picked.includes(paddock.id)}
              onChange={(e) =>
                setPicked(
                  e.currentTarget.checked
                    ? [...picked, paddock.id]
                    : picked.filter((id) => id !== paddock.id),
                )
              }
              label={
                <>
                  <Text fw={600} component="span">
                    {paddock.name}
                  </Text>{' '}
                  <Text size="sm" component="span" display="block">
                    {formatValue(paddock.areaM2, 'ha', farm)},{' '}
                    {tables.forages.find((f) => f.id === paddock.forageId)?.name.toLowerCase()}
                  </Text>
                </>
              }
            />
            <Group gap={0} wrap="nowrap">
              <ActionIcon aria-label={`Change ${paddock.name}`} onClick={() => setEdited(paddock)}>
                <IconPencil aria-hidden />
              </ActionIcon>
              <ConfirmButton
                px={10}
                label={`Delete ${paddock.name}`}
                question={`Delete ${paddock.name} with its readings?`}
                onConfirm={() => remove.mutate(paddock)}
              >
                <IconTrash aria-hidden />
              </ConfirmButton>
            </Group>
          </Group>
        ))}
      </div>
      {picked.length === 1 && (
        <Group mt="md" gap="xs" role="group" aria-labelledby="strips">
          <span id="strips">Strips to split it into</span>
          {STRIPS.map((parts) => (
            <Button
              key={parts}
              variant="default"
              aria-label={`Split into ${parts} strips`}
              onClick={() => {
                join.reset();
                split.mutate({ id: picked[0]!, parts });
                setPicked([]);
              }}
            >
              {parts}
            </Button>
          ))}
        </Group>
      )}
      {1 < picked.length && (
        <Group mt="md" align="end">
          <TextInput
            label="Name of the joined paddock"
            value={joined}
            onChange={(e) => setJoined(e.currentTarget.value)}
          />
          <Button
            variant="default"
            disabled={joined.trim() === ''}
            onClick={() => {
              split.reset();
              join.mutate({ ids: picked, name: joined });
              setPicked([]);
              setJoined('');
            }}
          >
            Join {picked.length}
          </Button>
        </Group>
      )}
      {edited && (
        <FormDialog
          onClose={() => setEdited(undefined)}
          title={edited === 'new' ? 'New paddock' : edited.name}
        >
          <PaddockForm
            farm={farm}
            tables={tables}
            start={edited === 'new' ? undefined : edited}
            onDone={() => setEdited(undefined)}
          />
        </FormDialog>
      )}
    </Section>
  );
}

function Herds({
  farm,
  tables,
  picture,
  batches,
}: {
  farm: SavedFarm;
  tables: Tables;
  picture: FarmPicture;
  batches: readonly SavedBatch[];
}) {
  const [edited, setEdited] = useState<Herd | 'new'>();
  const remove = useRemove(farm, 'herds');
  return (
    <Section title="Herds">
      <Group mb="sm">
        <Button variant="light" onClick={() => setEdited('new')}>
          Add a herd
        </Button>
      </Group>
      <Failure error={remove.error} />
      {picture.herds.map((herd) => {
        const cows = picture.cows.filter(({ herdId }) => herdId === herd.id);
        const andCows = [herd.name, ...cows.map(({ name }) => name)].join(', ');
        return (
          <div key={herd.id}>
            <Group justify="space-between" wrap="nowrap" mt="xs">
              <div>
                <Text fw={600}>{herd.name}</Text>
                <Text size="sm">
                  {herd.groups
                    .map(
                      (g) =>
                        `${g.head} × ${tables.cattle.classes.find((c) => c.id === g.classId)?.name.toLowerCase()}`,
                    )
                    .join(', ')}
                </Text>
              </div>
              <Group gap={0} wrap="nowrap">
                <ActionIcon aria-label={`Change ${herd.name}`} onClick={() => setEdited(herd)}>
                  <IconPencil aria-hidden />
                </ActionIcon>
                <ConfirmButton
                  px={10}
                  label={`Delete ${herd.name}`}
                  question={`Delete ${andCows}?`}
                  onConfirm={() => remove.mutate(herd)}
                >
                  <IconTrash aria-hidden />
                </ConfirmButton>
              </Group>
            </Group>
            <NamedCows farm={farm} tables={tables} herd={herd} herds={picture.herds} cows={cows} />
          </div>
        );
      })}
      {edited && (
        <FormDialog
          onClose={() => setEdited(undefined)}
          title={edited === 'new' ? 'New herd' : edited.name}
        >
          <HerdForm
            farm={farm}
            tables={tables}
            paddocks={picture.paddocks}
            batches={batches}
            start={edited === 'new' ? undefined : edited}
            onDone={() => setEdited(undefined)}
          />
        </FormDialog>
      )}
    </Section>
  );
}
