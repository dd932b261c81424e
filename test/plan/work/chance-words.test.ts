import { describe, expect, it } from '@jest/globals';
import {
  betterWords,
  chanceWords,
  elseWords,
  heldUpWords,
  isSlightlyLate,
  lackWords,
  slightlyLateWords,
  unlikelyLines,
} from '../../../shared/plan/work/chance-words.js';
import type { JobOutlook } from '../../../shared/plan/work/job-outlook.js';
import { workOutlookOf } from '../../../shared/plan/work/work-outlook.js';
import { newOwnJob, newWork } from '../../support/season-factories.js';

describe('what is said of a chance', () => {
  const request = newWork({ ownJobs: [newOwnJob({ dueOn: '2027-04-20' })] });
  const outlook = workOutlookOf({ ...request, history: [] }, 5);
  const reader = { units: 'us', today: '2027-04-05' } as const;
  const jobOf = (more: Partial<JobOutlook> = {}): JobOutlook => ({
    ...{ ...outlook.jobs[0]!, chance: 0.5, lost: 0.5, partly: 0, usuallyBy: '2027-04-20' },
    nearlyAlwaysBy: '2027-05-20',
    ...more,
  });
  const suitableDays = { tenth: 1, half: 2, ninetieth: 3, share: 0.6 };

  it('is a share of years, or of few days how many suit, never a share of a day that is past', () => {
    expect(chanceWords(jobOf(), reader)).toBe('Done by Tue, Apr 20: about 5 years in 10.');
    const few = { isFewDays: true, suitableDays, windowDays: 3 };
    expect(chanceWords(jobOf(few), reader)).toBe(
      'In a usual year 2 of the 3 days up to Tue, Apr 20 suit it.',
    );
    expect(chanceWords(jobOf({ ...few, windowDays: 1 }), reader)).toBe(
      'It may be done on Tue, Apr 20 only, a day that suits it about 6 years in 10.',
    );
    expect(chanceWords(jobOf({ alreadyLate: true }), reader)).toMatch(/is past/);
  });

  it('says what becomes of it otherwise', () => {
    expect(elseWords(jobOf({ partly: 0.3, partOfIt: 0.52 }), reader)).toEqual([
      'Not finished: about 5 years in 10.',
      'Partly done: about 3 years in 10, then mostly half of it.',
    ]);
    expect(elseWords(jobOf({ lost: 0, usuallyBy: '2027-04-22' }), reader)).toEqual([
      'Usually done by Thu, Apr 22.',
    ]);
    expect(elseWords(jobOf({ lost: 0.97, partly: 0 }), reader)).toEqual([
      'It hardly ever gets done.',
    ]);
    expect(elseWords(jobOf({ lost: 0.3, partly: 0 }), reader)).toEqual([
      'Not done at all: about 3 years in 10.',
    ]);
    expect(lackWords(jobOf({ lacks: 'before', waitsFor: { key: 'own/b', name: 'Bale' } }))).toMatch(
      /“Bale”.*is late/,
    );
    expect(lackWords(jobOf())).toBeUndefined();
  });

  it('says what would help with the chance before and after, never the same words twice', () => {
    const better = { kind: 'hour-a-week', name: 'Ann', chance: 0.84, gain: 0.34 } as const;
    const words = (chance: number) =>
      betterWords(outlook, { chance }, { ...better, standardError: 0.02 }, reader);
    expect(words(0.5)).toBe(
      'An hour more every Saturday from Ann: about 8 years in 10 instead of 5 years in 10.',
    );
    expect(words(0.77)).toMatch(/84 years in 100 instead of 77/);
    expect(
      betterWords(
        outlook,
        { chance: 0 },
        { kind: 'fewer-birds', birds: 10, chance: 1, gain: 1, standardError: 0 },
        reader,
      ),
    ).toBe('10 birds fewer in this batch: nearly every year instead of hardly ever.');
  });

  it('leads with what animals depend on, and only names what is a little late', () => {
    const must = jobOf({ key: 'own/must', priority: 'must', chance: 0.7 });
    const late = jobOf({ key: 'own/late', name: 'Scrub', chance: 0, nearlyAlwaysBy: '2027-04-22' });
    const jobs = [jobOf(), late, must, jobOf({ key: 'own/likely', chance: 0.9 })];
    const found = { ...outlook, jobs };
    expect(unlikelyLines(found).map(({ job }) => job.key)).toEqual(['own/must', 'own/bed']);
    expect(isSlightlyLate(found, late)).toBe(true);
    expect(slightlyLateWords(found)).toMatch(/up to 3 days after.*: Scrub\./);
  });

  it('tells a chain once, with what is late because of it', () => {
    const mow = jobOf({ key: 'own/mow', name: 'Mow: Pond, Barn' });
    const then = (key: string, name: string, waitsFor: typeof mow, latest: string) =>
      jobOf({ key, name: `${name}: Pond, Barn`, waitsFor, latest, lacks: 'before' });
    const rake = then('own/rake', 'Rake', mow, '2027-04-22');
    const bale = then('own/bale', 'Bale', rake, '2027-04-23');
    const [line, ...more] = unlikelyLines({ ...outlook, jobs: [bale, mow, rake] });
    expect(more).toEqual([]);
    expect(line!.job.name).toBe('Mow: Pond, Barn');
    expect(heldUpWords(line!)).toBe('Late with it: Rake; Bale.');
  });
});
