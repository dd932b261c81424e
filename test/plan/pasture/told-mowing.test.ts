import { describe, expect, it } from '@jest/globals';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { Grazing } from '../../../shared/farm/herd-places.js';
import type { Mowing } from '../../../shared/farm/mowing.js';
import type { Surplus } from '../../../shared/plan/pasture/surplus.js';
import type { PasturePlan } from '../../../shared/plan/pasture/pasture-plan.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const herd = newHerd({ groups: [newGroup({ classId: 'dry-cow', head: 4 })] });
const request = newPastureRequest({
  paddocks: newPaddocks(10, { areaM2: 3000 }),
  herds: [herd],
  choices: { to: '2027-12-15' },
});
const plan = plannedPasture(request);

/** Planned again on a day, the herd moved as planned until then. */
function planAgain(today: string, mowings: readonly Mowing[], more: object = {}): PasturePlan {
  const walked = plan.moves.filter(({ from }) => from < today);
  const grazings = walked.map(({ herdId, paddockId, from, to }): Grazing =>
    to < addDays(today, -1) ? { herdId, paddockId, from, to } : { herdId, paddockId, from },
  );
  const here = walked.find(({ to }) => addDays(today, -1) <= to);
  return plannedPasture({
    ...request,
    ...{ today, grazings, mowings },
    choices: { ...request.choices, ...more },
    herds: [{ ...herd, ...(here ? { inPaddockId: here.paddockId, inSince: here.from } : {}) }],
    paddocks: request.paddocks.map((own) => {
      const last = walked.findLast(({ paddockId, to }) => paddockId === own.id && to < today);
      return last && last !== here ? { ...own, lastGrazedOn: last.to } : own;
    }),
  });
}

const cut = plan.surplus[0]!;
const mown = (date: string, more: Partial<Mowing> = {}): Mowing => ({
  ...{ id: 'm', paddockId: cut.paddockId, date },
  ...more,
});
/** Told as it was planned: all that was mown before a day. */
const asPlanned = (today: string): Mowing[] =>
  plan.surplus
    .filter(({ cutOn }) => cutOn < today)
    .map(({ paddockId, cutOn }, k) => ({ id: `m${k}`, paddockId, date: cutOn }));
/** First day on which a cut that nobody told is taken as made: its work's days are over. */
const afterAll = ({ mowFrom }: Surplus): string => addDays(mowFrom, 23);
const standing = (of: PasturePlan): number =>
  of.paddocks.find(({ id }) => id === cut.paddockId)!.mass.value;

