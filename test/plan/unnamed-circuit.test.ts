import { describe, expect, it } from '@jest/globals';
import type { HeatSourceKind } from '../../shared/farm/facility.js';
import { newBrooder, newFarm, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

function said(
  count: number,
  units: 'us' | 'metric',
  { kind = 'lamp', country }: { kind?: HeatSourceKind; country?: string } = {},
) {
  const { heat } = newBrooder();
  const facilities = [newBrooder({ heat: { ...heat, kind, count, wattsEach: 250 } })];
  const farm = newFarm({ units, ...(country === undefined ? {} : { country }) });
  const { issues } = plannedBatch(
    newRequest({ farm, facilities, batch: { brooderId: 'brooder' } }),
  );
  return issues.filter(({ code }) => code === 'circuit-not-named');
}

// National Electrical Code, as quoted (second-hand): 80 % for hours on end, of 15 A at 120 V 1,440 W.
describe('heaters whose circuit nobody named', () => {
  it('may be as many as the smallest common circuit carries', () => {
    expect(said(5, 'us')).toEqual([]);
    expect(said(6, 'us')[0]!.text).toMatch(/draw 1,?500 W.*15 A at 120 V.*1,?440 W/);
  });

  it('may be more where houses have 230 V', () => {
    expect(said(7, 'metric')).toEqual([]);
    expect(said(8, 'metric')).toHaveLength(1);
  });

  it('goes by the country before it goes by the units, and says how many circuits', () => {
    expect(said(7, 'metric', { country: 'CA' })).toHaveLength(1);
    expect(said(7, 'us', { country: 'GB' })).toEqual([]);
    expect(said(20, 'us')[0]!.text).toContain('share them between 4');
  });

  it('are not asked about where gas heats', () => {
    expect(said(6, 'us', { kind: 'gas' })).toEqual([]);
  });
});
