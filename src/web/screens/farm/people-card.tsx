import { ActionIcon, Button, Card, Group, Stack, Text, Title } from '@mantine/core';
import { IconPencil, IconTrash } from '@tabler/icons-react';
import { useState } from 'react';
import type { Person } from '../../../../shared/farm/farm.js';
import { formatHours } from '../../../../shared/units/format.js';
import { useRemove, useTables, type SavedFarm } from '../../api/queries.js';
import { useSayDate, type SayDate } from '../../explain/say-date.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { Failure } from '../../shell/states.js';
import { PersonForm } from './person-form.js';

/** The people of the household, their hours and the days they are away. */
export function PeopleCard({ farm, people }: { farm: SavedFarm; people: readonly Person[] }) {
  const sayDate = useSayDate();
  // A way from elsewhere leads to somebody by the id: `place#person-ID`.
  const [edited, setEdited] = useState<Person | 'new' | undefined>(() =>
    people.find(({ id }) => window.location.hash === `#person-${id}`),
  );
  const leave = (): void => {
    history.replaceState(history.state, '', window.location.pathname);
    setEdited(undefined);
  };
  const remove = useRemove(farm, 'people');
  const usual = useTables().data?.work.hoursByWeekday.values;
  return (
    <Card withBorder component="section">
      <Title order={2}>People</Title>
      <Text my="xs">
        Who looks after the animals, and when they are away. The arrival finder and the plan of work
        keep clear of those days.
      </Text>
      <Stack gap="xs">
        <div className="rows">
          {people.map((person) => (
            <Group key={person.id} justify="space-between" wrap="nowrap">
              <div>
                <Text fw={600}>{person.name}</Text>
                <Text size="sm">{aboutPerson(person, usual, sayDate)}</Text>
              </div>
              <Group gap={0} wrap="nowrap">
                <ActionIcon aria-label={`Change ${person.name}`} onClick={() => setEdited(person)}>
                  <IconPencil aria-hidden />
                </ActionIcon>
                <ConfirmButton
                  px={10}
                  label={`Remove ${person.name}`}
                  question={`Remove ${person.name} and the absences?`}
                  onConfirm={() => remove.mutate(person)}
                >
                  <IconTrash aria-hidden />
                </ConfirmButton>
              </Group>
            </Group>
          ))}
        </div>
        <Failure error={remove.error} />
        <Group>
          <Button variant="light" onClick={() => setEdited('new')}>
            Add a person
          </Button>
        </Group>
      </Stack>
      {edited && (
        <FormDialog onClose={leave} title={edited === 'new' ? 'New person' : edited.name}>
          <PersonForm farm={farm} start={edited === 'new' ? undefined : edited} onDone={leave} />
        </FormDialog>
      )}
    </Card>
  );
}

/** Hours in a week, and the days away. */
function aboutPerson(
  { isChild, looksIn, hoursByWeekday, assumed, away }: Person,
  usual: readonly number[] = [],
  sayDate: SayDate,
): string {
  const hours = (hoursByWeekday ?? usual).reduce((sum, each) => sum + each, 0);
  const aWeek = `${formatHours(hours)} a week`;
  const said = hoursByWeekday ? aWeek : `about ${aWeek}, beside a job`;
  return [
    ...(isChild ? ['a child'] : []),
    ...(looksIn === undefined
      ? []
      : [`looks in ${looksIn === 1 ? 'once' : `${looksIn} times`} a day`]),
    assumed?.includes('hoursByWeekday') ? `${said} (assumed)` : said,
    ...away.map(({ from, to }) => `away ${sayDate(from)} to ${sayDate(to)}`),
  ].join(', ');
}
