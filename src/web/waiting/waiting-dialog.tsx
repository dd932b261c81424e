import { Button, Group, Modal, NativeSelect, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import { progressFields } from '../../../shared/farm/job.js';
import { describeForForm } from '../../../shared/problems/field-problem.js';
import { sendAll, throwAway } from '../api/outbox.js';
import { problemsOfFact, wordsOfFact } from '../api/told-words.js';
import { sayWhoUses, whoUses } from '../kept/whose-phone.js';
import { usePeople } from '../api/queries.js';
import { heldBack, type Entry } from '../kept/entry.js';
import { ConfirmButton } from '../shell/confirm-button.js';
import { ChangeEntry } from './change-entry.js';
import { ClashQuestion } from './clash-question.js';
import { fieldsOf, sayEntry } from './say-entry.js';
import { sayMoment, type Place } from './say-moment.js';

/** Everything that was told on this phone and is not with the service yet. */
export default function WaitingDialog({
  place,
  farmId,
  entries,
  onClose,
}: {
  place: Place;
  farmId?: string;
  entries: readonly Entry[];
  onClose: () => void;
}) {
  const held = heldBack(entries);
  const isWaiting = entries.some(({ state }) => state === 'waiting');
  return (
    <Modal
      opened
      onClose={onClose}
      title="Told on this phone"
      size="lg"
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      <Stack>
        {entries.length === 0 && <Text role="status">All of it is sent.</Text>}
        <ul className="waiting-list">
          {entries.map((entry) => (
            <li key={entry.n}>
              <Waiting entry={entry} place={place} isHeld={held.has(entry)} />
            </li>
          ))}
        </ul>
        {isWaiting && (
          <>
            <Text size="sm">
              It is kept on this phone, and sent when there is signal and Broodfold is open. Nothing
              is sent from a closed page.
            </Text>
            <Button variant="default" style={{ alignSelf: 'start' }} onClick={() => void sendAll()}>
              Try now
            </Button>
          </>
        )}
        {farmId !== undefined && <WhosePhone farmId={farmId} />}
      </Stack>
    </Modal>
  );
}

function Waiting({ entry, place, isHeld }: { entry: Entry; place: Place; isHeld: boolean }) {
  const { state, madeAt, refusal, message } = entry;
  const [isOpen, setOpen] = useState(false);
  const words = sayEntry(entry, place);
  if (state === 'asked') return <ClashQuestion entry={entry} place={place} />;
  const canChange =
    message.does === 'work' || (message.does === 'tell' && message.facts.length === 1);
  return (
    <>
      <p>{words}</p>
      {state === 'refused' ? (
        <>
          {refusalWords(entry, place).map((text) => (
            <Text key={text} c="stop">
              {text}
            </Text>
          ))}
          <Group mt="xs">
            {canChange && refusal?.status !== 404 && (
              <Button variant="default" onClick={() => setOpen(!isOpen)} aria-expanded={isOpen}>
                Change it
              </Button>
            )}
            <ThrowAway entry={entry} words={words} />
          </Group>
          {isOpen && <ChangeEntry entry={entry} place={place} />}
        </>
      ) : (
        <Group justify="space-between">
          <Text size="sm" c="dimmed">
            {sayMoment(madeAt, place)}
            {isHeld && ' · goes once what stands above it is settled'}
          </Text>
          {!entry.mayBeThere && <ThrowAway entry={entry} words={words} />}
        </Group>
      )}
    </>
  );
}

/** As the form would say it; of what contradicts something else the fix says what that is. */
function refusalWords({ refusal, message }: Entry, place: Place): readonly string[] {
  const problems = refusal?.problems ?? [];
  if (problems.length === 0) return [refusal?.detail ?? 'It was not taken.'];
  const fields = message.does === 'tell' ? fieldsOf(message.facts[0]!.kind) : progressFields;
  const words = wordsOfFact(fields, place);
  return problemsOfFact(problems).map((each) =>
    each.code === 'conflict' ? each.fix : describeForForm(each, words, place),
  );
}

const ThrowAway = ({ entry, words }: { entry: Entry; words: string }) => (
  <ConfirmButton
    question="Throw it away? It is nowhere else."
    label={`Throw it away: ${words}`}
    yes="Throw it away"
    onConfirm={() => void throwAway(entry)}
  >
    Throw it away
  </ConfirmButton>
);

/** Who is told to have said what is told here. */
function WhosePhone({ farmId }: { farmId: string }) {
  const people = usePeople(farmId).data ?? [];
  const [who, setWho] = useState(whoUses(farmId));
  if (people.length === 0) return null;
  return (
    <NativeSelect
      label="Who tells things on this phone"
      data={[
        { value: '', label: 'Nobody in particular' },
        ...people.map(({ name }) => ({ value: name, label: name })),
      ]}
      value={who ?? ''}
      onChange={(event) => {
        const name = event.currentTarget.value || undefined;
        setWho(name);
        sayWhoUses(farmId, name);
      }}
    />
  );
}
