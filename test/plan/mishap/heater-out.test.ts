import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { heaterOut, type HeaterOut } from '../../../shared/plan/mishap/heater-out.js';
import type { Mishap } from '../../../shared/plan/mishap/way-on.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newPicture } from '../../support/pictures.js';

const ARRIVED = '2027-05-05';
const { farm, climate } = newRequest({});

const picture = (today: string, more: Partial<FarmPicture> = {}): FarmPicture =>
  newPicture({
    ...{ farm, climate, today, facilities: [newBrooder()] },
    batches: [
      { ...newBatch({ brooderId: 'brooder', orderedBirds: 80 }), id: 'c', arrivalDate: ARRIVED },
    ],
    ...more,
  });

const asked = (
  today: string,
  more: Partial<HeaterOut> = {},
  changed: Partial<FarmPicture> = {},
): Mishap | undefined =>
  heaterOut(picture(today, changed), tables, {
    ...{ batchId: 'c', working: 0, isPowerOut: false },
    ...more,
  });
const way = (mishap: Mishap | undefined, id: string) => mishap?.ways.find((each) => each.id === id);

describe('heaterOut', () => {
  it('says what chicks of their age want: 90 °F in their second week, as guides print it', () => {
    const us = { farm: { ...farm, units: 'us' as const } };
    expect(asked(addDays(ARRIVED, 7), {}, us)!.follows[0]).toMatch(
      /^8 days old they want 90 °F under the heat\./,
    );
  });

  it('has no more in the box than the air around it when day-old chicks have no heat', () => {
    // In their first week no warmth of theirs is counted, so the box is as cold as the shed.
    const [air] = asked(addDays(ARRIVED, 1))!.numbers;
    const coldC = climate.coldMinC[126]! + tables.heat.building.warmerThanOutsideK;
    expect(Math.abs(air!.value - coldC)).toBeLessThanOrEqual(0.5); // a day or two of spring apart
  });

  it('is warmer with each thing that is done, and says which are enough', () => {
    const mishap = asked(addDays(ARRIVED, 7));
    const left = mishap!.numbers[0]!.value;
    for (const { numbers } of mishap!.ways) {
      expect(numbers![0]!.value).toBeGreaterThan(left);
    }
    expect(way(mishap, 'spare-and-smaller')).toMatchObject({ isEnough: true });
    expect(mishap!.ways.map(({ isEnough }) => isEnough)).toEqual(
      mishap!.ways.map(({ isEnough }) => isEnough).sort((a, b) => Number(b) - Number(a)),
    );
    expect(mishap!.cautions.map(({ title }) => title)).toEqual([
      tables.cautions['heat-lamp']!.title,
      tables.cautions['carbon-monoxide']!.title,
    ]);
  });

  it('offers no lamp where there is no power', () => {
    const out = asked(addDays(ARRIVED, 7), { isPowerOut: true });
    expect(way(out, 'spare')).toBeUndefined();
    expect(way(out, 'indoors')).toBeDefined();
  });

  it('has nothing to do where what still works is enough', () => {
    const mishap = asked(addDays(ARRIVED, 20), { working: 3 });
    expect(mishap!.ways).toEqual([]);
    expect(mishap!.follows[0]).toContain('3 of 4 lamps are enough tonight');
  });

  it('knows of plates by the chicks that they carry', () => {
    const plates = newBrooder({
      heat: { kind: 'plate', wattsEach: 25, count: 4, thermostat: false },
    });
    // 80 chicks at 1 W each are carried by 4 plates of 25 W, not by 3.
    const at = (working: number) =>
      asked(addDays(ARRIVED, 2), { working }, { facilities: [plates] })!.follows[0];
    expect(at(4)).toContain('are enough tonight');
    expect(at(3)).not.toContain('are enough tonight');
  });

  it('says nothing of birds that are not there yet, or need no heat any more', () => {
    expect(asked(addDays(ARRIVED, -1))).toBeUndefined();
    expect(asked(addDays(ARRIVED, 50))).toBeUndefined();
    expect(asked(addDays(ARRIVED, 7), {}, { facilities: [] })).toBeUndefined();
  });
});
