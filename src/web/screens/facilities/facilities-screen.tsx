import { ActionIcon, Button, Card, Group, Stack, Text, Title } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useEffect, useState } from 'react';
import type { Occupancy } from '../../../../shared/farm/occupancy.js';
import type { Facility } from '../../../../shared/farm/facility.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { placesHeld } from '../../../../shared/plan/batch-request.js';
import { gearUse, type GearUse } from '../../../../shared/plan/gear-use.js';
import { formatValue } from '../../../../shared/units/format.js';
import { unbroken } from '../../explain/unbroken.js';
import {
  farmDay,
  useFacilities,
  usePicture,
  useRemove,
  type SavedFarm,
} from '../../api/queries.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { Failure, useAll } from '../../shell/states.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { FacilityForm } from './facility-form.js';
import { PlaceUse } from './place-use.js';
import { draftOf, emptyDraft, KINDS, sizesOf, type Draft } from './kinds.js';

export default function FacilitiesScreen({ farm, tables }: { farm: SavedFarm; tables: Tables }) {
  const all = useAll(useFacilities(farm.id));
  if ('waiting' in all) return all.waiting;
  return <Facilities farm={farm} tables={tables} facilities={all.data[0]} />;
}

function Facilities({
  farm,
  tables,
  facilities,
}: {
  farm: SavedFarm;
  tables: Tables;
  facilities: readonly Facility[];
}) {
  // A way from elsewhere leads to one of them by its id: `facilities#facility-ID`.
  const [draft, setDraft] = useState<Draft | undefined>(() => {
    const asked = facilities.find(({ id }) => window.location.hash === `#facility-${id}`);
    return asked && draftOf(asked);
  });
  const leave = (): void => {
    history.replaceState(history.state, '', window.location.pathname);
    setDraft(undefined);
  };
  const remove = useRemove(farm, 'facilities');
  const useOf = usePlaceUse(farm, tables);
  return (
    <Stack maw={900}>
      <Title order={1}>Buildings and gear</Title>
      <Text>
        What you have for the birds. Only a brooder is needed to work out heat and bedding;
        everything else sharpens the plan.
      </Text>
      <Failure error={remove.error} />
      {KINDS.map((kind) => (
        <Card key={kind.kind} withBorder component="section">
          <Group justify="space-between" wrap="nowrap">
            <Title order={2} size="h3">
              {kind.plural}
            </Title>
            <Button
              variant="light"
              onClick={() => setDraft(emptyDraft(kind.kind, farm.units))}
              aria-label={`Add a ${kind.name.toLowerCase()}`}
            >
              Add
            </Button>
          </Group>
          <Text c="dimmed" size="sm">
            {kind.why}
          </Text>
          <div className="rows">
            {facilities
              .filter((f) => f.kind === kind.kind)
              .map((facility) => (
                <Group key={facility.id} justify="space-between" align="flex-start" wrap="nowrap">
                  <div>
                    <Text fw={600}>{facility.name}</Text>
                    <Text size="sm">{summary(facility, farm)}</Text>
                    {LIVED_IN.has(facility.kind) && useOf && (
                      <PlaceUse use={useOf(facility.id)} today={farmDay(farm)} />
                    )}
                  </div>
                  <Group gap={0} wrap="nowrap">
                    <ActionIcon
                      aria-label={`Change ${facility.name}`}
                      onClick={() => setDraft(draftOf(facility))}
                    >
                      <IconPencil aria-hidden />
                    </ActionIcon>
                    <ConfirmButton
                      px={10}
                      label={`Delete ${facility.name}`}
                      question={`Delete ${facility.name}? Batches that use it will have none.`}
                      onConfirm={() => remove.mutate(facility)}
                    >
                      <IconTrash aria-hidden />
                    </ConfirmButton>
                  </Group>
                </Group>
              ))}
          </div>
        </Card>
      ))}
      <FormDialog
        isOpen={draft !== undefined}
        onClose={leave}
        title={draft && KINDS.find((k) => k.kind === draft.kind)?.name}
      >
        {draft && (
          <FacilityForm
            farm={farm}
            tables={tables}
            start={draft}
            circuits={facilities.filter((f) => f.kind === 'circuit')}
            onDone={leave}
          />
        )}
      </FormDialog>
    </Stack>
  );
}

/** Where birds live: the other gear has no days. */
const LIVED_IN: ReadonlySet<Facility['kind']> = new Set(['brooder', 'coop', 'field-pen']);

/** Who is in each place when; undefined until that is reckoned, once the page stands. */
function usePlaceUse(
  farm: SavedFarm,
  tables: Tables,
): ((facilityId: string) => GearUse) | undefined {
  const picture = usePicture(farm.id).data;
  const [held, setHeld] = useState<readonly Occupancy[]>();
  useEffect(() => {
    if (!picture) return;
    const timer = setTimeout(() => setHeld(placesHeld(picture, tables)), 0);
    return () => clearTimeout(timer);
  }, [picture, tables]);
  return held && picture && ((id) => gearUse(held, id, picture.today));
}

const HEATERS = { lamp: 'lamp', plate: 'plate', gas: 'gas heater' } as const;

function summary(facility: Facility, farm: SavedFarm): string {
  const kind = KINDS.find((k) => k.kind === facility.kind)!;
  const values = facility as unknown as Record<string, number | undefined>;
  const sizes = sizesOf(kind).flatMap(([name, { label, bounds }]) => {
    const value = values[name];
    return value === undefined
      ? []
      : // What stands in volts needs no name for it.
        [
          `${bounds.unit === 'V' ? '' : `${label.toLowerCase()} `}${formatValue(value, bounds.unit, farm)}`,
        ];
  });
  if (facility.kind !== 'brooder') return sizes.join(', ');
  const { count, wattsEach, kind: heater, thermostat } = facility.heat;
  return [
    ...sizes.slice(0, 3),
    `${unbroken(`${count} × ${formatValue(wattsEach, 'W', farm)}`)} ${HEATERS[heater]}${count === 1 ? '' : 's'}${thermostat ? ' on a thermostat' : ''}`,
  ].join(', ');
}
