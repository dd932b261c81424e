import { allSources, weakestOf } from '../explain/quantity.js';
import type { Mark, Sourced } from '../explain/formula.js';

/** How much a warning matters: `stop` can kill birds or break a rule, `act` needs doing, `note` informs. */
export type IssueLevel = 'stop' | 'act' | 'note';

/** Something in a plan that the household should know, in words made where it was found. */
export interface PlanIssue {
  readonly code: string;
  readonly level: IssueLevel;
  readonly text: string;
  /** Of the figures of tables that it goes by; left out where it goes by none. */
  readonly mark?: Mark;
  readonly sources?: readonly string[];
}

/** @param rows of tables whose figures say that there is something to warn of */
export const issue = (
  level: IssueLevel,
  code: string,
  text: string,
  rows: readonly Sourced[] = [],
): PlanIssue => ({
  code,
  level,
  text,
  ...(rows.length === 0
    ? {}
    : { mark: weakestOf('own-record', rows), sources: allSources([], rows) }),
});
