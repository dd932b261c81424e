import { describe, expect, it } from '@jest/globals';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

describe('a brooder that is too hot in its last weeks', () => {
  const hotOf = (arrivalDate: string, moveOutRuleId?: string) => {
    const batch = {
      brooderId: 'brooder',
      arrivalDate,
      ...(moveOutRuleId ? { moveOutRuleId } : {}),
    };
    const plan = plannedBatch(newRequest({ batch }));
    const issue = plan.issues.find(({ code }) => code === 'brooder-hot');
    return { issue, moveOut: plan.outdoors.moveOut?.value };
  };

  it('names a way to go by that has them out before the hot week', () => {
    const { issue, moveOut } = hotOf('2027-06-02', 'careful');
    expect(moveOut).toBe('2027-07-09');
    expect(issue!.text).toMatch(/week of Tue 29 Jun 2027.*Or have them out before it: “From 3 /);
    expect(issue!.text).toMatch(/has them out on \w{3} \d+ Jun 2027; it takes: \w/);
  });

  it('names a shaded pen by day where no way is sooner', () => {
    const { issue } = hotOf('2027-06-30');
    expect(issue!.text).toMatch(/get used to it: a shaded pen by day, back in for the night\.$/);
  });

  it('names one as well where the way that was chosen never has them out', () => {
    const { issue, moveOut } = hotOf('2027-06-30', 'careful');
    expect(moveOut).toBeUndefined();
    expect(issue!.text).toContain('Or have them out before it: “From 3 weeks');
  });
});
