import { describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork } from '../../../shared/plan/farm/work-of-farm.js';
import { checkDto } from '../../../src/common/check-dto.js';
import { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { readExample } from '../../support/examples.js';
import { tables } from '../../support/factories.js';

const household = pictureOfDocument(checkDto(FarmDocumentDto, readExample('household')), tables, 0);
const animals = planAnimals(household, tables);
const planOf = (more: Partial<FarmPicture>) => planWork({ ...household, ...more }, tables, animals);

describe('last days', () => {
  // A plan without them that keeps them is as good with them.
  it('lose no hour that is done in time without them', () => {
    const jobs = household.jobs.map(({ noUseAfter: _last, ...job }) => job);
    const free = planOf({ jobs });
    const bound = planOf({ jobs: jobs.map((job) => ({ ...job, noUseAfter: job.dueOn })) });
    const late = new Set(free.jobs.filter(({ lateDays }) => 0 < lateDays).map(({ key }) => key));
    const lost = bound.jobs.filter(({ pieces, lostHours }) => pieces.length === 0 || 0 < lostHours);
    expect(lost.filter(({ key }) => key.startsWith('own/') && !late.has(key))).toEqual([]);
    expect(bound.cost).toBeLessThanOrEqual(free.cost + 1e-6);
  });
});
