import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../shared/calendar/plain-date.js';
import { climateFromMonthlyMeans } from '../../shared/weather/climate.js';
import { newRequest } from '../support/factories.js';
import { exampleOrder } from '../support/orders.js';
import { plannedBatch } from '../support/pictures.js';

// Averages of three invented farms: cool hills, a mild coast, a warm south.
const FARMS = {
  hills: {
    latitudeDeg: 42.9,
    monthlyMinC: [-11, -10.5, -5.5, 0.8, 6.7, 12, 14.4, 13.6, 9.6, 3.9, -0.8, -7],
    monthlyMaxC: [-1.5, -0.3, 4.8, 12.3, 19.3, 23.8, 26.1, 25, 20.9, 13.9, 6.9, 0.9],
    ...{ lastFrost: '05-20', firstFrost: '09-28' },
  },
  coast: {
    latitudeDeg: 51.8,
    monthlyMinC: [2.4, 2.2, 3.6, 5.1, 8, 11, 13, 12.9, 10.6, 7.9, 4.8, 2.6],
    monthlyMaxC: [8, 8.6, 11.3, 14.2, 17.6, 20.7, 23.1, 22.6, 19.4, 15.1, 11, 8.3],
    ...{ lastFrost: '04-25', firstFrost: '10-25' },
  },
  south: {
    latitudeDeg: 33.5,
    monthlyMinC: [1, 2.5, 6, 9.5, 14.5, 19, 21, 20.5, 17.5, 11, 6, 2.3],
    monthlyMaxC: [11.5, 13.7, 18, 22.5, 26.5, 30, 31.5, 31, 28, 23, 18, 13],
    ...{ lastFrost: '04-01', firstFrost: '11-05' },
  },
} as const;

const planAt = (place: keyof typeof FARMS, arrivalDate: string, more: object = {}) => {
  const farm = FARMS[place] as unknown as Record<string, never>;
  const climate = climateFromMonthlyMeans(FARMS[place].monthlyMinC, FARMS[place].monthlyMaxC, 6);
  return plannedBatch(newRequest({ farm, climate, batch: { arrivalDate, ...more } }));
};

const codesOf = ({ issues }: ReturnType<typeof planAt>) => issues.map(({ code }) => code);

const wayOf = ({ waysOut }: ReturnType<typeof planAt>['outdoors'], id: string) =>
  waysOut.find((way) => way.id === id)!.out!;

