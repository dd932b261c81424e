import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import type { Handover } from '../../../../shared/farm/handover.js';
import { absencesWithoutSheet } from '../../../../shared/plan/handover/absences.js';
import { usePeople, useRemove, type SavedFarm } from '../../api/queries.js';
import { useHandovers, useWork } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { Failure, useAll } from '../../shell/states.js';
import { Section } from '../../shell/section.js';
import { CalendarLinks } from './calendar-links.js';
import { AbsenceLine } from './absence-line.js';
import { HandoverForm } from './handover-form.js';
import { WorkNav } from './work-nav.js';
import { formatHours } from '../../../../shared/units/format.js';

/** Days that are handed to one person, with their sheets; and calendars to subscribe to. */
export default function AwayScreen({ farm }: { farm: SavedFarm }) {
  const sayDate = useSayDate();
  const [editing, setEditing] = useState<Partial<Handover> | 'new'>();
  const all = useAll(useWork(farm.id), useHandovers(farm.id), usePeople(farm.id));
  const remove = useRemove(farm, 'handovers');
  if ('waiting' in all) return all.waiting;
  const [plan, handovers, people] = all.data;
  const absences = absencesWithoutSheet(people, handovers, plan.today);
  const nameOf = ({ personId, sitter }: Handover): string =>
    people.find(({ id }) => id === personId)?.name ?? sitter ?? '';
  return (
    <Stack maw={1100}>
      <Title order={1}>While you’re away</Title>
      <WorkNav farmId={farm.id} />
      <Section title="Days with a farm sitter">
        <Text mb="sm">
          Whoever is away has no hours on these days; those who stay keep theirs, and whoever is in
          charge adds theirs. What can be moved is moved, and the rest is on the sheet, a page a
          day.
        </Text>
        {absences.map((absence) => (
          <AbsenceLine
            key={absence.from}
            absence={absence}
            people={people}
            action="Make a sheet"
            onPress={() => {
              const { from, to, awayIds } = absence;
              setEditing({ from, to, awayIds });
            }}
          />
        ))}
        <Stack gap="xs">
          {handovers.map((handover) => (
            <Group key={handover.id} justify="space-between" gap="xs">
              <Text>
                {nameOf(handover)}, {sayDate(handover.from)} to {sayDate(handover.to)},{' '}
                {formatHours(handover.hoursPerDay)} a day
              </Text>
              <Group gap="xs">
                <Button
                  component={Link}
                  href={`/farm/${farm.id}/work/away/${handover.id}/sheet`}
                  variant="light"
                >
                  Sitter’s sheet
                </Button>
                <Button
                  variant="default"
                  onClick={() => setEditing(handover)}
                  aria-label={`Change the days away from ${sayDate(handover.from)}`}
                >
                  Change
                </Button>
                <ConfirmButton
                  label={`Remove the days away from ${sayDate(handover.from)}`}
                  question="Remove these days?"
                  onConfirm={() => remove.mutate(handover)}
                >
                  Remove
                </ConfirmButton>
              </Group>
            </Group>
          ))}
        </Stack>
        <Failure error={remove.error} />
        <Group mt="sm">
          <Button onClick={() => setEditing('new')}>Add days away</Button>
        </Group>
      </Section>
      <Section title="In your calendar">
        <CalendarLinks farmId={farm.id} people={plan.people} />
      </Section>
      <FormDialog
        isOpen={editing !== undefined}
        onClose={() => setEditing(undefined)}
        title={isNew(editing) ? 'Add days away' : 'Change days away'}
        size="xl"
      >
        {editing !== undefined && (
          <HandoverForm
            farm={farm}
            people={people}
            plan={plan}
            start={editing === 'new' ? undefined : editing}
            absences={isNew(editing) ? absences : []}
            onDone={() => setEditing(undefined)}
          />
        )}
      </FormDialog>
    </Stack>
  );
}

const isNew = (editing: Partial<Handover> | 'new' | undefined): boolean =>
  typeof editing !== 'object' || editing.id === undefined;
