import { describe, expect, it } from '@jest/globals';
import type { Farm } from '../../shared/farm/farm.js';
import type { Batch } from '../../shared/farm/batch.js';
import { newRequest } from '../support/factories.js';
import { foundArrivals, plannedBatch } from '../support/pictures.js';

const HOLIDAYS = [{ date: '2027-05-31', name: 'Memorial Day' }];
const postIssue = (batch: Partial<Batch>, farm: Partial<Farm> = {}) =>
  plannedBatch(newRequest({ batch, farm, publicHolidays: HOLIDAYS })).issues.find(({ code }) =>
    code.startsWith('no-post'),
  );

describe('days without post', () => {
  it.each([
    ['2027-05-05', undefined], // a Wednesday
    ['2027-05-09', 'a Sunday'],
    ['2027-05-31', 'Memorial Day'],
    ['2027-06-01', undefined],
  ])('on %s: %s', (arrivalDate, because) => {
    const found = postIssue({ arrivalDate });
    if (because === undefined) expect(found).toBeUndefined();
    else expect(found!.text).toContain(because);
  });

  it('takes the farm’s own list, and names a day before on which post comes', () => {
    const found = postIssue(
      { arrivalDate: '2027-05-31' },
      { noDeliveryDates: ['2027-05-29', '2027-06-04'] },
    );
    expect(found!.text).toContain('Fri 28 May'); // before Sunday, and the Saturday of the list
    const own = postIssue({ arrivalDate: '2027-06-04' }, { noDeliveryDates: ['2027-06-04'] });
    expect(own!.text).toContain('on your list');
  });

  it('says when a late box would wait over a holiday', () => {
    const found = postIssue({ arrivalDate: '2027-06-03' }, { noDeliveryDates: ['2027-06-04'] });
    expect(found).toMatchObject({ code: 'no-post-next-day', level: 'note' });
  });

  it('says nothing of chicks that are fetched, or came long ago', () => {
    expect(postIssue({ arrivalDate: '2027-05-09', hatchToArrivalDays: 0 })).toBeUndefined();
    expect(postIssue({ arrivalDate: '2026-11-22' })).toBeUndefined();
  });

  it('takes points off the week in the finder', () => {
    const weeks = foundArrivals(newRequest({ publicHolidays: HOLIDAYS }), {
      from: '2027-05-20',
      to: '2027-06-10',
      weekday: 1,
    });
    const texts = (date: string) =>
      weeks.find(({ arrivalDate }) => arrivalDate === date)!.reasons.map(({ text }) => text);
    expect(texts('2027-05-31').join(' ')).toContain('Memorial Day');
    expect(texts('2027-06-07').join(' ')).not.toContain('No post');
  });
});
