import { Button, Group, List, Modal, Radio, Stack, Text } from '@mantine/core';
import { useState } from 'react';
import type { Clash } from '../../../shared/farm/merge-row.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import type { Answers, Question } from './questions.js';
import { sayValue } from './say-value.js';

const TITLES: Record<Question['about'], string> = {
  clashes: 'Somebody else changed this too',
  deleting: 'Somebody else changed this',
  leaving: 'Leave without saving?',
};

/** One question above whatever is open; closing it is no answer. */
export default function QuestionDialog({
  isOpen,
  question,
  answer,
}: {
  isOpen: boolean;
  question: Question;
  answer: (given: Answers[keyof Answers] | undefined) => void;
}) {
  return (
    <Modal
      opened={isOpen}
      onClose={() => answer(undefined)}
      title={TITLES[question.about]}
      zIndex={300}
      closeButtonProps={{ 'aria-label': 'Close' }}
    >
      {question.about === 'clashes' ? (
        <Choices clashes={question.clashes} words={question.words} answer={answer} />
      ) : question.about === 'deleting' ? (
        <StillDelete changed={question.changed} words={question.words} answer={answer} />
      ) : (
        <StillLeave answer={answer} />
      )}
    </Modal>
  );
}

function StillLeave({ answer }: { answer: (given: true | undefined) => void }) {
  return (
    <Stack>
      <Text>What you typed is not saved yet.</Text>
      <Group>
        <Button data-autofocus onClick={() => answer(undefined)}>
          Keep typing
        </Button>
        <Button variant="default" onClick={() => answer(true)}>
          Throw it away
        </Button>
      </Group>
    </Stack>
  );
}

/** What somebody else made of a row that is to be deleted. */
function StillDelete({
  changed,
  words,
  answer,
}: {
  changed: readonly (readonly [field: string, value: unknown])[];
  words: FormWords;
  answer: (given: true | undefined) => void;
}) {
  return (
    <Stack>
      <Text>It is not deleted yet. Since you last saw it, somebody else saved:</Text>
      <List>
        {changed.map(([field, value]) => (
          <List.Item key={field}>
            {words.labelOf(field) ?? field}: {sayValue(field, value, words)}
          </List.Item>
        ))}
      </List>
      <Group>
        <Button color="stop" onClick={() => answer(true)}>
          Delete it all the same
        </Button>
        <Button variant="default" onClick={() => answer(undefined)}>
          Keep it
        </Button>
      </Group>
    </Stack>
  );
}

type Whose = 'mine' | 'theirs';

function Choices({
  clashes,
  words,
  answer,
}: {
  clashes: readonly Clash[];
  words: FormWords;
  answer: (keep: readonly Clash[] | undefined) => void;
}) {
  const [chosen, setChosen] = useState<Readonly<Record<string, Whose>>>({});
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        event.stopPropagation();
        answer(clashes.filter(({ field }) => chosen[field] === 'mine'));
      }}
    >
      <Stack>
        <Text>While you were at it, somebody else saved something else here.</Text>
        {clashes.map(({ field, mine, theirs }) => (
          <Radio.Group
            key={field}
            label={words.labelOf(field) ?? field}
            value={chosen[field] ?? ''}
            onChange={(whose) => setChosen({ ...chosen, [field]: whose as Whose })}
          >
            <Stack gap="xs" mt="xs">
              <Radio value="theirs" label={`Keep theirs: ${sayValue(field, theirs, words)}`} />
              <Radio value="mine" label={`Keep mine: ${sayValue(field, mine, words)}`} />
            </Stack>
          </Radio.Group>
        ))}
        <Group>
          <Button type="submit" disabled={clashes.some(({ field }) => !chosen[field])}>
            Save
          </Button>
          <Button variant="subtle" onClick={() => answer(undefined)}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}
