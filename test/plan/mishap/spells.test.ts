import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { Batch } from '../../../shared/farm/batch.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { planBatch } from '../../../shared/plan/batch-plan.js';
import { coldSnap } from '../../../shared/plan/mishap/cold-snap.js';
import { heatWave } from '../../../shared/plan/mishap/heat-wave.js';
import { inSpell, noneHurtSaid } from '../../../shared/plan/mishap/spell.js';
import { forecastWith, spellAhead, withSpell } from '../../../shared/plan/mishap/typed-weather.js';
import { newBatch, newBrooder, newRequest, tables } from '../../support/factories.js';
import { newGroup, newHerd } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const { farm, climate } = newRequest({});
const ARRIVED = '2027-05-05';

const picture = (today: string, batch: Partial<Batch> = {}): FarmPicture =>
  newPicture({
    ...{ farm, climate, today, facilities: [newBrooder()] },
    batches: [
      {
        ...newBatch({ brooderId: 'brooder', orderedBirds: 60, ...batch }),
        ...{ id: 'c', arrivalDate: ARRIVED },
      },
    ],
  });
const planOf = (given: FarmPicture) => planBatch(given, tables, 'c');
const movesOut = (given: FarmPicture): string => String(planOf(given).outdoors.moveOut!.value);
const leaves = (given: FarmPicture): string => String(planOf(given).leaving!.on.value);
const cold = (given: FarmPicture, airC: number, days = 3) =>
  coldSnap(given, tables, { kind: 'cold', airC, days });
const hot = (given: FarmPicture, airC: number, days = 4) =>
  heatWave(given, tables, { kind: 'hot', airC, days });
/** The part of the batch itself, beside what holds for all that are out. */
const hotForThem = (...asked: Parameters<typeof hot>) => hot(...asked).at(-1)!;

describe('a spell in the forecast', () => {
  it('is what is forecast, else such as one in ten is', () => {
    const usual = picture('2027-06-20');
    const guessed = (units: 'metric' | 'us'): number => {
      const farm = { ...usual.farm, units };
      const { days, airC } = spellAhead({ ...usual, farm }, 'cold', tables.judgements.alarms);
      expect(days).toBe(3);
      expect(Math.abs(airC - climate.coldMinC[170]!)).toBeLessThanOrEqual(0.5);
      return airC;
    };
    // In whole degrees of whichever scale is read there.
    expect(guessed('metric') % 1).toBe(0);
    const inF = (guessed('us') * 9) / 5 + 32;
    expect(inF).toBeCloseTo(Math.round(inF), 9);
    const forecast = [
      { date: '2027-06-20', minC: 9, maxC: 20 },
      { date: '2027-06-21', minC: 4, maxC: 31 },
    ];
    const known = { ...usual, climate: { ...climate, forecast } };
    expect(spellAhead(known, 'cold', tables.judgements.alarms)).toMatchObject({ days: 2, airC: 4 });
    expect(spellAhead(known, 'hot', tables.judgements.alarms)).toMatchObject({ airC: 31 });
  });

  it('changes its own days alone, and the low of the morning after the last night', () => {
    const forecast = [{ date: '2027-06-24', minC: 12, maxC: 24, rainMm: 5 }];
    const given = { ...picture('2027-06-20'), climate: { ...climate, forecast } };
    const days = forecastWith(given, { kind: 'cold', airC: -2, days: 2 });
    expect(days.map(({ date }) => date)).toEqual([
      '2027-06-20',
      '2027-06-21',
      '2027-06-22',
      '2027-06-24',
    ]);
    expect(days.slice(0, 3).every(({ minC, maxC }) => minC === -2 && minC < maxC)).toBe(true);
    expect(days[3]).toEqual(forecast[0]);
  });
});

describe('coldSnap', () => {
  it('leaves birds alone that stand the nights, and warns of nights that they do not', () => {
    const out = picture('2027-06-26');
    const moved = {
      ...out,
      batches: out.batches.map((b) => ({ ...b, moveOutDate: '2027-06-10' })),
    };
    // The rule of these birds: fully feathered in a dry shelter from 4.4 °C (40 °F) on.
    expect(cold(moved, 5)[0]).toMatchObject({ ways: [] });
    const [at] = cold(moved, 3);
    expect(at!.ways.map(({ id }) => id)).toEqual(['shelter', 'heat', 'back-in']);
    expect(at!.follows[0]).toContain('too cold for them on 3 nights');
  });

  it('asks more feed the colder the night is', () => {
    const out = picture('2027-06-26', { moveOutDate: '2027-06-10' });
    const feedKg = (airC: number) => cold(out, airC)[0]!.ways[0]!.numbers![0]!.value;
    expect(feedKg(0)).toBeGreaterThan(feedKg(3));
    expect(feedKg(3)).toBeGreaterThan(0);
  });

  it('keeps them in where the move falls on cold nights, to the day the plan then has', () => {
    const before = movesOut(picture('2027-05-20'));
    const given = picture(addDays(before, -1));
    const [at] = cold(given, -1);
    const stay = at!.ways.find(({ id }) => id === 'stay-in')!;
    const later = movesOut(withSpell(given, { kind: 'cold', airC: -1, days: 3 }));
    expect(stay.batch!.moveOutDate).toBe(later);
    expect(before < later).toBe(true);
    expect(stay.follows[0]).toMatch(/^They move out: .+ later than/);
  });

  it('holds chicks in the brooder against what its heaters can do', () => {
    const [at] = cold(picture('2027-05-12'), -5);
    expect(at!.numbers[0]!.label).toContain('Under the heat');
    const lampsOn = (airC: number) =>
      Number(/(\d) of 4 lamps on/.exec(cold(picture('2027-05-12'), airC)[0]!.follows[0]!)![1]);
    expect(lampsOn(8)).toBeLessThan(lampsOn(-12));
  });

  it('leaves out birds that are gone, and those that come after it', () => {
    expect(cold(picture('2027-04-20'), -5)).toEqual([]);
    expect(cold(picture('2027-12-20'), -5)).toEqual([]);
  });
});

