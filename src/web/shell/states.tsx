import { Alert, Center, Loader } from '@mantine/core';
import type { ReactNode } from 'react';
import { describeForForm, type FormWords } from '../../../shared/problems/field-problem.js';
import { ApiError, NOT_REACHED } from '../api/client.js';

interface Query<T> {
  readonly data: T | undefined;
  readonly error: Error | null;
}

/** The data of several queries, or what to show until they are there. */
export function useAll<const T extends readonly Query<unknown>[]>(
  ...queries: T
): { data: { [K in keyof T]: T[K] extends Query<infer D> ? D : never } } | { waiting: ReactNode } {
  const failed = queries.find((q) => q.error && (q.data === undefined || isGone(q.error)));
  if (failed)
    return { waiting: isNotReached(failed.error) ? <NotHere /> : <Failure error={failed.error} /> };
  if (queries.some((q) => q.data === undefined)) {
    return { waiting: <Working label="Loading" /> };
  }
  return { data: queries.map((q) => q.data) as never };
}

const isNotReached = (error: Error | null): boolean =>
  error instanceof ApiError && error.problem.status === NOT_REACHED;

/** What somebody deleted is not shown as it was read before. */
const isGone = (error: Error): boolean => error instanceof ApiError && error.problem.status === 404;

/** A screen that was never opened while there was signal. */
const NotHere = () => (
  <Alert color="warn" title="Not on this phone yet">
    Broodfold is not answering, and this was not opened here before. Open it once with signal, then
    it is here without. Today, the round and all that you opened before are here now.
  </Alert>
);

/** Says that something is being worked out. */
export function Working({ label }: { label: string }) {
  return (
    <Center p="xl" role="status" aria-label={label}>
      <Loader />
    </Center>
  );
}

/** An error as an alert; nothing when there is none. A form hands in its words for its fields. */
export function Failure({ error, words }: { error: Error | null | undefined; words?: FormWords }) {
  if (!error) return null;
  const problems = error instanceof ApiError ? (error.problem.problems ?? []) : [];
  const texts = problems.map((p) => (words ? describeForForm(p, words, words.reader) : p.text));
  return <Problems texts={0 < texts.length ? texts : [error.message]} />;
}

/** What did not work, a line each; nothing when all did. */
export function Problems({ texts }: { texts: readonly ReactNode[] }) {
  if (texts.length === 0) return null;
  return (
    <Alert color="stop" title="That did not work" role="alert">
      {texts.map((text, k) => (
        <div key={k}>{text}</div>
      ))}
    </Alert>
  );
}
