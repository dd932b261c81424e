import { TextInput } from '@mantine/core';
import { useState, type ReactNode } from 'react';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import { dropDraft, keepDraft, readDraft, UnsavedNote, writeDraft } from './kept-draft.js';
import { RowForm, useRowForm } from './row-form.js';

interface Choices<Draft> {
  /** Where the draft is kept: `draftKey`. */
  readonly key: string;
  readonly start: Draft;
  readonly words: FormWords;
  readonly check: (draft: Draft) => Record<string, string>;
  readonly save: (draft: Draft) => Promise<unknown>;
  readonly onDone: () => void;
}

/** The state of a form of a named row whose draft is kept until it is saved or thrown away. */
export function useKeptRowForm<Draft extends { readonly name?: string | undefined }>({
  key,
  start,
  words,
  check,
  save,
  onDone,
}: Choices<Draft>) {
  const [kept] = useState(() => readDraft<Draft>(key));
  const form = useRowForm<Draft>({
    start: kept ?? start,
    words,
    check: (draft) => ({
      ...check(draft),
      ...(draft.name?.trim() ? {} : { name: 'Give it a name.' }),
    }),
    onChange: (draft) => keepDraft(key, draft, start),
    save: async (draft) => {
      dropDraft(key);
      try {
        await save(draft);
      } catch (problem) {
        writeDraft(key, draft);
        throw problem;
      }
    },
    onDone,
  });
  const isRestored = kept !== undefined;
  const isUnsaved = isRestored || JSON.stringify(form.draft) !== JSON.stringify(start);
  return { form, draftIs: { key, isRestored, isUnsaved } };
}

interface Props<Draft extends object> {
  readonly kept: {
    readonly form: ReturnType<typeof useRowForm<Draft>>;
    readonly draftIs: ReturnType<typeof useKeptRowForm>['draftIs'];
  };
  readonly onDone: () => void;
  /** Begins the form anew. */
  readonly onDiscard: () => void;
  readonly children: ReactNode;
}

/** The form itself: what is unsaved, the name, and the fields there are besides. */
export function KeptRowForm<Draft extends { readonly name?: string | undefined }>({
  kept: { form, draftIs },
  onDone,
  onDiscard,
  children,
}: Props<Draft>) {
  return (
    <RowForm form={form} onDone={onDone}>
      {draftIs.isUnsaved && (
        <UnsavedNote
          isRestored={draftIs.isRestored}
          onDiscard={() => {
            dropDraft(draftIs.key);
            onDiscard();
          }}
        />
      )}
      <TextInput
        label="Name"
        data-autofocus
        value={form.draft.name ?? ''}
        error={form.errorAt('name')}
        onChange={(event) => form.set({ name: event.currentTarget.value } as Partial<Draft>)}
      />
      {children}
    </RowForm>
  );
}

/** Fields that begin anew when what was typed into them is thrown away. */
export function Discardable({
  children,
}: {
  children: (onDiscard: () => void, time: number) => ReactNode;
}) {
  const [time, setTime] = useState(0);
  return <>{children(() => setTime(time + 1), time)}</>;
}
