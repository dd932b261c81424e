import { Button, Group, List, Modal, Radio, Stack, Text } from '@mantine/core';
import { createContext, useCallback, useContext, useState, type ReactNode } from 'react';
import type { RowDescription } from '../../../shared/farm/field.js';
import type { Clash } from '../../../shared/farm/merge-row.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import type { Reader } from '../../../shared/units/format.js';
import { wordsOfRow } from './row-words.js';
import { changedFields, type AskAboutClashes, type Deleted } from './save-merging.js';
import { sayValue } from './say-value.js';
import { seenRow } from './seen-rows.js';

/** What is asked above whatever is open, and how it is answered; undefined when it is closed. */
type Ask = <Answer>(
  title: string,
  show: (answer: (given: Answer | undefined) => void) => ReactNode,
) => Promise<Answer | undefined>;

const Asking = createContext<Ask | undefined>(undefined);

function useAsk(): Ask {
  const ask = useContext(Asking);
  if (!ask) throw new Error('A save needs a ClashProvider around it.');
  return ask;
}

/** How to ask about fields that somebody else changed as well, in the words of a form. */
export function useAskAboutClashes(words: FormWords): AskAboutClashes {
  const ask = useAsk();
  return (clashes) =>
    ask<readonly Clash[]>('Somebody else changed this too', (answer) => (
      <Choices clashes={clashes} words={words} answer={answer} />
    ));
}

/** How to ask whether a row is to be deleted that somebody else has changed. */
export function useAskAboutDeleting() {
  const ask = useAsk();
  return (
    seen: Deleted,
    current: Readonly<Record<string, unknown>>,
    described: RowDescription,
    reader: Reader,
  ) =>
    ask<true>('Somebody else changed this', (answer) => (
      <StillDelete
        changed={changedFields(seenRow(seen.id, seen.version), current)}
        words={wordsOfRow(described, reader)}
        answer={answer}
      />
    ));
}

interface Question {
  readonly title: string;
  readonly shown: ReactNode;
  readonly close: () => void;
}

/** Asks, above whatever is open, about rows that somebody else has changed. */
export function ClashProvider({ children }: { children: ReactNode }) {
  // Kept while the dialog closes, which takes a moment.
  const [question, setQuestion] = useState<Question>();
  const [isOpen, setOpen] = useState(false);
  const ask = useCallback<Ask>(
    (title, show) =>
      new Promise((resolve) => {
        const answer = (given: Parameters<typeof resolve>[0]) => {
          setOpen(false);
          resolve(given);
        };
        setQuestion({ title, shown: show(answer), close: () => answer(undefined) });
        setOpen(true);
      }),
    [],
  );
  return (
    <Asking.Provider value={ask}>
      {children}
      <Modal
        opened={isOpen}
        onClose={() => question?.close()}
        title={question?.title}
        zIndex={300}
        closeButtonProps={{ 'aria-label': 'Close' }}
      >
        {question?.shown}
      </Modal>
    </Asking.Provider>
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