describe('what is told of mowing', () => {
  it('changes nothing when it was done as planned', () => {
    const today = addDays(cut.cutOn, 4);
    const told = planAgain(today, asPlanned(today));
    const ahead = ({ moves }: PasturePlan) =>
      moves.filter(({ from }) => today < from).map(({ paddockId, from }) => [paddockId, from]);
    expect(ahead(told)).toEqual(ahead(plan));
    expect(told.surplus).toEqual(plan.surplus.filter(({ cutOn }) => today <= cutOn));
  });

  it('stays to be done, on the days that its work has, until somebody tells it', () => {
    const [first] = plan.mowingWork;
    const idsOf = ({ tasks }: PasturePlan): string[] =>
      tasks.filter(({ id }) => id.startsWith(`${herd.id}.h0.`)).map(({ id, start }) => id + start);
    for (const days of [1, 9, 21]) {
      const today = addDays(cut.mowFrom, days);
      const untold = planAgain(today, []);
      const still = untold.surplus.find(({ paddockId }) => paddockId === cut.paddockId)!;
      expect(still).toMatchObject({ mowFrom: cut.mowFrom, cutOn: today });
      expect(untold.mowingWork[0]).toEqual(first);
      expect(idsOf(untold)).toEqual(idsOf(plan));
      expect(untold.hay.taken).toBeUndefined();
      // It stands as it grew, and no herd is sent in.
      expect(standing(untold)).toBeGreaterThan(0.9 * standing(planAgain(cut.mowFrom, [])));
      const into = untold.moves.filter(({ paddockId }) => paddockId === cut.paddockId);
      for (const { from } of into) expect(daysBetween(today, from)).toBeGreaterThanOrEqual(5);
    }
    // Its number is given to no other, so that no tick is read as that of another cut.
    const over = planAgain(afterAll(cut), []);
    expect(over.mowingWork.map(({ key }) => key)).not.toContain(first!.key);
  });

  it('goes before what was planned: on another day the grass grows from then', () => {
    const today = addDays(cut.cutOn, 9);
    const [assumed, early, late] = [
      planAgain(today, [mown(cut.cutOn)]),
      planAgain(today, [mown(addDays(cut.cutOn, -6))]),
      planAgain(today, [mown(addDays(cut.cutOn, 6))]),
    ];
    expect(standing(early)).toBeGreaterThan(standing(assumed) + 100);
    expect(standing(late)).toBeLessThan(standing(assumed) - 100);
  });

  it('keeps a paddock closed while its hay dries, and not what was topped', () => {
    const today = addDays(cut.cutOn, 1);
    const closed = (of: PasturePlan) =>
      Math.min(
        ...of.moves
          .filter(({ paddockId, from }) => paddockId === cut.paddockId && today <= from)
          .map(({ from }) => daysBetween(today, from)),
      );
    expect(closed(planAgain(today, [mown(today)]))).toBeGreaterThanOrEqual(5);
    const topped = planAgain(today, [mown(today, { isLeftLying: true })]);
    // It is history: neither a cut of the plan nor work of it.
    expect(
      topped.surplus.some(({ paddockId, cutOn }) => paddockId === cut.paddockId && cutOn <= today),
    ).toBe(false);
  });

  it('puts its bales into the store that was counted before, and into none counted later', () => {
    const today = addDays(cut.cutOn, 4);
    const of = (bales: number): Mowing[] =>
      asPlanned(today).map((each) =>
        each.paddockId === cut.paddockId ? { ...each, bales } : each,
      );
    const bales = of(4);
    const winter = { to: '2028-04-15', baleId: request.tables.pasture.hay.bales[0]!.id };
    const kg = 4 * request.tables.pasture.hay.bales[0]!.kg;
    // Half of these bales are lacking by the end of the winter.
    const { toStore, own } = planAgain(today, asPlanned(today), winter).hay;
    const store = { ...winter, hayInStoreKg: toStore.value - own!.value - kg / 2 };
    expect(store.hayInStoreKg).toBeGreaterThan(0);
    const toBuy = (mowings: readonly Mowing[], more: object) =>
      planAgain(today, mowings, { ...store, ...more }).hay;
    const none = toBuy(asPlanned(today), { hayInStoreOn: plan.from });
    const before = toBuy(bales, { hayInStoreOn: plan.from });
    expect(before.baled!.value).toBeCloseTo(kg, 6);
    // Instead of what was taken as made of that cut.
    expect(none.taken!.value).toBeGreaterThan(before.taken?.value ?? 0);
    const empty = { hayInStoreOn: plan.from, hayInStoreKg: 0 };
    const [one, two] = [toBuy(of(1), empty), toBuy(of(2), empty)];
    expect(two.toBuy.value).toBeCloseTo(one.toBuy.value - kg / 4, 1);
    // With it the store lasts.
    expect(toBuy(bales, { hayInStoreOn: today }).runsOut).toBeDefined();
    expect(before.runsOut).toBeUndefined();
    expect(toBuy(bales, { hayInStoreOn: cut.cutOn }).baled).toBeUndefined();
    // Counted nobody knows when: the bales may be among it.
    expect(toBuy(bales, {}).baled).toBeUndefined();
  });

  it('is asked for once its day is past, and its hay counts as made until then', () => {
    const today = afterAll(cut);
    const untold = planAgain(today, []);
    const due = untold.hay.untoldCuts!;
    const planned = plan.surplus.filter((each) => afterAll(each) <= today);
    const leastKg = planned.reduce((sum, { hay }) => sum + hay.value, 0);
    const kg = untold.hay.taken!.value;
    expect(leastKg).toBeGreaterThan(500);
    // Mown on the last of its days, when some of it has died off or more has grown.
    expect(kg / leastKg).toBeGreaterThan(0.8);
    expect(kg / leastKg).toBeLessThan(1.25);
    const asked = (of: PasturePlan) => of.issues.find(({ code }) => code === 'hay-untold');
    expect(asked(untold)).toMatchObject({ level: 'act' });
    expect(due.map(({ paddockId }) => paddockId)).toEqual(
      planned.map(({ paddockId }) => paddockId),
    );
    for (const { on } of due) expect(on < today).toBe(true);
    for (const { paddockId } of due)
      expect(asked(untold)!.text).toContain(
        request.paddocks.find(({ id }) => id === paddockId)!.name,
      );
    // Told without its bales, as much is made of it; with them, these count instead.
    const told = (more: Partial<Mowing>): PasturePlan =>
      planAgain(
        today,
        due.map(({ paddockId, on }, k) => ({ id: `m${k}`, paddockId, date: on, ...more })),
      );
    expect(told({}).hay.taken!.value).toBeCloseTo(kg, 0);
    expect(asked(told({}))).toMatchObject({ level: 'note' });
    expect(asked(told({}))!.text).toContain(`${due.length === 1 ? 'it' : 'they'} gave.`);
    const counted = told({ bales: 2 });
    expect(counted.hay.taken).toBeUndefined();
    expect(asked(counted)).toBeUndefined();
    expect(told({ isLeftLying: true }).hay.taken).toBeUndefined();
    // A store that was counted since holds it.
    const store = { hayInStoreKg: 3000, hayInStoreOn: addDays(today, -1) };
    expect(planAgain(today, [], store).hay.taken).toBeUndefined();
    const before = { ...store, hayInStoreOn: plan.from };
    const { toBuy, taken } = planAgain(today, [], before).hay;
    expect(taken!.value).toBeCloseTo(kg, 0);
    expect(toBuy.inputs.map(({ value }) => value)).toContain(taken!.value);
  });

  it('is no reason to buy none: what is to be bought if it was not made is said as well', () => {
    const today = afterAll(cut);
    const needKg = planAgain(today, []).hay.toBuyUnmade!.value;
    // Enough lies in store only with what is taken as made.
    const takenKg = planAgain(today, []).hay.taken!.value;
    // Of what was counted some has been fed since.
    const much = { hayInStoreKg: 1e6, hayInStoreOn: plan.from };
    const fedKg = 1e6 - planAgain(today, [], much).hay.inStore!.value;
    const hayInStoreKg = needKg + fedKg - takenKg / 2;
    const store = { hayInStoreKg, hayInStoreOn: plan.from };
    const { hay, issues } = planAgain(today, [], store);
    expect(hay.toBuy.value).toBe(0);
    expect(hay.toBuyUnmade!.value).toBeCloseTo(takenKg / 2, 0);
    const said = issues.find(({ code }) => code === 'hay-to-buy')!;
    expect(said.text).toContain('nothing, with');
    expect(said.text).toContain('If none was made of the hay taken as made, it is about');
    const told = planAgain(today, [mown(cut.cutOn, { bales: 4 })], { hayInStoreKg: 1e6 });
    expect(told.hay.toBuyUnmade).toBeUndefined();
  });

  it('by the tick of its work keeps the work on its hay, and gives its number to no other', () => {
    const [work, ...others] = plan.mowingWork;
    expect(others.length).toBeGreaterThan(0);
    const tickedBy = (date: string): Mowing[] =>
      work!.paddockIds.map((paddockId, k) => ({
        ...mown(date, { work: work!.key, id: `m${k}` }),
        paddockId,
      }));
    const idsOf = ({ tasks }: PasturePlan): string[] =>
      tasks.filter(({ event }) => event === 'mowing').map(({ id }) => id);
    const first = (ids: readonly string[]): string[] =>
      ids.filter((id) => id.startsWith(`${herd.id}.h0.`));
    const after = planAgain(cut.cutOn, tickedBy(cut.cutOn));
    expect(first(idsOf(after))).toEqual(first(idsOf(plan)));
    expect(after.mowingWork.map(({ key }) => key)).toEqual(plan.mowingWork.map(({ key }) => key));
    expect(after.surplus).toHaveLength(plan.surplus.length - work!.paddockIds.length);
    // What the stand is is known at once: it was cut to the stubble this morning.
    expect(standing(after)).toBeLessThan(standing(planAgain(addDays(cut.cutOn, -1), [])) / 2);
    const later = planAgain(addDays(cut.cutOn, 20), tickedBy(cut.cutOn));
    expect(first(idsOf(later))).toEqual([]);
    expect(later.mowingWork.map(({ key }) => key)).not.toContain(work!.key);
  });
});
