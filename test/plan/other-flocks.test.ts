import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import type { NamedBatch } from '../../shared/farm/picture.js';
import { newBatch, newRequest, tables } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

const PULLETS = {
  purpose: 'layers',
  strainId: 'brown-layer',
  sex: 'pullets',
  wantedBirds: 12,
  arrivalDate: '2027-04-15',
} as const satisfies Partial<Batch>;

const layingOf = (batch: Partial<Batch>, others: readonly NamedBatch[] = []) => {
  const plan = plannedBatch({
    ...newRequest({ batch: { ...PULLETS, ...batch } }),
    batches: [...others],
  });
  return { ...plan.laying!, issues: plan.issues };
};

const another = (more: Partial<Batch> = {}): NamedBatch => ({
  ...newBatch({ ...PULLETS, name: 'Older', arrivalDate: '2026-09-15', ...more }),
  id: 'older',
});

const january = ({ months }: ReturnType<typeof layingOf>) =>
  months.find(({ from }) => from === '2028-01-01')!;

describe('eggs of other flocks', () => {
  const alone = layingOf({ eggsWantedPerWeek: 90 });
  const beside = layingOf({ eggsWantedPerWeek: 90 }, [another()]);

  it('are fewer hens to have', () => {
    const [all, rest] = [january(alone), january(beside)];
    expect(rest.hensUnlit!.value).toBeLessThan(all.hensUnlit!.value);
    // Together the two flocks then lay what is wanted, and one hen fewer would not.
    const { inputs } = rest.hensUnlit!;
    const others = Number(inputs.find((each) => each.symbol === 'E_others')!.value);
    const aHen = 7 * Number(inputs.find((each) => each.symbol === 'y')!.value);
    const hens = rest.hensUnlit!.value;
    expect(others + hens * aHen).toBeGreaterThanOrEqual(90 - 1e-6);
    expect(others + (hens - 1) * aHen).toBeLessThan(90);
  });

  it('leave fewer weeks short', () => {
    const weeks = (of: ReturnType<typeof layingOf>): number =>
      of.shortOf!.reduce((sum, span) => sum + span.weeks, 0);
    expect(weeks(beside)).toBeLessThan(weeks(alone));
  });

  it('ask for no hens where they are enough', () => {
    const enough = layingOf({ eggsWantedPerWeek: 6 }, [another()]);
    expect(january(enough).hensUnlit!.value).toBe(0);
  });

  it('end when their second year of lay does', () => {
    const old = layingOf({ eggsWantedPerWeek: 90 }, [another({ arrivalDate: '2024-04-15' })]);
    expect(january(old).hensUnlit!.value).toBe(january(alone).hensUnlit!.value);
  });

  it('are none of meat birds', () => {
    const meat = { ...newBatch({ name: 'Meat' }), id: 'meat' };
    const withMeat = layingOf({ eggsWantedPerWeek: 90 }, [meat]);
    expect(withMeat.months).toEqual(alone.months);
  });
});

describe('eggs that a household wants', () => {
  it('are said once for all its flocks', () => {
    const said = layingOf({}, [another({ eggsWantedPerWeek: 90 })]);
    expect(said.months).toEqual(layingOf({ eggsWantedPerWeek: 90 }, [another()]).months);
    expect(said.issues.find(({ code }) => code === 'eggs-short')!.text).toContain(
      'those of your other hens counted',
    );
  });
});

describe('two flocks of hens in one coop', () => {
  const both = (floorM2: number) => {
    const coop = {
      id: 'coop',
      kind: 'coop',
      name: 'Coop',
      floorM2,
      roostM: 12,
      nestBoxes: 8,
      runM2: 0,
    };
    const plan = plannedBatch({
      ...newRequest({ batch: { ...PULLETS, coopId: 'coop' }, facilities: [coop as Facility] }),
      batches: [another({ coopId: 'coop', wantedBirds: 13 })],
    });
    return plan.issues.filter(({ code }) => ['place-taken', 'place-shared'].includes(code));
  };

  it('go together where its floor takes them all, and are short by what is missing where not', () => {
    const [shared, ...more] = both(20);
    expect(more).toEqual([]);
    expect(shared).toMatchObject({ level: 'note', code: 'place-shared' });
    const [, birds, room] = /: (\d+) of the (\d+) birds that its floor takes/.exec(shared!.text)!;
    // Twelve and thirteen are wanted at the first egg, and some more than that are in it before.
    expect(Number(birds)).toBeGreaterThanOrEqual(25);
    expect(Number(room)).toBe(Math.floor(20 / tables.space.coop.floorM2));
    const eachM2 = tables.space.coop.floorM2;
    const [short] = both(Number(birds) * eachM2 - 1);
    expect(short).toMatchObject({ level: 'act', code: 'place-taken' });
    expect(short!.text).toContain('It is short of 1 m²');
    expect(both(Number(birds) * eachM2)[0]!.code).toBe('place-shared');
  });
});
