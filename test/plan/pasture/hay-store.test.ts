import { describe, expect, it } from '@jest/globals';
import { daysBetween } from '../../../shared/calendar/plain-date.js';
import type { PastureChoices } from '../../../shared/farm/pasture-choices.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import {
  newHerd,
  newGroup,
  newPaddocks,
  newPastureRequest,
  RAIN_MM,
} from '../../support/pasture-factories.js';
import { climateFromMonthlyMeans } from '../../../shared/weather/climate.js';
import { plannedPasture } from '../../support/pictures.js';

/** Four cows on eight paddocks: grass to spare in June, hay in winter. */
const planWith = (choices: Partial<PastureChoices>): PasturePlan =>
  plannedPasture(
    newPastureRequest({
      paddocks: newPaddocks(8, { areaM2: 4000 }),
      herds: [newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 4 })] })],
      choices: { to: '2027-12-15', ...choices },
    }),
  );
const codes = ({ issues }: PasturePlan): string[] => issues.map(({ code }) => code);

describe('hay through the next winter', () => {
  const none = planWith({});

  it('is what the plan feeds and the winter after it, less what is made', () => {
    const { toStore, nextWinter, own, toBuy } = none.hay;
    const { untilOut } = none.hay.byWinter!;
    const later = toStore.value + nextWinter!.value - untilOut.value - own!.value;
    expect(toBuy.value).toBeCloseTo(untilOut.value + Math.max(0, later), -1);
    expect(toBuy.mark).toBe('assumed');
  });

  it('goes on into the winter where herds still graze when the plan ends, less what stands then', () => {
    const early = planWith({ to: '2027-10-20' });
    expect(early.moves.at(-1)!.to).toBe(early.to);
    const { nextWinter } = early.hay;
    const input = (label: string) =>
      Number(nextWinter!.inputs.find((each) => each.label === label)!.value);
    const standing = input('Of grass meanwhile');
    expect(standing).toBeGreaterThan(0);
    const need = input('Need of a day, dry matter') * input('Days');
    expect(standing).toBeLessThan(need);
    const hayKg = (need - standing) * input('Hay for a kilogram eaten');
    expect(nextWinter!.value).toBeCloseTo(hayKg, 0);
  });

  // 2.25 to 2.5 % of weight as dry matter (Iowa), 2.5 % as hay (Illinois), from mid-December to May.
  it('comes to two to three in a hundred of their weight on each day of it', () => {
    const { nextWinter } = none.hay;
    const input = (label: string) => nextWinter!.inputs.find((each) => each.label === label)!.value;
    const head = none.herds.reduce((sum, { groups }) => sum + groups[0]!.headByDay.at(-1)!, 0);
    const perHead = Number(input('Need of a day, dry matter')) / head;
    expect(perHead / 545).toBeGreaterThan(0.018);
    expect(perHead / 545).toBeLessThan(0.03);
    expect(daysBetween(none.to, String(input('Grass again about')))).toBe(
      Number(input('Days')) + 1,
    );
  });

  it.each(['2027-07-15', '2027-10-10'])(
    'counts the winter to next spring, not to the day a year from now: planned on %s',
    (today) => {
      const again = ({ hay }: PasturePlan): string =>
        String(hay.nextWinter!.inputs.find(({ label }) => label === 'Grass again about')!.value);
      const later = plannedPasture(
        newPastureRequest({
          today,
          paddocks: newPaddocks(8, { areaM2: 4000 }),
          herds: [
            newHerd({
              groups: [newGroup({ classId: 'dry-cow', head: 4 })],
              inPaddockId: 'p1',
              inSince: today,
            }),
          ],
          choices: { to: '2027-12-15' },
        }),
      );
      expect(Math.abs(daysBetween(again(none), again(later)))).toBeLessThanOrEqual(21);
    },
  );

  // As a buyer knows it: hay for March lies in the barn in February, and what is mown in June feeds from the fall on.
  it('is told by winters: no summer hay feeds the spring before, however much is made', () => {
    const spare = plannedPasture(
      newPastureRequest({
        today: '2027-01-10',
        paddocks: newPaddocks(16, { areaM2: 6000 }),
        herds: [newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 4 })] })],
        choices: { to: '2027-12-15' },
      }),
    );
    const { hay, herds, from, keyDates } = spare;
    const turnOut = String(keyDates.herds[0]!.turnOut!.value);
    const fedKg = herds[0]!.hayByDay
      .slice(0, daysBetween(from, turnOut))
      .reduce((sum, kg) => sum + kg, 0);
    const perKg = Number(
      hay.nextWinter!.inputs.find(({ label }) => label === 'Hay for a kilogram eaten')!.value,
    );
    const { untilOut, nextWinter, balesUntilOut } = hay.byWinter!;
    expect(hay.own!.value).toBeGreaterThan(hay.toStore.value + hay.nextWinter!.value);
    expect(untilOut.value).toBeCloseTo(hay.untilPlan!.value + fedKg * perKg, -1);
    expect(balesUntilOut.value).toBeGreaterThan(0);
    expect(nextWinter.value).toBe(0);
    expect(hay.toBuy.value).toBe(untilOut.value);
    expect(spare.issues.find(({ code }) => code === 'hay-to-buy')!.text).toMatch(
      /until turn-out about \d+ bales.*; from then through the next winter nothing/,
    );
  });

  it('is said to be left over where much more is made than they eat, and what else could use it', () => {
    const over = planWith({}).issues.find(({ code }) => code === 'hay-over');
    expect(over).toBeUndefined();
    const few = plannedPasture(
      newPastureRequest({
        paddocks: newPaddocks(8, { areaM2: 8000 }),
        herds: [newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 3 })] })],
      }),
    );
    const { toStore, nextWinter, own, toBuy, byWinter } = few.hay;
    const { text } = few.issues.find(({ code }) => code === 'hay-over')!;
    const leftKg =
      own!.value - (toStore.value + (nextWinter?.value ?? 0) - byWinter!.untilOut.value);
    expect(toBuy.value).toBeCloseTo(byWinter!.untilOut.value, 0);
    const [, bales, kg] = /about ([\d,]+) bales, ([\d,]+) kg, are left over/.exec(text)!;
    expect(Math.abs(Number(kg!.replace(',', '')) - leftKg)).toBeLessThan(2);
    expect(Number(bales)).toBeGreaterThan(10);
    expect(text).toMatch(/keep about \d+ more head in summer/);
  });

  it.each([1, 2, 4, 6])(
    'would with the %d that are there never feed more than the land is said to carry, which is said beside it',
    (head) => {
      for (const classId of ['cow-calf', 'stocker'])
        for (const makesHay of [true, false]) {
          const { issues, stocking } = plannedPasture(
            newPastureRequest({
              paddocks: newPaddocks(10, { areaM2: 9000 }),
              herds: [newHerd({ groups: [newGroup({ classId, head })] })],
              choices: { makesHay },
            }),
          );
          const code = makesHay ? 'hay-over' : 'spare-grass';
          const { text } = issues.find((each) => each.code === code)!;
          const [, more, carries] =
            /keep about (\d+) more head in summer \(the land carries about (\d+) in all where none of it is mown/.exec(
              text,
            )!;
          expect(Number(carries)).toBe(Math.floor(stocking.capacity.value));
          expect(head + Number(more)).toBeLessThanOrEqual(Number(carries));
        }
    },
  );

  it('would feed as many more, in however many herds those are that eat there', () => {
    const moreOf = (...heads: number[]): number => {
      const plan = plannedPasture(
        newPastureRequest({
          paddocks: newPaddocks(12, { areaM2: 9000 }),
          herds: heads.map((head, k) =>
            newHerd({ id: `h${k}`, groups: [newGroup({ classId: 'dry-cow', head })] }),
          ),
        }),
      );
      const { text } = plan.issues.find(({ code }) => code === 'hay-over')!;
      return Number(/keep about (\d+) more head/.exec(text)![1]);
    };
    // Two herds are never in one paddock, so that what is left of each differs a little.
    expect(Math.abs(moreOf(3, 3) - moreOf(6))).toBeLessThanOrEqual(1);
    expect(moreOf(6)).toBeGreaterThan(4);
  });

  it('is for the next winter alone where the herds are out', () => {
    const out = plannedPasture(
      newPastureRequest({
        today: '2027-07-15',
        paddocks: newPaddocks(8, { areaM2: 4000 }),
        herds: [newHerd({ inPaddockId: 'p1', inSince: '2027-07-15' })],
        choices: { to: '2027-12-15' },
      }),
    );
    expect(out.hay.byWinter).toBeUndefined();
  });

  it('takes off what lies in store, and says when that is fed', () => {
    const full = planWith({ hayInStoreKg: 1e6 });
    expect(full.hay.toBuy.value).toBe(0);
    expect(full.hay.runsOut).toBeUndefined();
    expect(codes(full)).not.toContain('hay-to-buy');
    const little = planWith({ hayInStoreKg: 200 });
    expect(little.hay.toBuy.value).toBeCloseTo(none.hay.toBuy.value - 200, 0);
    expect(daysBetween(little.from, String(little.hay.runsOut!.value))).toBeLessThan(30);
    expect(little.issues.find(({ code }) => code === 'hay-to-buy')!.level).toBe('act');
  });
});

