import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { byLevel, found, joined } from '../../shared/plan/found.js';
import { issue, type PlanIssue } from '../../shared/problems/plan-issue.js';

const anyIssue = fc
  .record({ level: fc.constantFrom('stop' as const, 'act' as const, 'note' as const), n: fc.nat() })
  .map(({ level, n }): PlanIssue => issue(level, `code-${n}`, `Text ${n}.`));
const anySection = fc
  .record({
    issues: fc.array(anyIssue, { maxLength: 3 }),
    cautions: fc.array(fc.constantFrom('cold', 'post', 'manure', 'circuit'), { maxLength: 3 }),
  })
  .map((findings) => found('part', findings));

describe('joined', () => {
  it('keeps every issue in the order of the sections, and each caution once', () => {
    fc.assert(
      fc.property(fc.array(anySection), (sections) => {
        const { issues, cautions } = joined(sections);
        expect(issues).toEqual(sections.flatMap((each) => each.issues));
        expect(cautions).toEqual([...new Set(sections.flatMap((each) => each.cautions))]);
      }),
    );
  });

  it('gives the same however the sections are put together first', () => {
    fc.assert(
      fc.property(fc.array(anySection), fc.array(anySection), (some, others) => {
        expect(joined([joined(some), joined(others)])).toEqual(joined([...some, ...others]));
      }),
    );
  });

  it('finds nothing in sections that found nothing', () => {
    expect(joined([found(1), {}])).toEqual({ issues: [], cautions: [], series: [] });
  });
});

describe('byLevel', () => {
  it('puts what can kill birds first, then what needs doing, each in the order found', () => {
    const issues = [
      issue('note', 'a', ''),
      issue('act', 'b', ''),
      issue('stop', 'c', ''),
      issue('act', 'd', ''),
      issue('stop', 'e', ''),
    ];
    expect(byLevel(issues).map(({ code }) => code)).toEqual(['c', 'e', 'b', 'd', 'a']);
  });
});
