import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

/** A batch in air that is the same all year. */
function planAt(airC: number, batch: Partial<Batch>): BatchPlan {
  const months = Array<number>(12).fill(airC);
  return plannedBatch(
    newRequest({
      climate: climateFromMonthlyMeans(months, months, 3),
      batch: { arrivalDate: '2027-05-05', moveOutDate: '2027-07-01', ...batch },
    }),
  );
}

const series = (plan: BatchPlan, id: string): readonly number[] =>
  plan.daily.find((each) => each.id === id)!.values;

describe.each([
  ['ducks', { strainId: 'pekin-duck', leaveAgeDays: 56, moveOutDate: '2027-05-28' }],
  ['turkeys', { strainId: 'turkey', leaveAgeDays: 126 }],
])('%s outdoors', (_, batch) => {
  const [mild, hot, cold] = [19, 29, 4].map((airC) => planAt(airC, batch));

  it('weigh and eat less in the heat', () => {
    const weightOf = (plan: BatchPlan | undefined) => plan!.leaving!.liveEach.value;
    expect(weightOf(hot)).toBeLessThan(0.98 * weightOf(mild));
    expect(hot!.feed.total.value).toBeLessThan(0.98 * mild!.feed.total.value);
  });

  it('eat more in the cold', () => {
    expect(cold!.feed.total.value).toBeGreaterThan(1.02 * mild!.feed.total.value);
  });

  it('say whose answer to the air stands in, as an estimate', () => {
    const { liveEach } = hot!.leaving!;
    expect(['estimate', 'assumed']).toContain(liveEach.mark);
    const { value } = liveEach.inputs.find(({ label }) => label === 'Heat and cold')!;
    expect(value).toContain('chickens');
  });
});

describe('pullets outdoors', () => {
  const batch = { purpose: 'layers', strainId: 'white-layer', sex: 'pullets' } as const;
  const [mild, hot] = [19, 29].map((airC) => planAt(airC, batch));
  const lost = series(mild!, 'weight-mean').map(
    (kg, day) => kg - series(hot!, 'weight-mean')[day]!,
  );
  const firstEgg = series(mild!, 'eggs-day').findIndex((eggs) => 0 < eggs);

  it('are lighter at the first egg after a hot summer', () => {
    expect(lost[firstEgg]!).toBeGreaterThan(0.02);
  });

  it('lose no more once they lay: heat is in their feed and their eggs', () => {
    const inLay = lost.slice(firstEgg + 1);
    expect(Math.max(...inLay) - Math.min(...inLay)).toBeLessThan(1e-4);
  });

  it('eat less to the first egg', () => {
    const feed = (plan: BatchPlan | undefined) => plan!.laying!.feedToFirstEgg.value;
    expect(feed(hot)).toBeLessThan(0.98 * feed(mild));
  });
});
