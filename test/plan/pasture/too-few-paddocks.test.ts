import { describe, expect, it } from '@jest/globals';
import type { Herd } from '../../../shared/farm/herd.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import type { PastureChoices } from '../../../shared/farm/pasture-choices.js';
import { tables } from '../../support/factories.js';
import { newHerd, newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

/** Few animals on much land, so that nothing but the number of paddocks is short. */
const planOf = (count: number, herd: Partial<Herd>, choices: PastureChoices = {}): PasturePlan =>
  plannedPasture(
    newPastureRequest({
      paddocks: newPaddocks(count),
      herds: [newHerd(herd)],
      choices: { to: '2027-06-15', ...choices },
    }),
  );
const noteOf = (plan: PasturePlan) => plan.issues.find((each) => each.code === 'too-few-paddocks');

const REST_DAYS = tables.forages.find((each) => each.id === 'orchardgrass-legume')!.restDays.hot;

describe('too few paddocks for the longest rest', () => {
  it('starts from a rest of 42 days, which stays of 3 days turn into 15 paddocks', () => {
    expect(REST_DAYS).toBe(42);
    expect(planOf(12, { longestStayDays: 3 }).stocking.herds[0]!.paddocks.value).toBe(15); // 42 ÷ 3 + 1
  });

  it('notes how many it takes, for which rest and stay, and what closes it', () => {
    const note = noteOf(planOf(12, { longestStayDays: 3 }))!;
    expect(note.level).toBe('note');
    expect(note.text).toContain(
      'The longest rest, 42 days, with stays of 3 days takes 15 paddocks for Cows; there are 12, which rest 33 days when grazed in turn.', // 11 × 3
    );
    expect(note.text).toContain(
      'Split paddocks until there are 15, for good or in strips with a back fence, as these moves do. A shorter rest is no fix',
    );
    expect(note.text).toContain('nor are stays over 3 days');
  });

  it('says nothing with just enough', () => {
    expect(noteOf(planOf(15, { longestStayDays: 3 }))).toBeUndefined();
    expect(noteOf(planOf(14, { longestStayDays: 3 }))).toBeDefined();
  });

  it('offers stays of up to three days where they are shorter', () => {
    const note = noteOf(planOf(15, { longestStayDays: 1 }))!;
    expect(note.text).toContain('with stays of 1 day takes 43 paddocks'); // 42 ÷ 1 + 1
    expect(note.text).toContain(
      'Split paddocks until there are 43, for good or in strips with a back fence, as these moves do, or let them stay up to 3 days, which takes 15.',
    );
  });

  it('counts with the rest that the household sets', () => {
    const note = noteOf(planOf(16, { longestStayDays: 3 }, { restFactor: 2 }))!;
    expect(note.text).toContain(
      'The longest rest, 84 days, with stays of 3 days takes 29 paddocks',
    );
  });

  it('speaks of one paddock as one', () => {
    const note = noteOf(planOf(1, { longestStayDays: 3 }))!;
    expect(note.text).toContain('takes 15 paddocks for Cows; there is 1, which never rests.');
  });

  it('says nothing where every paddock is closed: more of them are no help', () => {
    const closedDays = [{ from: '2027-01-01', to: '2027-12-31', why: 'reseeding' as const }];
    const { issues } = plannedPasture(
      newPastureRequest({ paddocks: newPaddocks(6, { closedDays }) }),
    );
    const codes = issues.map(({ code }) => code);
    expect(codes).toContain('herd-without-grass');
    expect(codes).not.toContain('too-few-paddocks');
  });
});
