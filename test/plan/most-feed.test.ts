import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import { mostFeedKg } from '../../shared/plan/most-feed.js';
import { newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const CASES = tables.strains.flatMap(({ id, purposes }) =>
  purposes.map((purpose) => [id, purpose] as const),
);
/** Nobody opens the feed of a longer time at once. */
const AT_ONCE_DAYS = 84;

describe.each(CASES)('feed opened at once for %s as %s', (strainId, purpose) => {
  const sex = purpose === 'layers' ? 'pullets' : 'straight-run';
  const request = newRequest({ batch: { strainId, purpose, sex, wantedBirds: 40 } });
  const plan = plannedBatch(request);

  it('is never doubted where it is twice what is planned for months, whatever their age', () => {
    const byDay = plan.daily.find(({ id }) => id === 'feed-day')!.values;
    for (const day of [0, 7, 28, 56, 112, 196, 308].filter((each) => each < byDay.length)) {
      const planned = byDay.slice(day, day + AT_ONCE_DAYS).reduce((sum, kg) => sum + kg, 0);
      const most = mostFeedKg(request.batch, addDays(plan.arrivalDate, day), tables);
      expect(most * plan.birds.chicksPlaced.value).toBeGreaterThanOrEqual(2 * planned);
    }
  });
});
