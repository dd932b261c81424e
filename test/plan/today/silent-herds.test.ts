import { describe, expect, it } from '@jest/globals';
import { addDays } from '../../../shared/calendar/plain-date.js';
import type { FarmPicture } from '../../../shared/farm/picture.js';
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
  return { herd: herds[0]!, found: silentHerds(given, tables) };
};

describe('a herd of which nothing was told', () => {
  it('is not asked about while a move is not overdue', () => {
    expect(asked(SINCE).found).toEqual([]);
    expect(asked(addDays(SINCE, 3)).found).toEqual([]);
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
    expect(text).toContain(`they are taken to stand in ${oak!.name}`);
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
});