describe('a household that makes no hay', () => {
  const plan = planWith({ makesHay: false });

  it('mows nothing, has no work of it, and is told what could be spared', () => {
    expect(plan.surplus).toEqual([]);
    expect(plan.tasks.filter(({ templateId }) => templateId.startsWith('hay.'))).toEqual([]);
    expect(plan.issues.find(({ code }) => code === 'spare-grass')!.text).toMatch(
      /about \d+ bales? of hay/,
    );
  });

  // Spring outruns four cows in middle Tennessee, and the summer is short: that hay is for August.
  it('is told to feed what is spared where the same year is short later, not to keep more head', () => {
    const climate = climateFromMonthlyMeans(
      [-2, -0.4, 3.6, 8.4, 13.1, 17.5, 20.1, 19.3, 14.8, 8.7, 3.3, -0.6],
      [8.7, 11.5, 16.8, 22, 26.2, 29.8, 32.1, 31.5, 28, 22.6, 16.2, 10.6],
      6,
      [120, 115, 127, 134, 123, 109, 103, 95, 88, 96, 118, 129],
    );
    const short = plannedPasture(
      newPastureRequest({
        ...{ farm: { latitudeDeg: 35.47 }, climate, today: '2027-03-01' },
        paddocks: newPaddocks(6, { areaM2: 5390, forageId: 'mixed' }),
        herds: [newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 4 })] })],
        choices: { makesHay: false },
      }),
    );
    const spare = short.issues.find(({ code }) => code === 'spare-grass')!.text;
    expect(codes(short)).toContain('grass-short');
    expect(spare).toMatch(/feed it when grass is short.*about \d+ bales? less to buy/);
    expect(spare).not.toMatch(/more head/);
    expect(plan.hay.firstShort).toBeUndefined();
    expect(plan.issues.find(({ code }) => code === 'spare-grass')!.text).toMatch(/more head/);
  });

  it('tops what goes rank and is not missed, and that is work', () => {
    expect(plan.toppings.length).toBeGreaterThan(0);
    const acres = plan.toppings.reduce(
      (sum, { paddockId }) =>
        sum + plan.paddocks.find(({ id }) => id === paddockId)!.area.value / 4046.86,
      0,
    );
    const topped = plan.tasks.filter(({ templateId }) => templateId === 'grass.top');
    expect(topped.reduce((sum, { units }) => sum + units, 0)).toBeCloseTo(acres, 1);
    expect(planWith({}).toppings).toEqual([]);
  });

  it('buys all of it', () => {
    const { toStore, nextWinter, toBuy } = plan.hay;
    expect(toBuy.value).toBeCloseTo(toStore.value + nextWinter!.value, -1);
  });
});

