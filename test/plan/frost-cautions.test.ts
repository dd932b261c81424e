import { describe, expect, it } from '@jest/globals';
import type { Batch } from '../../shared/farm/batch.js';
import type { Facility } from '../../shared/farm/facility.js';
import { batchLine } from '../../shared/plan/today/batch-line.js';
import { newBrooder, newRequest, tables } from '../support/factories.js';
import { newPicture, plannedBatch } from '../support/pictures.js';

const COOP = {
  ...({ kind: 'coop', id: 'coop', name: 'Coop' } as const),
  ...{ floorM2: 8, roostM: 6, nestBoxes: 5, runM2: 0 },
} satisfies Facility;
const STARTED = {
  ...({ purpose: 'layers', origin: 'started', strainId: 'brown-layer', sex: 'pullets' } as const),
  ...{ hatchToArrivalDays: 0, arrivalAgeWeeks: 16, wantedBirds: 20, coopId: 'coop' },
} satisfies Partial<Batch>;
const OF_FROST = ['power-cut', 'gas-empty', 'frozen-drinkers', 'coop-frost'];

function cautionsOf(batch: Partial<Batch>, kind: 'lamp' | 'plate' | 'gas' = 'lamp') {
  const { heat } = newBrooder();
  const brooder = newBrooder({ heat: { ...heat, kind } });
  const plan = plannedBatch(newRequest({ facilities: [brooder, COOP], batch }));
  return plan.cautions.filter((key) => OF_FROST.includes(key));
}

describe('cautions of frost', () => {
  it('name what fails of the heat there is, where nights in the brooder freeze', () => {
    const winter = { arrivalDate: '2027-12-04', brooderId: 'brooder' };
    expect(cautionsOf(winter, 'lamp')).toContain('power-cut');
    expect(cautionsOf(winter, 'plate')).toContain('power-cut');
    expect(cautionsOf(winter, 'lamp')).not.toContain('gas-empty');
    expect(cautionsOf(winter, 'gas')).toContain('gas-empty');
    expect(cautionsOf(winter, 'gas')).not.toContain('power-cut');
  });

  it('are none of meat birds in summer', () => {
    expect(cautionsOf({ arrivalDate: '2027-06-20', brooderId: 'brooder' })).toEqual([]);
  });

  it('name drinkers and bedding of birds that live in the coop through frost', () => {
    const batch = { ...STARTED, arrivalDate: '2027-12-20' };
    expect(cautionsOf(batch)).toEqual(['frozen-drinkers', 'coop-frost']);
  });

  it('stand on Today on days on which it may freeze, and on no other', () => {
    const batch = { ...STARTED, arrivalDate: '2027-12-20' };
    const request = newRequest({ facilities: [COOP], batch });
    const plan = plannedBatch(request);
    const { farm, climate } = request;
    const { cautions } = tables;
    const on = (today: string) =>
      batchLine(newPicture({ farm, climate, facilities: [COOP], today }), tables, {
        ...{ id: 'hens', name: 'Hens', plan },
      })!.cautions.map(({ title }) => title);
    const said = ['frozen-drinkers', 'coop-frost'].map((key) => cautions[key]!.title);
    expect(on('2028-01-10')).toEqual(expect.arrayContaining(said));
    for (const title of said) expect(on('2028-07-10')).not.toContain(title);
  });
});
