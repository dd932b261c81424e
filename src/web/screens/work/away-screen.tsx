import { Button, Group, Stack, Text, Title } from '@mantine/core';
import { useState } from 'react';
import { Link } from 'wouter';
import { absencesAhead, withoutAway, type Absence } from '../../../../shared/farm/absences.js';
import { personFields, type Person } from '../../../../shared/farm/farm.js';
import type { Handover } from '../../../../shared/farm/handover.js';
import { sitterName } from '../../../../shared/plan/handover/sitter-sheet.js';
import { movedBetween } from '../../../../shared/plan/work/moved-between.js';
import type { WorkPlan } from '../../../../shared/plan/work/planned-work.js';
import { usePeople, useRemove, useSave, type SavedFarm } from '../../api/queries.js';
import { useHandovers, useWork } from '../../api/work-queries.js';
import { useSayDate } from '../../explain/say-date.js';
import { ConfirmButton } from '../../shell/confirm-button.js';
import { wordsOfRow } from '../../fields/field-words.js';
import { FormDialog } from '../../fields/form-dialog.js';
import { Failure, useAll } from '../../shell/states.js';
import { Section } from '../../shell/section.js';
import { AbsenceForm } from './absence-form.js';
import { AbsenceLine } from './absence-line.js';
import { CalendarLinks } from './calendar-links.js';
import { ChangeList } from './change-list.js';
import { HandoverForm } from './handover-form.js';
import { WorkNav } from './work-nav.js';
import { formatHours } from '../../../../shared/units/format.js';

/** Who is away when and who is in charge then, with their sheets; and calendars to subscribe to. */
export default function AwayScreen({ farm }: { farm: SavedFarm }) {
  const sayDate = useSayDate();
  const [editing, setEditing] = useState<Handover | Absence | 'new'>();
  // Days away that are added or changed, and the plan of before they were saved.
  const [adding, setAdding] = useState<Absence | 'new'>();
  const [before, setBefore] = useState<WorkPlan>();
  const all = useAll(useWork(farm.id), useHandovers(farm.id), usePeople(farm.id));
  const remove = useRemove(farm, 'handovers');
  const savePerson = useSave<Person>(farm.id, 'people', wordsOfRow(personFields, farm));
  const isPlanning = useWork(farm.id).isFetching;
  if ('waiting' in all) return all.waiting;
  const [plan, handovers, people] = all.data;
  const absences = absencesAhead(people, handovers, plan.today);
  const nameOf = ({ personId, sitter }: Handover): string =>
    sitterName(people.find(({ id }) => id === personId)?.name ?? sitter);
  const stopAdding = (): void => setAdding(undefined);
  const takeBack = async (absence: Absence): Promise<void> => {
    const left = withoutAway(people, absence);
    for (const [k, person] of left.entries())
      if (person !== people[k]) await savePerson.mutateAsync(person);
    setBefore(plan);
  };
  return (
    <Stack maw={1100}>
      <Title order={1}>While you’re away</Title>
      <WorkNav farmId={farm.id} />
      <Section title="Days away">
        <Text mb="sm">
          On these days whoever is away has no hours. What can be moved out of them is moved, and
          the rest is on the sheet of the one in charge, a page a day.
        </Text>
        <Stack gap="xs">
          {handovers.map((handover) => (
            <Group key={handover.id} justify="space-between" gap="xs">
              <Text>
                {nameOf(handover)} in charge, {sayDate(handover.from)} to {sayDate(handover.to)},{' '}
                {handover.hoursPerDay === undefined
                  ? 'their own hours'
                  : `${formatHours(handover.hoursPerDay)} a day`}
                {handover.phones.length === 0 && (
                  <span className="away-missing"> · phone numbers missing</span>
                )}
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
        {absences.map((absence) => (
          <AbsenceLine
            key={absence.from}
            absence={absence}
            people={people}
            action="Make a sheet"
            onPress={() => setEditing(absence)}
          >
            <Button
              variant="default"
              aria-label={`Change the days away from ${sayDate(absence.from)}`}
              onClick={() => setAdding(absence)}
            >
              Change
            </Button>
            <ConfirmButton
              label={`Remove the days away from ${sayDate(absence.from)}`}
              question="Remove these days?"
              onConfirm={() => void takeBack(absence).catch(() => undefined)}
            >
              Remove
            </ConfirmButton>
          </AbsenceLine>
        ))}
        {before && (
          <div role="status">
            {isPlanning ? (
              <Text>Planning around these days …</Text>
            ) : (
              <ChangeList
                changes={movedBetween(before, plan)}
                none="Saved. No work has to move for it."
              />
            )}
          </div>
        )}
        <Failure error={remove.error ?? savePerson.error} />
        <Group mt="sm">
          <Button onClick={() => setAdding('new')}>Add days away</Button>
          <Button variant="default" onClick={() => setEditing('new')}>
            Make a sheet for a sitter
          </Button>
        </Group>
      </Section>
      <Section title="In your calendar">
        <CalendarLinks farmId={farm.id} people={plan.people} />
      </Section>
      <FormDialog
        isOpen={adding !== undefined}
        onClose={stopAdding}
        title={adding === 'new' ? 'Add days away' : 'Change the days away'}
      >
        {adding !== undefined && (
          <AbsenceForm
            {...{ farm, people }}
            today={plan.today}
            start={adding === 'new' ? undefined : adding}
            onSaved={() => setBefore(plan)}
            onDone={stopAdding}
          />
        )}
      </FormDialog>
      <FormDialog
        isOpen={editing !== undefined}
        onClose={() => setEditing(undefined)}
        title={isSaved(editing) ? 'Change the days handed over' : 'Hand days over'}
        size="xl"
      >
        {editing !== undefined && (
          <HandoverForm
            farm={farm}
            people={people}
            plan={plan}
            start={isSaved(editing) ? editing : undefined}
            absences={editing === 'new' ? absences : []}
            absence={editing === 'new' || isSaved(editing) ? undefined : editing}
            onDone={() => setEditing(undefined)}
          />
        )}
      </FormDialog>
    </Stack>
  );
}

const isSaved = (editing: Handover | Absence | 'new' | undefined): editing is Handover =>
  typeof editing === 'object' && 'id' in editing;