describe('the bales of the hay', () => {
  it('are no more than their hay weighs, paddock by paddock together', () => {
    const { surplus } = planWith({});
    const kg = surplus.reduce((sum, { hay }) => sum + hay.value, 0);
    const bales = surplus.reduce((sum, cut) => sum + cut.bales.value, 0);
    const { value: eachKg } = surplus[0]!.bales.inputs.find(({ label }) =>
      label.startsWith('One'),
    )!;
    expect(Math.abs(bales - kg / Number(eachKg))).toBeLessThanOrEqual(surplus.length / 2);
    // Some cut ends in less than half a bale, which rounding up would count whole.
    const roundedUp = surplus.map(({ hay }) => Math.ceil(hay.value / Number(eachKg)));
    expect(bales).toBeLessThan(roundedUp.reduce((sum, each) => sum + each, 0));
  });

  it('are called little where a go gives one bale or so, and counted all the same', () => {
    const said = (choices: Partial<PastureChoices>) =>
      planWith(choices).issues.find(({ code }) => code === 'little-hay');
    // A baler of 500 kg, and one of 26 kg for the same grass.
    const round = said({ baleId: 'round-5x5' });
    expect(round?.text).toMatch(/less than 2 bales, and nothing else is mown with it/);
    expect(said({ baleId: 'small-square' })).toBeUndefined();
    const { surplus, hay } = planWith({ baleId: 'round-5x5' });
    expect(hay.own!.value).toBeCloseTo(
      surplus.reduce((sum, cut) => sum + cut.hay.value, 0),
      0,
    );
  });
});

