import { ActionIcon, Button, Card, Group, Stack, Text, TextInput, Title } from '@mantine/core';
import { useForm } from '@mantine/form';
import { IconTrash } from '@tabler/icons-react';
import { personFields, type Person } from '../../../../shared/farm/farm.js';
import { useRemove, useSave, type SavedFarm } from '../../api/queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { StartTimes } from './start-times.js';
import { WeekdayHours } from './weekday-hours.js';
import { DateField } from '../../fields/date-input.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';

/** The people of the household and the days they are away. */
export function PeopleCard({ farm, people }: { farm: SavedFarm; people: readonly Person[] }) {
  const farmId = farm.id;
  const words = wordsOfRow(personFields, farm);
  const save = useSave<Omit<Person, 'id'> & { id?: string }>(farmId, 'people', words);
  const remove = useRemove(farm, 'people');
  const form = useForm({
    initialValues: { name: '' },
    validate: { name: (v) => (v.trim() ? null : 'Give a name.') },
  });
  return (
    <Card withBorder component="section">
      <Title order={2} size="h3">
        People
      </Title>
      <Text my="xs">
        Who looks after the animals, and when they are away. The arrival finder and the plan of work
        keep clear of those days. When the hours of a day begin decides how much daylight they hold.
      </Text>
      <Stack>
        {people.map((person) => (
          <PersonRow
            key={person.id}
            person={person}
            farm={farm}
            onSave={(part) => save.mutate({ ...person, ...part })}
            onRemove={() => remove.mutate(person)}
          />
        ))}
        <form
          onSubmit={form.onSubmit(({ name }) => {
            save.mutate({ name, away: [] });
            form.reset();
          })}
        >
          <Group align="end">
            <TextInput label="Name" {...form.getInputProps('name')} />
            <Button type="submit" variant="light">
              Add a person
            </Button>
          </Group>
        </form>
        <Failure error={save.error ?? remove.error} words={words} />
      </Stack>
    </Card>
  );
}

function PersonRow({
  person,
  farm,
  onSave,
  onRemove,
}: {
  person: Person;
  farm: SavedFarm;
  onSave: (part: Partial<Person>) => void;
  onRemove: () => void;
}) {
  const sayDate = useSayDate();
  const form = useForm<{ from?: string; to?: string }>({
    initialValues: {},
    validate: {
      from: (v) => (v ? null : 'Choose the first day.'),
      to: (v, { from }) =>
        v && from && from <= v ? null : 'Choose the last day, on or after the first.',
    },
  });
  return (
    <Card withBorder>
      <Group justify="space-between" wrap="nowrap">
        <Text fw={600}>{person.name}</Text>
        <ConfirmButton
          px={10}
          label={`Remove ${person.name}`}
          question={`Remove ${person.name} and the absences?`}
          onConfirm={onRemove}
        >
          <IconTrash aria-hidden />
        </ConfirmButton>
      </Group>
      {person.away.map((away, i) => (
        <Group key={`${away.from}${away.to}`} gap="xs">
          <Text>
            Away {sayDate(away.from)} to {sayDate(away.to)}
          </Text>
          <ActionIcon
            color="stop"
            aria-label={`Remove absence from ${sayDate(away.from)}`}
            onClick={() => onSave({ away: person.away.filter((_, k) => k !== i) })}
          >
            <IconTrash aria-hidden size={18} />
          </ActionIcon>
        </Group>
      ))}
      <form
        onSubmit={form.onSubmit(({ from, to }) => {
          onSave({ away: [...person.away, { from: from!, to: to! }] });
          form.setValues({ from: undefined, to: undefined } as never);
        })}
      >
        <Group align="end" gap="xs">
          <DateField
            label="Away from"
            value={form.values.from}
            error={form.errors['from']}
            onChange={(v) => form.setFieldValue('from', v as never)}
          />
          <DateField
            label="to"
            value={form.values.to}
            error={form.errors['to']}
            onChange={(v) => form.setFieldValue('to', v as never)}
          />
          <Button type="submit" variant="default">
            Add absence
          </Button>
        </Group>
      </form>
      <WeekdayHours person={person} farm={farm} onSave={onSave} />
      <StartTimes person={person} onSave={onSave} />
    </Card>
  );
}
