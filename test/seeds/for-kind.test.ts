import { describe, expect, it } from '@jest/globals';
import { quantitiesIn } from '../../shared/explain/quantities-in.js';
import type { Quantity } from '../../shared/explain/quantity.js';
import { tablesForKind } from '../../shared/tables/for-kind.js';
import { newBrooder, newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const plannedOf = (strainId: string): readonly Quantity[] =>
  quantitiesIn(
    plannedBatch(
      newRequest({
        batch: {
          strainId,
          penId: 'pen',
          brooderId: 'brooder',
          moveOutDate: '2027-06-10',
          leaveAgeDays: 80,
        },
        facilities: [
          newBrooder(),
          { kind: 'field-pen', id: 'pen', name: 'Pen', floorM2: 11, count: 2 },
        ],
      }),
    ),
  );

describe('tablesForKind', () => {
  it('leaves the tables of chickens alone', () => {
    expect(tablesForKind(tables, 'chicken')).toBe(tables);
  });

  it('lets figures of chickens stand in as estimates that say whose they are', () => {
    const { lampRule, rules } = tablesForKind(tables, 'duck').heat;
    expect(lampRule).toEqual({
      ...tables.heat.lampRule,
      mark: 'estimate',
      sources: [...tables.heat.lampRule.sources, 'OF_CHICKENS'],
    });
    expect(rules.map(({ wattsPerChick }) => wattsPerChick)).toEqual(
      tables.heat.rules.map(({ wattsPerChick }) => wattsPerChick),
    );
  });

  it('never makes a weaker mark stronger', () => {
    const spoilt = { ...tables, litter: { ...tables.litter, mark: 'assumed' as const } };
    expect(tablesForKind(spoilt, 'duck').litter.mark).toBe('assumed');
  });

  it('puts rows of the kind itself in their place', () => {
    const { manure, water } = tablesForKind(tables, 'turkey');
    expect(manure.meat).toBe(tables.manure.others.find(({ species }) => species === 'turkey'));
    expect(water.heat).toBe(tables.water.otherHeat.find(({ species }) => species === 'turkey'));
  });

  it('gives the same tables when asked again, of its own too', () => {
    const own = tablesForKind(tables, 'duck');
    expect(tablesForKind(tables, 'duck')).toBe(own);
    expect(tablesForKind(own, 'duck')).toBe(own);
  });
});

describe('a plan', () => {
  const saysChickens = ({ sources }: Quantity): boolean => sources.includes('OF_CHICKENS');
  const [chickens, ducks, turkeys] = ['fast-meat', 'pekin-duck', 'turkey'].map(plannedOf);
  const of = (plan: readonly Quantity[] | undefined, label: string): Quantity =>
    plan!.find((each) => each.label === label)!;

  it('of chickens never says so', () => {
    expect(chickens!.some(saysChickens)).toBe(false);
  });

  it.each([
    'Lamps by the common rule',
    'Heat needed on the coldest expected night',
    'Bedding in all',
    'Pen moves a day',
    'Birds to order',
    'Live weight each',
  ])('of ducks says that it rests on chickens: %s', (label) => {
    const found = of(ducks, label);
    expect(saysChickens(found)).toBe(true);
    expect(found.mark).toBe('estimate');
  });

  it('of ducks and turkeys counts the manure of their own kind', () => {
    for (const plan of [ducks, turkeys]) {
      const { inputs } = of(plan, 'Manure nitrogen on that ground');
      const own = inputs.find((each) => each.label === 'A day per kg live')!;
      expect(own.value).toBe(plan === ducks ? 0.7 : 0.74);
    }
  });
});
