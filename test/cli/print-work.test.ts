import { describe, expect, it } from '@jest/globals';
import type { BetterOdds } from '../../shared/plan/work/better-odds.js';
import type { JobOutlook } from '../../shared/plan/work/job-outlook.js';
import { workOutlookOf } from '../../shared/plan/work/work-outlook.js';
import { workPlanOf } from '../../shared/plan/work/work-plan.js';
import { printOutlook, printWork } from '../../src/cli/print-work.js';
import { newOwnJob, newWork } from '../support/season-factories.js';

const reader = { units: 'us', currency: 'USD', today: '2027-04-05' } as const;
const weekly = newOwnJob({
  ...{ id: 'scrub', name: 'Scrub the waterers', dueOn: '2027-04-07' },
  repeats: { every: 'weekdays', weekdays: [3], until: '2027-05-05' },
});
const person = { id: 'a', name: 'Ann', away: [], hoursByWeekday: [2, 2, 2, 2, 2, 2, 2] };
const request = newWork({ people: [person], ownJobs: [weekly, newOwnJob({ name: 'Dig' })] });

/**
 * Rows of the first table under a heading, their cells joined where they go over several lines.
 *
 * @param short a column whose cells take one line
 */
function rowsUnder(text: string, heading: string, short: number): string[] {
  const [, under = ''] = text.split(`\n${heading}\n`);
  const [, , body = ''] = under.split('└')[0]!.split(/^[┌├].*$/m);
  const rows: string[][] = [];
  for (const line of body.split('\n').filter((each) => each.includes('│'))) {
    const cells = line.split('│').map((cell) => cell.trim());
    if (cells[short] !== '') rows.push(cells);
    else rows.push(rows.pop()!.map((cell, k) => `${cell} ${cells[k]!}`.trim()));
  }
  return rows.map((cells) => cells.join(' | '));
}

describe('work in the terminal', () => {
  it('says work that comes again in one line, and how often it comes', () => {
    const { keep: _keep, ...plan } = workPlanOf(request, 5);
    expect(plan.jobs.filter(({ name }) => name === weekly.name)).toHaveLength(5);
    const [dig, scrub, ...more] = rowsUnder(printWork(plan, reader), 'Work plan', 1).sort();
    expect(more).toEqual([]);
    expect(scrub).toContain('Scrub the waterers (every week, 5 times)');
    expect(dig).not.toContain('times');
  });

  it('gives of its chances those of the time that is hardest to get done', () => {
    const outlook = workOutlookOf({ ...request, history: [] }, 5);
    const jobs = outlook.jobs.map((job, k) => ({ ...job, chance: k === 2 ? 0.9 : 1 }));
    const rows = rowsUnder(printOutlook({ ...outlook, jobs }, reader), 'Likely in time', 2);
    expect(rows).toHaveLength(2);
    expect(rows.find((row) => row.includes('Scrub'))).toMatch(
      /\(every week, 5 times, the hardest of them\) \| Wed, Apr 21 \| about 9 years in 10/,
    );
  });

  it('leads with what is unlikely, and what would help', () => {
    const outlook = workOutlookOf({ ...request, history: [] }, 5);
    const better = { kind: 'helper', date: '2027-04-17', chance: 0.8, gain: 0.6, standardError: 0 };
    const jobs = outlook.jobs.map((job, k): JobOutlook =>
      k === 0
        ? {
            ...job,
            priority: 'must',
            chance: 0.2,
            lost: 0.8,
            lacks: 'hours',
            better: [better as BetterOdds],
          }
        : { ...job, chance: 1 },
    );
    const text = printOutlook({ ...outlook, jobs }, reader);
    expect(text).toMatch(
      /Probably not in time\n.*: about 2 years in 10\. .*Not (?:done at all|finished): about 8 years in 10\..*other work takes the hours/,
    );
    expect(text).toMatch(
      /A helper for 6 h on Sat, Apr 17: about 8 years in 10 instead of 2 years in 10\./,
    );
  });

  it('says of work for which nobody has time, once for all its times', () => {
    const { keep: _keep, ...plan } = workPlanOf({ ...request, people: [] }, 5);
    const rows = rowsUnder(printWork(plan, reader), 'No time for these', 2);
    expect(rows.filter((row) => row.includes('Scrub'))).toHaveLength(1);
  });
});
