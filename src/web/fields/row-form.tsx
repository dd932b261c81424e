import { assumedAfter } from '../../../shared/farm/assumed.js';
import { Button, Group, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { Fragment, useRef, useState, type ReactNode } from 'react';
import { Problems } from '../shell/states.js';
import { MarkAssumed } from './assumed.js';
import { useErrorsInView } from './errors-in-view.js';
import { useWayBack } from './form-dialog.js';
import { dropDraft, keepDraft, readDraft, UnsavedNote, writeDraft } from './kept-draft.js';
import { messagesByField, problemsIn, unreadNumbers } from './field-words.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';

interface Choices<Draft> {
  /** What is edited: by this, what was typed outlives a reload or a way to another screen. */
  readonly keptAs: string;
  readonly start: Draft;
  readonly words: FormWords;
  /** What the form can see for itself, by field; the service checks everything again. */
  readonly check?: (draft: Draft) => Record<string, string>;
  readonly save: (draft: Draft) => Promise<unknown>;
  readonly onDone: () => void;
}

/**
 * The state of a form that saves one row. A form has the fields for whose error it asks with
 * `errorAt`: a problem with one of them stands beside it, and every other one below the form.
 */
export function useRowForm<Draft extends object>({
  keptAs,
  start,
  words,
  check,
  save,
  onDone,
}: Choices<Draft>) {
  const [failed, setFailed] = useState<string>();
  const [refusals, setRefusals] = useState(0);
  const [kept] = useState(() => readDraft<Draft>(keptAs));
  const [discards, setDiscards] = useState(0);
  const onForm = useRef(new Set<string>());
  // Filled anew by every rendering, so that a field that has gone is not taken for one there is.
  onForm.current = new Set();
  const form = useForm<Draft>({
    initialValues: kept ?? start,
    onValuesChange: (draft) => keepDraft(keptAs, draft, start),
    validate: (draft) => ({
      ...messagesByField(
        unreadNumbers(draft).filter(({ field }) => onForm.current.has(field)),
        words,
      ),
      ...check?.(draft),
    }),
  });
  const refuse = (why?: string) => {
    setFailed(why);
    setRefusals((before) => before + 1);
  };
  const submit = form.onSubmit(
    async (draft) => {
      dropDraft(keptAs);
      try {
        await save(draft);
        onDone();
      } catch (problem) {
        writeDraft(keptAs, draft);
        const problems = problemsIn(problem);
        form.setErrors(messagesByField(problems, words));
        refuse(0 < problems.length ? undefined : (problem as Error).message);
      }
    },
    () => refuse(),
  );
  return {
    start,
    words,
    draft: form.values,
    set: (part: Partial<Draft>) =>
      Object.entries({ ...part, ...assumedAfter(form.values, Object.keys(part)) }).forEach(
        ([name, value]) => form.setFieldValue(name as never, value as never),
      ),
    setError: (field: string, text: string | undefined) => form.setFieldError(field, text),
    errorAt: (field: string): ReactNode => {
      onForm.current.add(field);
      return form.errors[field];
    },
    elsewhere: (): ReactNode[] => [
      ...Object.entries(form.errors).flatMap(([field, text]) =>
        onForm.current.has(field) ? [] : [text],
      ),
      ...(failed === undefined ? [] : [failed]),
    ],
    isSaving: form.submitting,
    isUnsaved: JSON.stringify(form.values) !== JSON.stringify(start),
    isRestored: kept !== undefined && discards === 0,
    discards,
    discard: () => {
      const gone = Object.fromEntries(Object.keys(form.values).map((name) => [name, undefined]));
      form.setValues({ ...gone, ...start } as Draft);
      form.clearErrors();
      dropDraft(keptAs);
      setDiscards((before) => before + 1);
    },
    refusals,
    submit,
  };
}

type Shown = Pick<
  ReturnType<typeof useRowForm<object>>,
  | 'draft'
  | 'elsewhere'
  | 'isSaving'
  | 'isUnsaved'
  | 'isRestored'
  | 'discard'
  | 'discards'
  | 'refusals'
  | 'start'
  | 'submit'
  | 'words'
>;

/** A form that saves one row: its fields, what is wrong elsewhere, and the way on and back. */
export function RowForm({
  form,
  onDone,
  children,
}: {
  form: Shown;
  onDone: () => void;
  children: ReactNode;
}) {
  const element = useRef<HTMLFormElement>(null);
  useErrorsInView(element, form.refusals);
  const goBack = useWayBack(form, onDone);
  return (
    <form ref={element} noValidate onSubmit={form.submit}>
      <Stack>
        {form.isRestored && <UnsavedNote isRestored onDiscard={form.discard} />}
        {/* Made anew when all is as it was: boxes keep what was typed for themselves. */}
        <Fragment key={form.discards}>
          <MarkAssumed start={form.start} draft={form.draft} words={form.words}>
            {children}
          </MarkAssumed>
        </Fragment>
        <Elsewhere form={form} />
        <Group>
          <Button type="submit" loading={form.isSaving}>
            Save
          </Button>
          <Button variant="subtle" onClick={goBack}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

/** A component of its own, since fields in components of theirs are known only once rendered. */
const Elsewhere = ({ form }: { form: Shown }) => <Problems texts={form.elsewhere()} />;
