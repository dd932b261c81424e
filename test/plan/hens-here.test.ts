import { describe, expect, it } from '@jest/globals';
import { planBatch } from '../../shared/plan/batch-plan.js';
import { lightFrom } from '../../shared/plan/lay-lamp.js';
import { tables } from '../support/factories.js';
import { pictureOf, start, TODAY } from '../support/starts.js';

const planOf = (layers: NonNullable<Parameters<typeof start>[0]['layers']>) => {
  const rows = start({ layers });
  return planBatch(
    { ...pictureOf(rows), headChanges: rows.headChanges },
    tables,
    rows.batches[0]!.id,
  );
};

describe('hens that are here', () => {
  const plan = planOf({ birds: 25, areHere: true });

  it('lay, so that layer feed is not too early for them as it is for pullets to come', () => {
    expect(String(plan.laying!.firstEgg.value) < TODAY).toBe(true);
    expect(plan.cautions).not.toContain('calcium');
    expect(planOf({ birds: 25 }).cautions).toContain('calcium');
  });

  it('have the light of today and of days to come, none that is past', () => {
    const steps = lightFrom(plan.laying!.light, TODAY);
    expect(steps.length).toBeLessThan(plan.laying!.light.length);
    expect(steps[0]!.from <= TODAY).toBe(true);
    expect(steps.slice(1).every(({ from }) => TODAY < from)).toBe(true);
  });
});
