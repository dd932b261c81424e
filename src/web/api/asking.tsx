import {
  createContext,
  lazy,
  Suspense,
  useCallback,
  useContext,
  useState,
  type ReactNode,
} from 'react';
import type { RowDescription } from '../../../shared/farm/field.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import type { Reader } from '../../../shared/units/format.js';
import type { Answers, Question } from './questions.js';
import { wordsOfRow } from './row-words.js';
import { changedFields, type AskAboutClashes, type Deleted } from './save-merging.js';
import { seenRow } from './seen-rows.js';

const QuestionDialog = lazy(() => import('./question-dialog.js'));

type Ask = <About extends Question['about']>(
  question: Extract<Question, { about: About }>,
) => Promise<Answers[About] | undefined>;

const Asking = createContext<Ask | undefined>(undefined);

function useAsk(): Ask {
  const ask = useContext(Asking);
  if (!ask) throw new Error('A save needs an AskingProvider around it.');
  return ask;
}

/** How to ask about fields that somebody else changed as well, in the words of a form. */
export function useAskAboutClashes(words: FormWords): AskAboutClashes {
  const ask = useAsk();
  return (clashes) => ask({ about: 'clashes', clashes, words });
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
    ask({
      about: 'deleting',
      changed: changedFields(seenRow(seen.id, seen.version), current),
      words: wordsOfRow(described, reader),
    });
}

/** How to ask whether what was typed may be thrown away. */
export function useAskAboutLeaving(): () => Promise<boolean> {
  const ask = useAsk();
  return useCallback(async () => (await ask({ about: 'leaving' })) === true, [ask]);
}

/** The dialog itself gives the focus back after ten. */
const AFTER_CLOSING_MS = 20;

interface Asked {
  readonly question: Question;
  readonly answer: (given: Answers[keyof Answers] | undefined) => void;
}

/** Asks, above whatever is open. The dialog comes when there is something to ask. */
export function AskingProvider({ children }: { children: ReactNode }) {
  // Kept while the dialog closes, which takes a moment.
  const [asked, setAsked] = useState<Asked>();
  const [isOpen, setOpen] = useState(false);
  const ask = useCallback<Ask>(
    (question) =>
      new Promise((resolve) => {
        const before = document.activeElement;
        const answer: Asked['answer'] = (given) => {
          setOpen(false);
          resolve(given as Parameters<typeof resolve>[0]);
          // Back to what was being typed: a dialog that was just loaded has not seen what it took the focus from.
          // Whoever leaves it does not go back: the form that is left gives the keys on.
          const isLeft = question.about === 'leaving' && given === true;
          if (before instanceof HTMLElement && !isLeft)
            setTimeout(() => before.focus({ preventScroll: true }), AFTER_CLOSING_MS);
        };
        setAsked({ question, answer });
        // Not within the press of Esc that asks: the dialog would take it for its own.
        setTimeout(() => setOpen(true));
      }),
    [],
  );
  return (
    <Asking.Provider value={ask}>
      {children}
      {asked && (
        <Suspense>
          <QuestionDialog isOpen={isOpen} question={asked.question} answer={asked.answer} />
        </Suspense>
      )}
    </Asking.Provider>
  );
}
