import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import { movesKey } from '../../../shared/farm/herd-move-work.js';
import { withMovesAssumed } from '../../../shared/plan/pasture/moves-assumed.js';
import type { Move } from '../../../shared/plan/pasture/moves.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { freshGrassOf } from '../../../shared/plan/pasture/strips.js';
import { goesByChore } from '../../../shared/plan/work/herd-goes.js';
import { herdLines } from '../../../shared/plan/today/herd-line.js';
import { silentHerds } from '../../../shared/plan/today/silent-herds.js';
import { newRequest, tables } from '../../support/factories.js';
import { newGroup, newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const SINCE = '2027-05-20';
const { farm, climate } = newRequest({});
const paddocks = newPaddocks(8, { areaM2: 4000, forageId: 'mixed' });
const [oak, elm] = paddocks;

const asked = (today: string, more: Partial<FarmPicture> = {}, inPaddockId = oak!.id!) => {
  const herds = [newHerd({ groups: [newGroup({ head: 6 })], inPaddockId, inSince: SINCE })];
  const grazings = [{ herdId: herds[0]!.id!, paddockId: inPaddockId, from: SINCE }];
  const given = newPicture({ farm, climate, today, paddocks, herds, grazings, ...more });
  const plan = planPasture(given, tables);
  return { given, herd: herds[0]!, plan, found: silentHerds(given, tables, plan) };
};

describe('a herd of which nothing was told', () => {
  it('is not asked about while a move is not overdue', () => {
    expect(asked(SINCE).found).toEqual([]);
    expect(asked(addDays(SINCE, 3)).found).toEqual([]);
  });

  it('stands off grass from the day on which it was told to have come off', () => {
    const today = addDays(SINCE, 6);
    const herds = [newHerd({ groups: [newGroup({ head: 6 })] })];
    const stay = { herdId: herds[0]!.id!, paddockId: oak!.id!, from: SINCE };
    const grazings = [{ ...stay, to: addDays(today, -2) }];
    const lineOf = (more: Partial<FarmPicture>) => {
      const { given, plan } = asked(today, { herds, ...more });
      return herdLines(given, tables, plan)[0];
    };
    expect(lineOf({ grazings })).toMatchObject({ offSince: addDays(today, -1) });
    expect(lineOf({ grazings: [] })).not.toHaveProperty('offSince');
  });

  it('is asked about with every move that was planned since, each on its day', () => {
    const today = addDays(SINCE, 24);
    const { herd, found } = asked(today);
    expect(found).toHaveLength(1);
    const [{ moves = [], text, of }] = found as [(typeof found)[number]];
    expect(of).toBe(herd.name);
    expect(moves.length).toBeGreaterThan(2);
    let place: string | undefined = oak!.id;
    for (const [k, { paddockId, on, herdId }] of moves.entries()) {
      expect(herdId).toBe(herd.id);
      expect(paddockId).not.toBe(place);
      expect(SINCE < on && on <= today).toBe(true);
      expect((moves[k - 1]?.on ?? SINCE) < on).toBe(true);
      place = paddockId;
    }
    expect(text).toContain('the plan goes on as if they had moved as planned');
  });

  it('is planned on as if it had moved as planned, which is said', () => {
    const today = addDays(SINCE, 24);
    const { herd, plan } = asked(today);
    const last = plan.assumedMoves!.at(-1)!;
    const now = plan.moves.find(({ from, to }) => from <= today && today <= to)!;
    expect(now.paddockId).toBe(last.paddockId);
    const said = plan.issues.find(({ code }) => code === 'moves-assumed')!;
    expect(said.text).toContain(`Nothing was told of ${herd.name} since`);
    expect(said.text).toContain('look before they go in');
    // The same as if each of these moves had been told.
    const stays = [{ paddockId: oak!.id!, on: SINCE }, ...plan.assumedMoves!];
    const grazings = stays.map(({ paddockId, on: from }, k) => {
      const next = stays[k + 1];
      const to = next ? { to: addDays(next.on, -1) } : {};
      return { herdId: herd.id!, paddockId: paddockId!, from, ...to };
    });
    const told = [newHerd({ ...herd, inPaddockId: last.paddockId!, inSince: last.on })];
    const lastOn = new Map(grazings.map(({ paddockId, to }) => [paddockId, to]));
    const left = paddocks.map((paddock) => {
      const lastGrazedOn = lastOn.get(paddock.id!);
      return lastGrazedOn === undefined ? paddock : { ...paddock, lastGrazedOn };
    });
    const picture = { farm, climate, today, paddocks: left, herds: told, grazings };
    expect(planPasture(newPicture(picture), tables).moves).toEqual(plan.moves);
  });

  it('stands where it is told to be still, and is asked about anew only after a stay', () => {
    const today = addDays(SINCE, 24);
    const { herd, plan } = asked(today);
    expect(plan.assumedMoves).toBeDefined();
    const stay = { herdId: herd.id!, paddockId: oak!.id!, from: SINCE };
    const still = (on: string) => asked(today, { grazings: [{ ...stay, seenOn: on }] });
    expect(still(today).found).toEqual([]);
    expect(still(today).plan.assumedMoves).toBeUndefined();
    const { found } = still(addDays(SINCE, 8));
    expect(found[0]!.text).toContain(`they were in ${oak!.name} on`);
    expect(found[0]!.moves!.every(({ on }) => addDays(SINCE, 8) < on)).toBe(true);
  });

  it('is not taken to stand where another herd is told to be, and is asked about all the same', () => {
    const today = addDays(SINCE, 16);
    const groups = [newGroup({ head: 6 })];
    const cows = newHerd({ inPaddockId: oak!.id!, inSince: SINCE, groups });
    const withCalvesIn = (inPaddockId: string) => {
      const calves = newHerd({
        ...{ id: 'calves', name: 'Calves', groups: [newGroup({ head: 1 })] },
        ...{ inPaddockId, inSince: addDays(today, -1) },
      });
      return { inPaddockId, ...asked(today, { herds: [cows, calves] }) };
    };
    const all = paddocks.slice(1).map(({ id }) => withCalvesIn(id!));
    for (const { inPaddockId, plan, found } of all) {
      expect(plan.assumedMoves?.at(-1)?.paddockId).not.toBe(inPaddockId);
      expect(found.map(({ of }) => of)).toEqual([cows.name]);
    }
    const held = all.filter(({ plan }) => plan.unplaced !== undefined);
    expect(held).toHaveLength(1);
    const [{ inPaddockId, plan, found }] = held as [(typeof held)[number]];
    expect(plan.unplaced).toMatchObject([{ herdId: cows.id, paddockId: inPaddockId }]);
    expect(plan.issues.find(({ code }) => code === 'herd-unplaced')!.text).toContain(cows.name);
    expect(found[0]).toMatchObject({ words: 'where are they?' });
    expect(found[0]!.text).toContain('but Calves is there');
    expect(found[0]!.stillIn!.paddockId).toBe(oak!.id);
    // Two herds in one paddock are no place that could be told with one touch.
    expect(found[0]!.moves).toBeUndefined();
  });

  it('goes back to where it was told to be, and so does one that had moved there since', () => {
    const [p1, p2, p3] = paddocks.map(({ id }) => id!);
    const groups = [newGroup({ head: 3 })];
    const today = addDays(SINCE, 6);
    const herd = (id: string, inPaddockId: string, inSince = SINCE) =>
      newHerd({ id, name: id, groups, inPaddockId, inSince });
    // The one that follows comes before the one that makes room for it.
    const herds = [herd('follows', p2!), herd('leads', p1!), herd('stands', p3!, today)];
    const grazings = herds.map(({ id, inPaddockId, inSince }) => ({
      ...{ herdId: id!, paddockId: inPaddockId!, from: inSince! },
    }));
    const given = newPicture({ farm, climate, today, paddocks, herds, grazings });
    const move = (herdId: string, paddockId: string) => ({
      ...{ herdId, paddockId, from: addDays(SINCE, 3), to: addDays(SINCE, 9) },
    });
    const planned = () => [move('follows', p1!), move('leads', p3!)] as unknown as Move[];
    const { picture, unplaced } = withMovesAssumed(given, tables, planned);
    expect(unplaced.map(({ herdId }) => herdId).toSorted()).toEqual(['follows', 'leads']);
    expect(picture.herds.map(({ inPaddockId }) => inPaddockId)).toEqual([p2, p1, p3]);
  });

  it('is asked about by what was known on the day of its last move', () => {
    const today = addDays(SINCE, 14);
    const [before] = asked(today).found;
    const heightCm = 30;
    const readings = [{ id: 'r', paddockId: elm!.id!, date: addDays(SINCE, 8), heightCm }];
    expect(asked(today, { readings }).found[0]!.moves).toEqual(before!.moves);
  });

  it('came off grass when its season was over, and is asked again only weeks later', () => {
    const { found } = asked('2028-01-20');
    const last = found[0]!.moves!.at(-1)!;
    expect(last.paddockId).toBeUndefined();
    expect(last.on > '2027-09-01' && last.on < '2028-01-01').toBe(true);
    expect(asked('2028-01-21').found[0]!.key).toBe(found[0]!.key);
    expect(asked('2028-02-05').found[0]!.key).not.toBe(found[0]!.key);
  });

  it('goes on from day to day as was asked the day before, and asks for each move once', () => {
    const days = Array.from({ length: 14 }, (_, k) => addDays(SINCE, k + 8)).map((today) => ({
      today,
      ...asked(today),
    }));
    // What is assumed of the past never changes, and its last move is what was asked for on its day.
    for (const [k, { today, herd, plan }] of days.entries()) {
      const assumed = plan.assumedMoves ?? [];
      const before = days[k - 1]?.plan.assumedMoves ?? [];
      expect(assumed.slice(0, before.length)).toEqual(before);
      for (const { on, paddockId } of assumed) {
        expect(on < today).toBe(true);
        const then = days.find((each) => each.today === on)?.plan;
        if (then) expect(then.moves.find(({ from }) => from === on)!.paddockId).toBe(paddockId);
      }
      // On the day after it, the round does not ask for it once more.
      const rounds = freshGrassOf(herd, plan, today).filter(({ date }) => date === today);
      const goes = goesByChore({ key: movesKey(herd.id), on: today }, [herd], plan);
      const isAsked = rounds.some(({ strip }) => strip === 1);
      expect(goes !== undefined).toBe(isAsked);
      if (isAsked) expect(assumed.at(-1)?.paddockId).not.toBe(goes!.paddockId);
    }
    expect(days.at(-1)!.plan.assumedMoves!.length).toBeGreaterThan(1);
  });

  it('can be told in its line on the morning after, before anything is asked as an alarm', () => {
    const on = asked(addDays(SINCE, 16)).plan.assumedMoves![0]!.on;
    const { given, herd, plan, found } = asked(addDays(on, 1));
    expect(found).toEqual([]);
    const [line] = herdLines(given, tables, plan);
    expect(line).toMatchObject({
      isAssumed: true,
      unsaid: {
        moves: [{ herdId: herd.id, on }],
        stillIn: { herdId: herd.id, paddockId: oak!.id },
      },
    });
  });
});
