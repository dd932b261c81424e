import { ActionIcon, Button, Group, Text } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { Cow } from '../../../../shared/farm/cow.js';
import type { Herd } from '../../../../shared/farm/herd.js';
import type { Tables } from '../../../../shared/tables/tables.js';
import { formatValue } from '../../../../shared/units/format.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { useRemove, type SavedFarm } from '../../api/queries.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { Failure } from '../../shell/states.js';
import { CowForm } from './cow-form.js';

/** The cows of a herd that go by a name: adding, changing, taking the name off. */
export function NamedCows({
  farm,
  tables,
  herd,
  herds,
  cows,
}: {
  farm: SavedFarm;
  tables: Tables;
  herd: Herd;
  herds: readonly Herd[];
  cows: readonly Cow[];
}) {
  const [edited, setEdited] = useState<Cow | 'new'>();
  const remove = useRemove(farm, 'cows');
  const sayDate = useSayDate();
  return (
    <>
      <div className="rows">
        {cows.map((cow) => (
          <Group key={cow.id} justify="space-between" wrap="nowrap" pl="md">
            <Text size="sm">
              <b>{cow.name}</b>, {aboutHer(cow, tables, farm, sayDate)}
            </Text>
            <Group gap={0} wrap="nowrap">
              <ActionIcon aria-label={`Change ${cow.name}`} onClick={() => setEdited(cow)}>
                <IconPencil aria-hidden />
              </ActionIcon>
              <ConfirmButton
                px={10}
                label={`Delete ${cow.name}`}
                question={`Delete what is kept of ${cow.name}? ${herd.name} keeps its head.`}
                onConfirm={() => remove.mutate(cow)}
              >
                <IconTrash aria-hidden />
              </ConfirmButton>
            </Group>
          </Group>
        ))}
      </div>
      <Failure error={remove.error} />
      <Button variant="subtle" onClick={() => setEdited('new')}>
        Add a named cow to {herd.name}
      </Button>
      {edited && (
        <FormDialog
          onClose={() => setEdited(undefined)}
          title={edited === 'new' ? 'Named cow' : edited.name}
        >
          <CowForm
            farm={farm}
            tables={tables}
            herds={herds}
            herd={herd}
            start={edited === 'new' ? undefined : edited}
            onDone={() => setEdited(undefined)}
          />
        </FormDialog>
      )}
    </>
  );
}

/** Her class, and what is known of her alone. */
function aboutHer(cow: Cow, { cattle }: Tables, farm: SavedFarm, sayDate: SayDate): string {
  const { earTag, bornOn, weightKg, milkKgPerDay, bredOn, calvesOn } = cow;
  return [
    cattle.classes.find(({ id }) => id === cow.classId)?.name.toLowerCase(),
    earTag && `ear tag ${earTag}`,
    bornOn && `born ${sayDate(bornOn)}`,
    weightKg && formatValue(weightKg, 'kg', farm),
    milkKgPerDay && `${formatValue(milkKgPerDay, 'kg', farm)} of milk a day`,
    bredOn && `bred ${sayDate(bredOn)}`,
    calvesOn && `due ${sayDate(calvesOn)}`,
  ]
    .filter((each) => each)
    .join(', ');
}