describe('the work of the hay', () => {
  it('is hung on each cut with the acres of its paddocks, one after the other', () => {
    const plan = planWith({});
    const acres = (paddockId: string) =>
      plan.paddocks.find(({ id }) => id === paddockId)!.area.value / 4046.86;
    const mown = plan.tasks.filter(({ templateId }) => templateId === 'hay.mow');
    const cut = plan.surplus.reduce((sum, { paddockId }) => sum + acres(paddockId), 0);
    expect(mown.reduce((sum, { units }) => sum + units, 0)).toBeCloseTo(cut, 1);
    const first = plan.tasks.filter(({ id }) => id.includes('.h0.'));
    expect(first.map(({ templateId }) => templateId)).toEqual(
      ['mow', 'ted', 'rake', 'bale', 'stack', 'check'].map((each) => `hay.${each}`),
    );
    expect(first.map(({ start }) => start)).toEqual([...first.map(({ start }) => start)].sort());
  });

  it('is never asked for when hay does not dry', () => {
    for (const { cutOn } of planWith({}).surplus) {
      expect(cutOn.slice(5) > '05-01').toBe(true);
      expect(cutOn.slice(5) < '10-10').toBe(true);
    }
  });
});

describe('beside a plain rule', () => {
  // Five climates by their monthly means; a plain rule is what many do, and no figure of ours.
  it.each([
    ['cold hills', -4, 1],
    ['cool hills', 0, 1],
    ['warm', 4, 1],
    ['dry', 2, 0.6],
  ] as const)('feeds less by hand in the same season (%s)', (_, warmer, rain) => {
    const request = newPastureRequest({
      paddocks: newPaddocks(12, { areaM2: 4000 }),
      herds: [newHerd({ groups: [newGroup({ classId: 'cow-calf', head: 6 })] })],
      choices: { to: '2027-12-15' },
    });
    const { monthlyMinC, monthlyMaxC } = request.farm;
    const { saved } = plannedPasture({
      ...request,
      climate: climateFromMonthlyMeans(
        monthlyMinC.map((c) => c + warmer),
        monthlyMaxC.map((c) => c + warmer),
        6,
        RAIN_MM.map((mm) => rain * mm),
      ),
    }).hay;
    const [plain, plan] = saved.inputs.map(({ value }) => Number(value));
    expect(saved.value).toBeCloseTo(plain! - plan!, 1);
    expect(saved.value).toBeGreaterThan(0);
  });
});
