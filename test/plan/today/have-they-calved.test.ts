import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { CalvingTold } from '../../../shared/farm/calving-told.js';
import { haveTheyCalved } from '../../../shared/plan/today/have-they-calved.js';
import { bornOf, notInCalfOf } from '../../../shared/plan/today/calving-asked.js';
import { herdLines } from '../../../shared/plan/today/herd-line.js';
import { withTicks, type Today } from '../../../shared/plan/today/today.js';
import { withoutBirthsTold } from '../../../shared/plan/work/births-told.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { newRequest, tables } from '../../support/factories.js';
import { newCow, newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const DUE = '2027-04-16';
const { farm, climate } = newRequest({ farm: { units: 'us' } });
const rosa = newCow({ id: 'rosa', name: 'Rosa', classId: 'dry-cow', calvesOn: DUE });
const herd = newHerd({
  groups: [newGroup({ classId: 'dry-cow', head: 3, calvesOn: '2027-05-16' })],
});
const born = (more: Partial<CalvingTold>): CalvingTold => ({
  ...{ herdId: herd.id!, date: DUE, calves: 1 },
  ...more,
});
const at = (today: string, calvings: CalvingTold[] = [], paddocks = newPaddocks(2)) =>
  newPicture({ farm, climate, today, paddocks, herds: [herd], cows: [rosa], calvings });
const asked = (today: string, calvings: CalvingTold[] = []) =>
  haveTheyCalved(at(today, calvings), tables);
const words = (today: string, calvings: CalvingTold[] = []) =>
  asked(today, calvings).map((each) => each.words);

describe('cows that were due, of which nobody told that they calved', () => {
  it('are asked after by name from some days past the due date, and not before', () => {
    expect(words('2027-04-19')).toEqual([]);
    expect(words('2027-04-20')).toEqual([
      expect.stringMatching(/^did the calf of Rosa come\? She was due on .*Apr 16$/),
    ]);
    expect(asked('2027-04-20')[0]).toMatchObject({
      ...{ of: herd.name, isAlarm: true },
      calving: { herdId: herd.id, cowId: 'rosa', dueOn: DUE, head: 1 },
    });
    expect(asked('2027-04-20')[0]!.text).not.toMatch(/overdue/);
    expect(asked('2027-05-10')[0]!.text).toMatch(/overdue.*call your veterinarian/);
  });

  it('are asked after until it is told, long after the usual days as well', () => {
    for (const today of ['2027-05-15', '2027-07-15', '2027-10-20'])
      expect(words(today)[0]).toMatch(/Rosa/);
    expect(words('2027-07-15')[1]).toMatch(
      /^did the calves come\? 2 cows were due about .*May 16$/,
    );
    expect(words('2027-04-20', [born({ cowId: 'rosa' })])).toEqual([]);
  });

  it('have time until the last usual day where others of their group have calved', () => {
    const one = [born({ cowId: 'rosa' }), born({ date: '2027-05-15' })];
    expect(words('2027-05-24', one)).toEqual([]);
    expect(words('2027-05-27', one)).toEqual([
      expect.stringMatching(/^have the others calved\? 1 of 2 has, due about .*May 16$/),
    ]);
  });

  it('are waited for no more once they are told to be not in calf, and nothing is left of it to do', () => {
    const empty = [born({ date: '2027-05-10', calves: 0, notInCalf: 1, cowId: 'rosa' })];
    expect(words('2027-05-10', empty)).toEqual([]);
    const picture = at('2027-05-10', empty);
    const { tasks } = planPasture(picture, tables);
    const of = (list: typeof tasks) => list.filter(({ id }) => id.startsWith('cow-rosa.'));
    expect(of(tasks)).not.toEqual([]);
    expect(of(withoutBirthsTold(tasks, herd, picture, tables))).toEqual([]);
    // The others of the herd are still to come.
    expect(words('2027-05-20', empty)).toEqual([
      expect.stringMatching(/2 cows were due about .*May 16/),
    ]);
    const none = [...empty, born({ date: '2027-05-20', calves: 0, notInCalf: 2 })];
    expect(words('2027-05-20', none)).toEqual([]);
  });

  it('are those of the group that was asked after, whatever other group is due about now', () => {
    const dry = newGroup({ classId: 'dry-cow', head: 3, calvesOn: DUE });
    const heifers = newGroup({ classId: 'heifer', head: 5, calvesOn: '2027-05-16' });
    const of = (today: string, calvings: CalvingTold[] = []) =>
      haveTheyCalved(
        newPicture({
          ...{ farm, climate, today, calvings, cows: [] },
          ...{ paddocks: newPaddocks(2), herds: [newHerd({ groups: [dry, heifers] })] },
        }),
        tables,
      );
    // Nearer to the day of the heifers than to that of the cows.
    const [cows] = of('2027-05-06');
    const told = { herdId: herd.id!, date: '2027-05-06' };
    const some = { ...told, ...notInCalfOf(cows!.calving!, 1) };
    expect(of('2027-05-06', [some])[0]!.words).toMatch(/^did the calves come\? 2 cows/);
    const none = { ...told, ...notInCalfOf(cows!.calving!) };
    expect(of('2027-05-06', [none])).toEqual([]);
    const heifersAsked = of('2027-05-20', [none]).map(({ words: said }) => said);
    expect(heifersAsked).toEqual([expect.stringMatching(/5 cows were due about .*May 16$/)]);
    // A birth that was told there is of them as well.
    const birth = { ...told, ...bornOf(cows!.calving!) } as CalvingTold;
    expect(of('2027-05-20', [birth]).map(({ words: said }) => said)).toEqual([
      expect.stringMatching(/1 of 3 has/),
      expect.stringMatching(/5 cows/),
    ]);
  });

  it('are no named cow of the herd that is due about now, where a group is asked after', () => {
    const [group] = asked('2027-07-15', [born({ cowId: 'rosa' })]);
    // The page would fill in the one cow that is due.
    expect({ cowId: 'bella', ...bornOf(group!.calving!) }.cowId).toBeUndefined();
    expect(bornOf(asked('2027-04-20')[0]!.calving!)).toEqual({ calves: 1, cowId: 'rosa' });
  });

  it('are said at the herd while they are awaited, and once they are overdue only here', () => {
    const one = [born({ cowId: 'rosa' }), born({ date: '2027-05-15' })];
    const lineOf = (today: string) => herdLines(at(today, one), tables, undefined)[0]!.calving;
    expect(lineOf('2027-05-24')).toEqual([expect.stringMatching(/^1 of 2 has calved, 1 to come/)]);
    expect(lineOf('2027-05-27')).toBeUndefined();
    expect(words('2027-05-27', one)).toHaveLength(1);
  });

  it('say what telling changes, and what not', () => {
    expect(asked('2027-04-20')[0]!.text).toMatch(/she is waited for.*also once it is told\.$/);
    expect(asked('2027-07-15')[1]!.text).toMatch(/they are waited for.*as with calves/);
  });

  it('are asked after again a week after it was put off, not sooner', () => {
    const seenOn = '2027-04-22';
    const shown = (today: string) => {
      const attention = asked(today);
      const day = { attention, chores: [], date: today } as unknown as Today;
      return withTicks(day, new Map(), new Map([[attention[0]!.key, seenOn]])).attention.length;
    };
    expect([0, 6, 7, 30].map((days) => shown(addDays(seenOn, days)))).toEqual([0, 0, 1, 2]);
  });
});
