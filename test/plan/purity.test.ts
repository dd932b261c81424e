import { describe, expect, it } from '@jest/globals';
import { planTasks } from '../../shared/plan/batch-tasks.js';
import { planBirds } from '../../shared/plan/birds.js';
import { planBrooding } from '../../shared/plan/brooding.js';
import { planContext } from '../../shared/plan/plan-context.js';
import { planFeed } from '../../shared/plan/feed.js';
import { planHatching } from '../../shared/plan/hatching.js';
import { planHeat } from '../../shared/plan/heat.js';
import { planLaying } from '../../shared/plan/laying.js';
import { planLeaving } from '../../shared/plan/leaving.js';
import { planOutdoors } from '../../shared/plan/outdoors.js';
import type { PlanRequest } from '../../shared/plan/request.js';
import { planSpace } from '../../shared/plan/space.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { foundArrivals, plannedBatch } from '../support/pictures.js';

function deepFreeze<T>(value: T): T {
  // Arrays of numbers cannot be frozen; a copy tells whether they were written to.
  if (ArrayBuffer.isView(value)) return value;
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

  it.each(REQUESTS)('has sections that only read the context for %s', (_, request) => {
    const context = deepFreeze(planContext(request));
    const before = JSON.stringify(context);
    const feed = planFeed(context);
    const sections = [
      planBirds(context, planHatching(context).part),
      ...[planBrooding, planHeat, planSpace, planOutdoors].map((plan) => plan(context)),
      ...[planLeaving, planLaying].map((plan) => plan(context, feed.part)),
      planTasks(context, feed.part, planHeat(context).part),
    ];
    expect(JSON.stringify(context)).toBe(before);
    for (const found of [feed, ...sections]) deepFreeze(found);
    // What one of them found is all its own: asked again, it finds the same.
    expect(planFeed(context)).toEqual(feed);
    expect(planHeat(context)).toEqual(sections[2]);
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
      // Names and sentences are written in the farm's own units; all else is stored. The usual bag is
      // of a size that is sold where people weigh so: one that was typed is the same everywhere.
      const withoutWords = (value: unknown): unknown =>
        JSON.parse(JSON.stringify(value), (_key, each: unknown) =>
          typeof each === 'string' && each.includes(' ') ? 'words' : each,
        );
      const inUnits = (units: 'metric' | 'us'): unknown => {
        const { issues, ...numbers } = plannedBatch({
          ...request,
          batch: { bagKg: 20, ...request.batch },
          farm: { ...request.farm, units },
        });
        expect(issues.length).toBeGreaterThan(0);
        return withoutWords(numbers);
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
