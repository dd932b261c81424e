/** How much a warning matters: `stop` can kill birds or break a rule, `act` needs doing, `note` informs. */
export type IssueLevel = 'stop' | 'act' | 'note';

/** Something in a plan that the household should know, in words made where it was found. */
export interface PlanIssue {
  readonly code: string;
  readonly level: IssueLevel;
  readonly text: string;
}

export const issue = (level: IssueLevel, code: string, text: string): PlanIssue => ({
  code,
  level,
  text,
});
