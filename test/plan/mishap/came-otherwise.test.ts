import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../../shared/farm/batch.js';
import { withBatch, type FarmPicture, type NamedBatch } from '../../../shared/farm/picture.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import {
  waysWhenOtherwise,
  type OtherwiseField,
} from '../../../shared/plan/mishap/came-otherwise.js';
import type { WayOn } from '../../../shared/plan/mishap/way-on.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const { farm, climate } = newRequest({});
const SATURDAY = 6;

function batch(more: Partial<Batch> = {}): NamedBatch {
  const { targetLiveKg: _target, ...made } = newBatch({ brooderId: 'brooder', ...more });
  return { orderedBirds: 60, ...made, id: 'c', arrivalDate: '2027-05-05' };
}
const picture = (today: string, of: NamedBatch): FarmPicture =>
  newPicture({ farm, climate, today, facilities: [newBrooder()], batches: [of] });
const planIn = (given: FarmPicture, of: NamedBatch) =>
  planBatch(withBatch(given, of), tables, of.id);
const leaves = (given: FarmPicture, of: NamedBatch): string =>
  String(planIn(given, of).leaving!.on.value);

function ways(field: OtherwiseField, of: NamedBatch, value: unknown, today = '2027-04-20') {
  const given = picture(today, of);
  const changed: NamedBatch = { ...of, [field]: value };
  const withPlan = (each: NamedBatch) => ({ batch: each, plan: planIn(given, each) });
  const found = waysWhenOtherwise({
    ...{ picture: given, tables, field },
    ...{ before: withPlan(of), after: withPlan(changed) },
  });
  return { given, changed, found };
}
const only = (found: readonly WayOn[]): NamedBatch => {
  expect(found).toHaveLength(1);
  return found[0]!.batch!;
};

describe('waysWhenOtherwise', () => {
  it('keeps the day of processing, where a box two days late would move it by a week', () => {
    const of = batch({ leaveAgeDays: 55, processingWeekday: SATURDAY });
    const before = leaves(picture('2027-04-20', of), of);
    const { given, changed, found } = ways('arrivalDate', of, '2027-05-07');
    expect(leaves(given, changed)).not.toBe(before);
    const kept = only(found);
    expect(leaves(given, kept)).toBe(before);
    expect(kept.arrivalDate).toBe('2027-05-07');
    expect(found[0]!.words).toMatch(/^Process on .+ all the same$/);
  });

  it('asks for a slot as much later as the box is, so that they are as old', () => {
    const of = batch({ processing: 'hired', slotDate: '2027-06-30' });
    const { found } = ways('arrivalDate', of, '2027-05-07');
    expect(found[0]!.words).toMatch(/^Ask the processor for .+, so that they are as old$/);
    expect(only(found)).toMatchObject({ arrivalDate: '2027-05-07', slotDate: '2027-07-02' });
  });

  it('keeps fewer birds a week longer, which makes them heavier', () => {
    const of = batch({ leaveAgeDays: 49 });
    const { given, changed, found } = ways('orderedBirds', of, 50);
    const kept = only(found);
    expect(found[0]!.words).toMatch(/^Process on .+: keep them a week longer$/);
    const [hired] = ways('orderedBirds', { ...of, processing: 'hired' }, 50).found;
    expect(hired!.words).toMatch(/^Ask the processor for .+: keep them a week longer$/);
    // Hatched the day before they came: 49 days old on 22 June, and seven more.
    expect(leaves(given, kept)).toBe('2027-06-29');
    const heavy = planIn(given, kept).leaving!.liveEach.value;
    expect(heavy).toBeGreaterThan(planIn(given, changed).leaving!.liveEach.value);
    expect(ways('orderedBirds', of, 70).found).toEqual([]);
  });

  it('has the box come as much later as the processor, while it is still to come', () => {
    const of = batch({ processing: 'hired', slotDate: '2027-06-30' });
    expect(only(ways('slotDate', of, '2027-07-07').found)).toMatchObject({
      arrivalDate: '2027-05-12',
      slotDate: '2027-07-07',
    });
    expect(ways('slotDate', of, '2027-07-07', '2027-05-20').found).toEqual([]);
    // Six weeks sooner they would have to come before today.
    expect(ways('slotDate', of, '2027-06-10').found).toEqual([]);
  });

  it('has nothing to choose for hens, or where nothing is other than it was', () => {
    const hens = batch({ purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' });
    expect(ways('orderedBirds', hens, 20).found).toEqual([]);
    expect(ways('arrivalDate', batch({ leaveAgeDays: 49 }), '2027-05-05').found).toEqual([]);
  });
});
