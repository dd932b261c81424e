import { expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Progress } from '../../../shared/farm/job.js';
import type { KeptPlan } from '../../../shared/farm/kept-plan.js';
import { planAnimals } from '../../../shared/plan/farm/animal-plans.js';
import { planWork } from '../../../shared/plan/farm/work-of-farm.js';
import { checkDto } from '../../../src/common/check-dto.js';
import { FarmDocumentDto } from '../../../src/documents/farm-document.dto.js';
import { pictureOfDocument } from '../../../src/picture/farm-document.js';
import { readExample } from '../../support/examples.js';
import { tables } from '../../support/factories.js';

it('work of today that was put off, once or twice, stands on today again when that is taken back', () => {
  const document = checkDto(FarmDocumentDto, readExample('household'));
  const picture = pictureOfDocument(document, tables, Date.UTC(2027, 3, 5, 12));
  const { today } = picture;
  const plan = (kept: KeptPlan | undefined, told: readonly Progress[] = []) => {
    const progress = [...picture.progress, ...told];
    const now = { ...picture, progress, keptPlans: kept ? [kept] : [] };
    return planWork(now, tables, planAnimals(now, tables));
  };
  const placeOf = ({ jobs }: ReturnType<typeof plan>, key: string) =>
    jobs.find((job) => job.key === key)!.pieces;
  const first = plan(undefined);
  const ofToday = first.jobs.filter(({ pieces }) => pieces[0]?.date === today);
  expect(ofToday.length).toBeGreaterThan(2);
  for (const { key, pieces } of ofToday) {
    const once = plan(first.keep, [{ key, notBefore: addDays(today, 1) }]);
    expect(placeOf(once, key)).not.toEqual(pieces);
    expect(placeOf(plan(once.keep), key)).toEqual(pieces);
    const twice = plan(once.keep, [{ key, notBefore: addDays(today, 3) }]);
    expect(placeOf(plan(twice.keep), key)).toEqual(pieces);
  }
});
