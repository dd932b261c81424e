import { describe, expect, it } from '@jest/globals';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { tables } from '../../support/factories.js';
import { COUNTED_KG, looksAtHayFarm, startedHayFarm } from '../../support/hay-farm.js';

const looks = looksAtHayFarm();
const [start, april, may] = looks;
const july = looks.at(-1)!;

describe('hay that was counted', () => {
  it('is what was counted on the day of the count', () => {
    const { hay, issues } = start!.plan;
    expect(hay.inStore).toMatchObject({ value: COUNTED_KG, label: 'Hay in store' });
    expect(issues.map(({ code }) => code)).not.toContain('hay-count-again');
  });

  // 256 lb a day for five months, as the plan of the first day fed it.
  it('goes down by what was fed until they went out, and is shown as reckoned', () => {
    const { hay } = july.plan;
    const { untilPlan, toStore } = start!.plan.hay;
    const fedKg = COUNTED_KG - hay.inStore!.value;
    expect(fedKg).toBeGreaterThan(untilPlan!.value + toStore.value / 3);
    expect(fedKg / COUNTED_KG).toBeGreaterThan(0.7);
    expect(fedKg / COUNTED_KG).toBeLessThan(1);
    expect(hay.inStore!.label).toBe('Hay in store, reckoned');
    expect(april!.plan.hay.inStore!.value).toBeGreaterThan(hay.inStore!.value);
    // Out on grass they eat none.
    expect(may!.plan.hay.inStore!.value).toBeCloseTo(hay.inStore!.value, 0);
  });

  it('is asked for anew, and what is needed until grass again is not taken off twice', () => {
    const asked = july.plan.issues.find(({ code }) => code === 'hay-count-again');
    expect(asked!.text).toMatch(
      /^How much hay lies in store\? Of 49,505 lb counted on Mon, Nov 30/,
    );
    const { untilOut } = start!.plan.hay.byWinter!;
    expect(april!.plan.hay.byWinter!.untilOut.value).toBe(untilOut.value);
    const { picture } = july;
    const counted = { hayInStoreKg: 3000, hayInStoreOn: picture.today };
    const again = planPasture(
      { ...picture, pastureChoices: { ...picture.pastureChoices, ...counted } },
      tables,
    );
    expect(again.hay.inStore).toMatchObject({ value: 3000, label: 'Hay in store' });
    expect(again.issues.map(({ code }) => code)).not.toContain('hay-count-again');
  });

  it('is not fed all summer to a herd of which nobody told anything', () => {
    const untold = planPasture({ ...startedHayFarm(), today: '2027-07-01' }, tables);
    const ratio = untold.hay.inStore!.value / july.plan.hay.inStore!.value;
    expect(ratio).toBeGreaterThan(0.6);
    expect(ratio).toBeLessThan(1.4);
  });

  it('when it is all fed takes from bales that were told since, never more than there are', () => {
    const { picture } = july;
    const [paddock] = picture.paddocks;
    const mowings = [{ id: 'm', paddockId: paddock!.id, date: '2026-12-20', bales: 30 }];
    const of = (hayInStoreKg: number) =>
      planPasture(
        {
          ...{ ...picture, mowings },
          pastureChoices: { ...picture.pastureChoices, hayInStoreKg },
        },
        tables,
      ).hay;
    const whole = of(1e6);
    const part = of(5000);
    expect(part.inStore!.value).toBe(0);
    const fedKg = 1e6 - whole.inStore!.value;
    expect(part.baled!.value).toBeCloseTo(whole.baled!.value + 5000 - fedKg, 0);
  });
});
