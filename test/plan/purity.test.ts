import { describe, expect, it } from '@jest/globals';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch, foundArrivals } from '../support/pictures.js';

function deepFreeze<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value);
    Object.values(value).forEach(deepFreeze);
  }
  return value;
}

/** Text knows no −0; nothing else may get lost on the way. */
function withoutMinusZero(value: unknown): unknown {
  if (typeof value === 'number') return value + 0;
  if (Array.isArray(value)) return value.map(withoutMinusZero);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => [key, withoutMinusZero(each)]),
  );
}

const REQUESTS: readonly (readonly [string, PlanRequest])[] = [
  [
    'meat birds',
    newRequest({ batch: { brooderId: 'brooder' }, previousArrivalDate: '2027-04-28' }),
  ],
  [
    'layers',
    newRequest({ batch: { brooderId: 'brooder', purpose: 'layers', strainId: 'heritage' } }),
  ],
  [
    'gas',
    newRequest({
      batch: { brooderId: 'brooder' },
      facilities: [
        newBrooder({ heat: { kind: 'gas', wattsEach: 3000, count: 1, thermostat: true } }),
      ],
    }),
  ],
];

describe('planBatch', () => {
  it.each(REQUESTS)('does not change the request it was given for %s', (_, request) => {
    const own = deepFreeze(structuredClone(request));
    const before = JSON.stringify(own);
    expect(() => plannedBatch(own)).not.toThrow(); // a write to anything frozen would
    expect(JSON.stringify(own)).toBe(before);
  });

  it.each(REQUESTS)('gives the same plan of %s twice', (_, request) => {
    expect(plannedBatch(request)).toEqual(plannedBatch(structuredClone(request)));
  });

  it.each(REQUESTS)('gives a plan of %s that survives being sent as text', (_, request) => {
    const sent = JSON.stringify(plannedBatch(request));
    expect(JSON.parse(sent)).toEqual(withoutMinusZero(plannedBatch(request)));
  });

  it.each(REQUESTS)(
    'stores the same numbers for %s whichever units the farm reads',
    (_, request) => {
      const inUnits = (units: 'metric' | 'us'): Omit<BatchPlan, 'issues'> => {
        const { issues, ...numbers } = plannedBatch({
          ...request,
          farm: { ...request.farm, units },
        });
        expect(issues.length).toBeGreaterThan(0); // sentences are written in the farm's own units
        return numbers;
      };
      expect(inUnits('us')).toEqual(inUnits('metric'));
    },
  );

  it('raises the same warnings in both unit systems, in other words', () => {
    const request = newRequest({ batch: { brooderId: 'brooder', arrivalDate: '2027-02-03' } });
    const issues = (units: 'metric' | 'us') =>
      plannedBatch({ ...request, farm: { ...request.farm, units } }).issues;
    expect(issues('us').map((i) => [i.level, i.code])).toEqual(
      issues('metric').map((i) => [i.level, i.code]),
    );
    // Names of rules carry both, such as 7.2 °C (45 °F); everything else is in the farm's own units.
    const words = issues('us').map((i) => i.text.replaceAll(/[\d.]+ °C \([^)]*°F\)/g, ''));
    expect(words.join()).not.toMatch(/\d °C|\d m²|\d kg/);
  });
});

describe('findArrivals', () => {
  it('does not change the request it was given', () => {
    const own = deepFreeze(structuredClone(REQUESTS[0]![1]));
    expect(() => foundArrivals(own, { from: '2027-03-01', to: '2027-08-01' })).not.toThrow();
  });
});