// The nights of 45 °F at three weeks are keepers' (second-hand); that they speak of single nights
// and not of averages is how all the rules found are worded.
describe('the day out of the brooder', () => {
  it.each(['hills', 'coast', 'south'] as const)('is later the surer it is to be: %s', (place) => {
    const { outdoors } = planAt(place, '2027-05-05');
    // The rule for hardened birds asks less of each night, and stands for itself.
    const found = outdoors.waysOut.flatMap(({ id, out }) =>
      out && id !== 'hardened' ? [{ on: String(out.on.value), cold: out.coldNight.value }] : [],
    );
    expect(found.length).toBeGreaterThan(1);
    expect(found.map(({ on }) => on)).toEqual(found.map(({ on }) => on).sort());
    const chances = found.map(({ cold }) => cold);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    // Not before three weeks of age, and as sure as the household chose.
    expect(outdoors.ageAtMove!.value).toBeGreaterThanOrEqual(21);
    const chosen = planAt(place, '2027-05-05', { nightSuretyId: 'five-in-six' });
    expect(chosen.outdoors.moveOut!.value).toBe(wayOf(outdoors, 'five-in-six').on.value);
  });

  // Pages of farms (OUT_BY_FOUR_WEEKS, second-hand): out at three to four weeks, lamps and a sheet in
  // the pen for the cold nights.
  it('is at three to four weeks where nobody chose a way, with the cold nights named', () => {
    const plan = planAt('hills', '2027-05-05');
    expect(plan.outdoors.ageAtMove!.value).toBeGreaterThanOrEqual(21);
    expect(plan.outdoors.ageAtMove!.value).toBeLessThanOrEqual(28);
    expect(plan.outdoors.waysOut.find(({ isChosen }) => isChosen)!.id).toBe('half');
    expect(plan.issues.find(({ code }) => code === 'move-out-unsure')!.text).toMatch(
      /^Expect about \d nights? below .* among the first 7 after the move .* have a tarp .* heat hung/,
    );
    expect(codesOf(plan)).not.toContain('long-in-brooder');
    // Started earlier, they are let out by what hardened birds stand, but not before they are feathered.
    const early = planAt('hills', '2027-04-14').outdoors;
    const way = early.waysOut.find(({ isChosen }) => isChosen)!;
    expect(way.id).toBe('feathered');
    expect(early.ageAtMove!.value).toBe(28);
    expect(way.out!.on.value).toBe(early.moveOut!.value);
    expect(way.out!.because).toMatch(/^Held to 28 days of age, when they are feathered/);
  });

  it('is not days before they leave', () => {
    const plan = planAt('hills', '2027-03-16');
    expect(plan.outdoors.moveOut).toBeUndefined();
    expect(plan.tasks.tasks.map(({ templateId }) => templateId)).not.toContain(
      'move-to-pasture.catch-move-and-count',
    );
    expect(plan.issues.find(({ code }) => code === 'move-too-late')!.text).toMatch(
      /only from .* 2027, [1-6] days before they leave/,
    );
  });

  it('does not go by the average: half of the nights are colder', () => {
    const { outdoors } = planAt('hills', '2027-05-05');
    const half = wayOf(outdoors, 'half');
    expect(half.on.value).toBe('2027-05-25');
    expect(half.coldNight.value).toBeGreaterThan(0.7);
    expect(wayOf(outdoors, 'five-in-six').coldNight.value).toBeLessThan(0.5);
    expect(planAt('hills', '2027-05-05', { nightSuretyId: 'half' }).outdoors.moveOut!.value).toBe(
      '2027-05-25',
    );
  });

  it('says of turkeys nothing that keepers do with chickens', () => {
    const text = (strainId: string): string =>
      planAt('hills', '2027-04-07', { strainId, nightSuretyId: 'nine-in-ten' }).issues.find(
        ({ code }) => code === 'long-in-brooder',
      )?.text ?? '';
    expect(text('turkey')).toContain('They could go out sooner');
    expect(text('turkey')).not.toContain('three to four weeks');
  });

  it('is for pullets at midsummer a week after the heat is off, not two', () => {
    // Keepers (second-hand) have six-week birds that are used to it out at nights of 4 °C (40 °F).
    const pullets = { purpose: 'layers', strainId: 'brown-layer', sex: 'pullets' };
    const { ageAtMove } = planAt('hills', '2027-05-05', pullets).outdoors;
    expect(ageAtMove!.value).toBeGreaterThan(42);
    expect(ageAtMove!.value).toBeLessThanOrEqual(50);
  });

  it('is said to be unsure, with what to do on a cold night', () => {
    const plan = planAt('hills', '2027-05-05', { nightSuretyId: 'half' });
    expect(codesOf(plan)).toContain('move-out-unsure');
    expect(plan.issues.find(({ code }) => code === 'move-out-unsure')!.text).toMatch(
      /^Expect about \d nights below .*a tarp over the roof .* dry deep bedding, and safe heat/,
    );
  });

  it('names the day for the bolder where no night is sure enough', () => {
    const plan = planAt('hills', '2027-08-25', { nightSuretyId: 'five-in-six' });
    expect(plan.outdoors.moveOut).toBeUndefined();
    expect(plan.issues.find(({ code }) => code === 'no-warm-nights')!.text).toMatch(
      /They could go out Tue 14 Sep 2027 \(From 3 weeks, hardened off .*\); (less than one|about \d) nights? of the first week would then be too cold/,
    );
  });

  it('is never in winter without a word', () => {
    const fixed = planAt('hills', '2027-10-20', { moveOutDate: '2027-12-08' });
    expect(codesOf(fixed)).toEqual(expect.arrayContaining(['move-into-winter', 'move-out-cold']));
    expect(codesOf(planAt('south', '2027-05-05'))).not.toContain('move-into-winter');
  });

  it('looks at every night to the end: birds of fall meet cold later', () => {
    const plan = planAt('coast', '2027-09-01', { moveOutDate: '2027-09-22' });
    expect(plan.issues.find(({ code }) => code === 'cold-later')!.text).toMatch(
      /^From \w{3} \d+ (Sep|Oct) 2027 nights are often below/,
    );
    const series = plan.daily.find(({ id }) => id === 'night-too-cold')!;
    expect(Math.max(...series.values)).toBeGreaterThan(1 / 6);
    expect(series.values[0]).toBe(0);
  });

  it('believes a forecast, less the farther ahead it is', () => {
    const farm = FARMS.hills as unknown as Record<string, never>;
    const climate = climateFromMonthlyMeans(FARMS.hills.monthlyMinC, FARMS.hills.monthlyMaxC, 6);
    const chanceWith = (today: string, minC: number) => {
      const forecast = Array.from({ length: 7 }, (_, k) => ({
        ...{ date: addDays('2027-06-11', k), minC, maxC: 22 },
      }));
      const batch = { arrivalDate: '2027-05-05', moveOutDate: '2027-06-11' };
      const request = newRequest({ farm, batch, today, climate: { ...climate, forecast } });
      return plannedBatch(request).outdoors.coldNight!.value;
    };
    expect(chanceWith('2027-06-11', 3)).toBeGreaterThan(0.95);
    expect(chanceWith('2027-06-11', 12)).toBeLessThan(chanceWith('2027-06-04', 12));
  });

  it('takes typed frost dates for the usual ones unless they are the safe ones', () => {
    const chance = (frostDatesAre?: 'usual' | 'safe') => {
      const farm = { ...FARMS.hills, frostDatesAre } as unknown as Record<string, never>;
      const climate = climateFromMonthlyMeans(FARMS.hills.monthlyMinC, FARMS.hills.monthlyMaxC, 6);
      const batch = { arrivalDate: '2027-05-05', moveOutDate: '2027-06-01' };
      return plannedBatch(newRequest({ farm, climate, batch })).outdoors.coldNight!.value;
    };
    expect(chance('usual')).toBe(chance());
    expect(chance('safe')).toBeLessThan(chance('usual'));
  });
});

