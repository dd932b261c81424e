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

  it('says which night it reckons with, beside the usual low that Today shows', () => {
    const said = asked(addDays(ARRIVED, 1))!.follows.join(' ');
    expect(said).toMatch(/no forecast of tonight, .* one night in ten: .* The usual low is /);
    const forecast = [0, 1, 2].map((k) => ({
      date: addDays(ARRIVED, k),
      ...{ minC: 3, maxC: 12, rainMm: 0 },
    }));
    const known = asked(addDays(ARRIVED, 1), {}, { climate: { ...climate, forecast } })!;
    expect(known.follows.join(' ')).toContain(
      'Tonight is reckoned with 3 °C outdoors, as forecast.',
    );
  });

  it('lets a gas heater be turned down where it has no thermostat', () => {
    const heat = { kind: 'gas', warms: 'spot', wattsEach: 1500, count: 2 } as const;
    const gas = newBrooder({ heat: { ...heat, thermostat: false } });
    const out = asked(addDays(ARRIVED, 1), { working: 2 }, { facilities: [gas] })!;
    expect(out.ways).toEqual([]);
    expect(out.follows[0]).toContain('are enough tonight');
  });

  it('calls nothing enough that is too hot for them to stand in all of the brooder', () => {
    const { warnC } = tables.heat.tooHot.rows[0]!;
    for (const kind of ['lamp', 'gas'] as const) {
      for (const wattsEach of [250, 800, 1500, 2000]) {
        const heat = { kind, wattsEach, count: 2, thermostat: false };
        const out = asked(
          addDays(ARRIVED, 1),
          { working: 1 },
          { facilities: [newBrooder({ heat })] },
        )!;
        for (const { isEnough, numbers } of out.ways)
          if (isEnough) expect(Number(numbers!.at(-1)!.value)).toBeLessThanOrEqual(warnC);
      }
    }
  });

  it('closes the box off no further than leaves them a place that is not too hot', () => {
    // On the least floor one heater of 800 W is too much, and none is far too cold.
    const heat = { kind: 'gas', warms: 'room', wattsEach: 800, count: 2 } as const;
    const tight = newBrooder({ heat: { ...heat, thermostat: false } });
    const out = asked(addDays(ARRIVED, 1), { working: 1 }, { facilities: [tight] });
    const { isEnough, numbers } = way(out, 'smaller')!;
    expect(isEnough).toBe(true);
    expect(numbers!.at(-1)!.value).toBeLessThanOrEqual(37);
  });

  it('knows what newly hatched chicks make of a warm room, packed as they came', () => {
    // Xin and Rieger 1995: boxes of 88 chicks were 4 °C warmer than the air around them.
    const { numbers, follows } = way(asked(addDays(ARRIVED, 1), { isPowerOut: true }), 'indoors')!;
    expect(numbers![0]!.value - tables.heat.heatedRoom.airC).toBeCloseTo(4);
    expect(follows.at(-1)).toContain('1.1 in 100 died');
    const later = way(asked(addDays(ARRIVED, 7), { isPowerOut: true }), 'indoors')!;
    expect(later.follows.join()).not.toContain('in 100 died');
  });

  it('offers no lamp where there is no power', () => {
    const out = asked(addDays(ARRIVED, 7), { isPowerOut: true });
    expect(way(out, 'spare')).toBeUndefined();
    expect(way(out, 'indoors')).toBeDefined();
  });

  it('offers heat that needs no line where the power is out, as strong as tonight needs it', () => {
    const out = asked(addDays(ARRIVED, 1), { isPowerOut: true, working: 3 })!;
    // No lamp burns, whatever was chosen before.
    expect(out.follows[0]).toContain('With no heat');
    for (const id of ['generator', 'gas']) expect(way(out, id)).toMatchObject({ isEnough: true });
    const [, lamps, watts] = /for (\d+) lamps?, ([\d,]+) W/.exec(way(out, 'generator')!.words)!;
    expect(Number(watts!.replace(',', ''))).toBe(Number(lamps) * 250);
    expect(way(out, 'gas')!.follows.join()).toContain('carbon monoxide alarm');
    expect(way(out, 'bottles')).toBeDefined();
    expect(way(out, 'indoors')!.follows.join()).toContain('cools all night too');
    for (const id of ['generator', 'gas'])
      expect(way(asked(addDays(ARRIVED, 1)), id)).toBeUndefined();
  });

  it('lets gas burn on where the power is out', () => {
    const heat = {
      kind: 'gas',
      warms: 'spot',
      wattsEach: 1500,
      count: 2,
      thermostat: true,
    } as const;
    const of = { facilities: [newBrooder({ heat })] };
    const out = asked(addDays(ARRIVED, 1), { isPowerOut: true, working: 2 }, of)!;
    expect(out.follows[0]).toContain('are enough tonight');
    expect(out.follows.join()).toContain('Gas burns on without power');
    expect(out.ways).toEqual([]);
  });

  it('asks anew what was told to be out before', () => {
    const heatOuts = [{ id: 'o', batchId: 'c', date: ARRIVED, working: 0 }];
    const day = addDays(ARRIVED, 16);
    expect(asked(day, { working: 3 }, { heatOuts })).toEqual(asked(day, { working: 3 }));
  });

  it('has nothing to do where what still works is enough', () => {
    const mishap = asked(addDays(ARRIVED, 16), { working: 3 });
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
