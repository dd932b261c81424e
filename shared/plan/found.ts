import type { DailySeries } from '../explain/daily-series.js';
import type { PlanIssue } from '../problems/plan-issue.js';

/** What the household should know of a section of a plan, beside its part. */
export interface Findings {
  readonly issues: readonly PlanIssue[];
  /** Keys of the cautions that belong to it. */
  readonly cautions: readonly string[];
  /** Values by day. */
  readonly series: readonly DailySeries[];
}

/** What a section of a plan found. Sections write nowhere: who calls them joins their findings. */
export interface Found<Part> extends Findings {
  readonly part: Part;
}

export const found = <Part>(part: Part, findings: Partial<Findings> = {}): Found<Part> => ({
  part,
  issues: findings.issues ?? NOTHING,
  cautions: findings.cautions ?? NOTHING,
  series: findings.series ?? NOTHING,
});

/** Findings of sections one after the other, each caution once. */
export function joined(sections: readonly Partial<Findings>[]): Findings {
  const issues: PlanIssue[] = [];
  const cautions = new Set<string>();
  const series: DailySeries[] = [];
  for (const section of sections) {
    if (section.issues) issues.push(...section.issues);
    if (section.series) series.push(...section.series);
    for (const caution of section.cautions ?? NOTHING) cautions.add(caution);
  }
  return { issues, cautions: [...cautions], series };
}

const LEVELS = { stop: 0, act: 1, note: 2 } as const;

/** Issues by how pressing they are, those of one level in the order they were found. */
export const byLevel = (issues: readonly PlanIssue[]): PlanIssue[] =>
  [...issues].sort((a, b) => LEVELS[a.level] - LEVELS[b.level]);

const NOTHING: readonly never[] = [];