// Keepers of small flocks put fast meat birds out at three to four weeks, into a closed shelter with
// a tarp, or with a lamp for the first weeks where nights are colder than 45 °F.
describe('the ways to go out', () => {
  const { outdoors } = planAt('hills', '2027-04-21');

  it('stand side by side with one of them chosen, each with its age and its cold nights', () => {
    expect(outdoors.waysOut.map(({ id }) => id)).toEqual([
      ...['feathered', 'with-heat', 'hardened', 'half', 'five-in-six', 'nine-in-ten'],
    ]);
    expect(outdoors.waysOut.filter(({ isChosen }) => isChosen).map(({ id }) => id)).toEqual([
      'feathered',
    ]);
    expect(wayOf(outdoors, 'with-heat').age.value).toBe(21);
    expect(wayOf(outdoors, 'hardened').age.value).toBeLessThan(29);
    expect(wayOf(outdoors, 'five-in-six').because).toMatch(/^Their age sets it: from 42 days/);
    expect(outdoors.moveOut!.value).toBe(wayOf(outdoors, 'feathered').on.value);
  });

  it.each(['with-heat', 'hardened', 'half', 'five-in-six', 'nine-in-ten'])(
    'can be chosen: %s',
    (id) => {
      const { chosenBy, out } = outdoors.waysOut.find((way) => way.id === id)!;
      const chosen = planAt('hills', '2027-04-21', chosenBy);
      expect(chosen.outdoors.moveOut!.value).toBe(out!.on.value);
      expect(chosen.outdoors.waysOut.find(({ isChosen }) => isChosen)!.id).toBe(id);
      const asksForHeat = codesOf(chosen).includes('move-out-with-heat');
      expect(asksForHeat).toBe(id === 'with-heat');
    },
  );

  it('put a date of the household’s own beside the others', () => {
    const moveOutDate = '2027-05-16';
    const { waysOut, moveOut } = planAt('hills', '2027-04-21', { moveOutDate }).outdoors;
    expect(moveOut!.value).toBe(moveOutDate);
    expect(waysOut[0]).toMatchObject({ id: 'own-date', isChosen: true });
    expect(waysOut.map(({ out }) => out?.on.value).slice(1)).toEqual(
      outdoors.waysOut.slice(1).map(({ out }) => out?.on.value),
    );
  });

  it('say of a date that two of them share that the age sets it', () => {
    const { waysOut } = planAt('south', '2027-05-05').outdoors;
    expect(waysOut.at(-1)!.out!.because).toMatch(/^Same date as “.*”: not before 21 days of age/);
  });
});

describe('heat in the pen', () => {
  const order = exampleOrder();
  const goingBy = (nightSuretyId: string) =>
    plannedBatch(
      newRequest({
        farm: order.farm,
        facilities: order.facilities,
        today: order.today,
        batch: { ...order.batch, nightSuretyId },
      }),
    );

  it('is billed by the nights to expect, where the birds go out by their age with it', () => {
    const { outdoors, bill } = goingBy('with-heat');
    const { cost } = bill.lines.find(({ label }) => label === 'Heat in the pen')!;
    const aNight = outdoors.oneColdNight!.heat!.value;
    const inTheFirstWeek = wayOf(outdoors, 'with-heat').coldNights.value;
    // The second week has cold nights too, and hardly more of them than the first.
    expect(cost!.value).toBeGreaterThan(0.95 * inTheFirstWeek * aNight);
    expect(cost!.value).toBeLessThan(2.1 * inTheFirstWeek * aNight);
    expect(bill.total.inputs.map(({ label }) => label)).toContain('Heat in the pen');
  });

  it('is not billed where the nights are waited for', () => {
    const { bill } = goingBy('five-in-six');
    expect(bill.lines.map(({ label }) => label)).not.toContain('Heat in the pen');
  });
});
