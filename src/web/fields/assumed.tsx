import { createContext, useContext, type ReactNode } from 'react';
import { unchanged } from '../../../shared/farm/assumed.js';
import type { FormWords } from '../../../shared/problems/field-problem.js';
import './fields.css';

interface Unsaid {
  readonly assumed?: readonly string[] | undefined;
  readonly estimated?: readonly string[] | undefined;
}

/** Labels of the fields of a form that hold what nobody said, and what is said of them instead. */
const Labels = createContext<ReadonlyMap<string, string>>(new Map());

/** Marks, in the form within, every field that still holds what the program filled in. */
export function MarkAssumed({
  start,
  draft,
  words,
  children,
}: {
  start: Unsaid;
  draft: object & Unsaid;
  words: Pick<FormWords, 'labelOf'>;
  children: ReactNode;
}) {
  const marked = (paths: readonly string[] = [], word: string): [string, string][] =>
    unchanged(paths, start, draft).flatMap((path) => {
      const label = words.labelOf(path);
      return label === undefined ? [] : [[label, word]];
    });
  const labels = new Map([
    ...marked(draft.assumed ?? start.assumed, 'assumed'),
    ...marked(start.estimated, 'estimate'),
  ]);
  return <Labels.Provider value={labels}>{children}</Labels.Provider>;
}

/** What is said of a field that nobody has filled in, by its label; undefined where somebody has. */
export function useMark(label: string | undefined): string | undefined {
  const labels = useContext(Labels);
  if (label === undefined || labels.size === 0) return undefined;
  // Labels of forms go on after those of the fields: "Latitude, such as 42.9 N".
  return [...labels].find(([own]) => label === own || /^[,. (]/.test(after(label, own)))?.[1];
}

/** A label, with a quiet word beside it where nobody has said what its field holds. */
export function useMarkedLabel(label: ReactNode): ReactNode {
  const mark = useMark(typeof label === 'string' ? label : undefined);
  if (mark === undefined) return label;
  return (
    <>
      {label} <span className="assumed">{mark}</span>
    </>
  );
}

const after = (label: string, own: string): string =>
  label.startsWith(own) ? label.slice(own.length) : 'another';
