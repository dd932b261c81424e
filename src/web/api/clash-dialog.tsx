import { Button, Group, Modal, Radio, Stack, Text } from '@mantine/core';
import { createContext, useCallback, useContext, useState, type ReactNode } from 'react';
import type { Clash } from '../../../shared/farm/merge-row.js';
import type { AskAboutClashes } from './save-merging.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import { sayValue } from './say-value.js';

type Ask = (clashes: readonly Clash[], words: FormWords) => ReturnType<AskAboutClashes>;

const Asking = createContext<Ask | undefined>(undefined);

/** How to ask about fields that somebody else changed as well, in the words of a form. */
export function useAskAboutClashes(words: FormWords): AskAboutClashes {
  const ask = useContext(Asking);
  if (!ask) throw new Error('A save needs a ClashProvider around it.');
  return (clashes) => ask(clashes, words);
}

interface Question {
  readonly clashes: readonly Clash[];
  readonly words: FormWords;
  readonly answer: (keep: readonly Clash[] | undefined) => void;
}

/** Asks, field by field, whose change holds, above whatever form is open. */
export function ClashProvider({ children }: { children: ReactNode }) {
  const [question, setQuestion] = useState<Question>();
  const ask = useCallback<Ask>(
    (clashes, words) =>
      new Promise((resolve) =>
        setQuestion({
          clashes,
          words,
          answer: (keep) => {
            setQuestion(undefined);
            resolve(keep);
          },
        }),
      ),
    [],
  );
  return (
    <Asking.Provider value={ask}>
      {children}
      <Modal
        opened={question !== undefined}
        onClose={() => question?.answer(undefined)}
        title="Somebody else changed this too"
        zIndex={300}
        closeButtonProps={{ 'aria-label': 'Close' }}
      >
        {question && <Choices {...question} />}
      </Modal>
    </Asking.Provider>
  );
}

type Whose = 'mine' | 'theirs';

function Choices({ clashes, words, answer }: Question) {
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
