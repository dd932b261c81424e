import type { Person } from '../../farm/farm.js';
import { besides, problemsOfRow } from '../../farm/check-row.js';
import { jobFields, type OwnJob } from '../../farm/job.js';
import type { FieldProblem } from '../../problems/field-problem.js';

/** What is wrong with one job of the household's own, by itself and beside the others. */
export function ownJobProblems(
  job: OwnJob,
  { people, ownJobs }: { people: readonly Person[]; ownJobs: readonly OwnJob[] },
): FieldProblem[] {
  const problems: FieldProblem[] = [];
  const { personIds, waitsForId, waitDays = 0, mostWaitDays = waitDays, conditions } = job;
  const known = people.map(({ id }) => id);
  (personIds ?? []).forEach((id, i) => {
    if (!known.includes(id))
      problems.push({
        field: `personIds.${i}`,
        code: 'not-allowed',
        given: id,
        allowed: known,
        fix: 'Choose among the people of the farm.',
      });
  });
  const able = personIds?.length ?? people.length;
  if (0 < people.length && 0 < able && able < (conditions.peopleNeeded ?? 1))
    problems.push({
      field: 'conditions.peopleNeeded',
      code: 'out-of-bounds',
      given: conditions.peopleNeeded,
      max: able,
      fix: 'It takes more people than can do it: let more do it, or make it a job for fewer.',
    });
  if (mostWaitDays < waitDays)
    problems.push({
      field: 'mostWaitDays',
      code: 'out-of-bounds',
      given: mostWaitDays,
      min: waitDays,
      fix: 'It waits longer than that already: give as many days or more, or leave it empty.',
    });
  if (waitsForId === undefined && job.mostWaitDays !== undefined)
    problems.push({
      field: 'mostWaitDays',
      code: 'not-allowed',
      given: job.mostWaitDays,
      fix: 'It is counted from another job: say which one it comes after, or leave it empty.',
    });
  if (job.canBeSpread && job.mostWaitDays !== undefined)
    problems.push({
      field: 'mostWaitDays',
      code: 'conflict',
      given: job.mostWaitDays,
      fix: 'Only work that is done in one go is held to it: do not let it be spread over days, or leave it empty.',
    });
  if (waitsForId !== undefined) problems.push(...waitProblems(job, ownJobs));
  return besides(problemsOfRow(jobFields, job, '', 'passed'), problems);
}

function waitProblems(job: OwnJob, ownJobs: readonly OwnJob[]): FieldProblem[] {
  const byId = new Map(ownJobs.map((each) => [each.id, each]));
  const path = [job];
  for (;;) {
    const next: string | undefined = path.at(-1)!.waitsForId;
    if (next === undefined) return [];
    const found = byId.get(next);
    if (!found) {
      // Only the job itself is being saved: what others wait for was checked then.
      return 1 < path.length
        ? []
        : [
            {
              field: 'waitsForId',
              code: 'not-allowed',
              given: next,
              allowed: ownJobs.filter(({ id }) => id !== job.id).map(({ id }) => id),
              fix: 'Choose another job of the farm, or none.',
            },
          ];
    }
    if (path.includes(found)) {
      const names = [...path.slice(path.indexOf(found)), found].map(({ name }) => name);
      return [
        {
          field: 'waitsForId',
          code: 'conflict',
          given: next,
          fix: `These would wait for each other in a circle: ${names.join(' → ')}.`,
        },
      ];
    }
    path.push(found);
  }
}
