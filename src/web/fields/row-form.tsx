import { Button, Group, Stack } from '@mantine/core';
import { useForm } from '@mantine/form';
import { useEffect, useRef, useState, type ReactNode } from 'react';
import { Problems } from '../shell/states.js';
import { MarkAssumed } from './assumed.js';
import { messagesByField, problemsIn, unreadNumbers } from './field-words.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';

interface Choices<Draft> {
  readonly start: Draft;
  readonly words: FormWords;
  /** What the form can see for itself, by field; the service checks everything again. */
  readonly check?: (draft: Draft) => Record<string, string>;
  readonly onChange?: (draft: Draft) => void;
  readonly save: (draft: Draft) => Promise<unknown>;
  readonly onDone: () => void;
}

/**
 * The state of a form that saves one row. A form has the fields for whose error it asks with
 * `errorAt`: a problem with one of them stands beside it, and every other one below the form.
 */
export function useRowForm<Draft extends object>({
  start,
  words,
  check,
  onChange,
  save,
  onDone,
}: Choices<Draft>) {
  const [failed, setFailed] = useState<string>();
  const [refusals, setRefusals] = useState(0);
  const onForm = useRef(new Set<string>());
  // Filled anew by every rendering, so that a field that has gone is not taken for one there is.
  onForm.current = new Set();
  const form = useForm<Draft>({
    initialValues: start,
    ...(onChange ? { onValuesChange: onChange } : {}),
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
      try {
        await save(draft);
        onDone();
      } catch (problem) {
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
      Object.entries(part).forEach(([name, value]) =>
        form.setFieldValue(name as never, value as never),
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
    refusals,
    submit,
  };
}

type Shown = Pick<
  ReturnType<typeof useRowForm<object>>,
  'draft' | 'elsewhere' | 'isSaving' | 'refusals' | 'start' | 'submit' | 'words'
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
  useEffect(() => {
    if (form.refusals === 0) return;
    // In a long form the field that is wrong may be out of sight.
    element.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [form.refusals]);
  return (
    <form ref={element} noValidate onSubmit={form.submit}>
      <Stack>
        <MarkAssumed start={form.start} draft={form.draft} words={form.words}>
          {children}
        </MarkAssumed>
        <Elsewhere form={form} />
        <Group>
          <Button type="submit" loading={form.isSaving}>
            Save
          </Button>
          <Button variant="subtle" onClick={onDone}>
            Back
          </Button>
        </Group>
      </Stack>
    </form>
  );
}

/** A component of its own, since fields in components of theirs are known only once rendered. */
const Elsewhere = ({ form }: { form: Shown }) => <Problems texts={form.elsewhere()} />;