describe('heatWave', () => {
  it('goes by the published limits: they pant from 26.7 °C, and 32.2 °C is serious', () => {
    const given = picture('2027-06-24');
    expect(hot(given, 26)[0]!.follows[0]).toContain('They stand');
    expect(hot(given, 35)[0]!.follows[0]).toContain('Birds pant from about 26.7 °C');
    expect(hot(given, 35)[0]!.follows[0]).toContain('serious above 32.2 °C');
  });

  it('has them drink more, as much as the plan of such a day says', () => {
    const given = picture('2027-06-10');
    const [water] = hotForThem(given, 35).ways;
    // The table of heat: half as much again at 32 °C, and on from there.
    expect(water!.id).toBe('water');
    expect(water!.numbers![0]!.value).toBeGreaterThan(0);
  });

  it('tries the last day before the heat and after it, at the weight and feed of each', () => {
    const on = leaves(picture('2027-06-20'));
    const given = picture(addDays(on, -3));
    const { ways } = hotForThem(given, 36, 5);
    const earlier = ways.find(({ id }) => id === 'earlier')!;
    const later = ways.find(({ id }) => id === 'later')!;
    const kept = (batch: Batch) => ({ ...given, batches: [{ ...batch, id: 'c' }] });
    expect(leaves(kept(earlier.batch!)) < on).toBe(true);
    expect(on < leaves(kept(later.batch!))).toBe(true);
    expect(earlier.follows.join(' ')).toContain('Feed for all their days');
  });

  it('has chicks in the brooder get less heat, shade over the pen once they are out', () => {
    const idsOf = (today: string) =>
      hot(picture(today), 36).map(({ ways }) => ways.map(({ id }) => id));
    expect(idsOf('2027-05-10')).toEqual([['water', 'less-heat']]);
    const [all, them] = idsOf('2027-06-25');
    expect(all).toEqual(['shade']);
    expect(them).not.toContain('less-heat');
  });
});

describe('a spell, whomever it hurts', () => {
  const today = '2027-06-20';
  const herds = [newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 3 })] })];
  const withCattle = newPicture({ farm, climate, today, herds });
  const heat = (airC: number) => inSpell(withCattle, tables, { kind: 'hot', airC, days: 3 });

  it('has shade and water for cattle from where they feel the heat', () => {
    // Index 0.8·T + 0.5·(T − 14.4) + 46.4: 72 at 25.2 °C, 80 at 31.4 °C.
    expect(heat(25)).toEqual([]);
    expect(heat(26)[0]!.follows).toEqual(['They feel such days.']);
    expect(heat(40)[0]).toMatchObject({
      follows: ['Such days are serious for them.'],
      ways: [{ id: 'shade-and-water' }],
      cautions: [{ title: 'Heat' }],
    });
    expect(heat(40)[0]!.numbers[0]!.value).toBeCloseTo(91.2, 6);
  });

  it('hurts none only where some are there and were looked at', () => {
    expect(noneHurtSaid(withCattle, tables)).toBe('Nothing that is there is hurt by it.');
    const empty = newPicture({ farm, climate, today });
    expect(noneHurtSaid(empty, tables)).toBe('No birds and no cattle are there today.');
    expect(noneHurtSaid(picture(ARRIVED), tables)).toBe('Nothing that is there is hurt by it.');
    expect(noneHurtSaid(picture('2027-12-20'), tables)).toMatch(/^No birds and no cattle/);
    const { batches } = picture(today, { strainId: 'none' });
    const [unknown] = batches;
    expect(noneHurtSaid({ ...withCattle, batches }, tables)).toBe(
      `Not looked at, as no plan can be made: ${unknown!.name}. Nothing else that is there is hurt by it.`,
    );
    expect(noneHurtSaid({ ...empty, batches }, tables)).not.toContain('hurt by it');
  });
});
