import { Button, Text } from '@mantine/core';
import { useEffect, useState } from 'react';
import { useLearned } from '../../api/record-queries.js';
import type { BatchDraft } from './use-plan.js';

type SetDraft = (change: (old: BatchDraft) => BatchDraft) => void;

/**
 * Figures of the farm's own record, put into a new batch where nobody typed any. With another breed
 * those of the one before go.
 */
export function useOwnFigures(
  farmId: string,
  draft: BatchDraft,
  { isNew, setDraft }: { readonly isNew: boolean; readonly setDraft: SetDraft },
): {
  readonly words: readonly string[];
  readonly isUsed: boolean;
  readonly use: (is: boolean) => void;
} {
  const { purpose = 'meat', strainId } = draft;
  const { data } = useLearned(farmId, { purpose, strainId }, isNew);
  const [put, setPut] = useState<BatchDraft>({});
  useEffect(() => {
    if (!data) return;
    setDraft((old) => ({ ...data.values, ...given(without(old, put)) }));
    setPut(data.values);
    // What was put in before goes with the answer that it came from.
  }, [data]);
  const values: BatchDraft = data?.values ?? {};
  return {
    words: data?.words ?? [],
    isUsed: keysOf(values).some((field) => draft[field] === values[field]),
    use: (is) => setDraft((old) => (is ? { ...old, ...values } : without(old, values))),
  };
}

const keysOf = (values: BatchDraft): (keyof BatchDraft)[] =>
  Object.keys(values) as (keyof BatchDraft)[];

/** A draft without figures that are still as they were put in. */
const without = (draft: BatchDraft, values: BatchDraft): BatchDraft =>
  Object.fromEntries(
    Object.entries(draft).filter(
      ([field, value]) => !(field in values) || value !== values[field as keyof BatchDraft],
    ),
  ) as BatchDraft;

const given = (draft: BatchDraft): BatchDraft =>
  Object.fromEntries(
    Object.entries(draft).filter(([, value]) => value !== undefined),
  ) as BatchDraft;

/** What of the figures comes from the farm's own record, and how to do without. */
export function OwnFigures({ words, isUsed, use }: ReturnType<typeof useOwnFigures>) {
  if (words.length === 0) return null;
  return (
    <div role="note" aria-label="From your record">
      <Text size="sm">
        From your record{isUsed ? '' : ', not used'}: {words.join(' ')}
      </Text>
      <Button variant="subtle" size="compact-md" onClick={() => use(!isUsed)}>
        {isUsed ? 'Use the usual figures' : 'Use your record'}
      </Button>
    </div>
  );
}
