import { describe, expect, it } from '@jest/globals';
import type { FarmPicture } from '../../../shared/farm/picture.js';
import {
  ledOff,
  sayPaddockLost,
  sayShorterRest,
  toldOfLedOff,
  withPaddockLost,
  withShorterRest,
  type PaddockLost,
} from '../../../shared/plan/mishap/paddock-lost.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { tables } from '../../support/factories.js';
import { newPaddocks, newPastureRequest } from '../../support/pasture-factories.js';
import { pictureOfPasture } from '../../support/pictures.js';

const TODAY = '2027-06-20';
const standingOn = (paddocks: number, areaM2 = 4200): FarmPicture => {
  const base = pictureOfPasture(
    newPastureRequest({ today: TODAY, paddocks: newPaddocks(paddocks, { areaM2 }) }),
  );
  return {
    ...base,
    herds: base.herds.map((herd) => ({ ...herd, inPaddockId: 'p1', inSince: TODAY })),
    grazings: [{ herdId: 'h1', paddockId: 'p1', from: TODAY }],
  };
};
const standing = standingOn(5);
const planOf = (picture: FarmPicture) => planPasture(picture, tables);
const FOR_GOOD: PaddockLost = { paddockId: 'p1', why: 'wet' };

describe('a paddock that is lost', () => {
  it('is grazed by nobody while it is, and comes back into the round', () => {
    const lost: PaddockLost = { ...FOR_GOOD, until: '2027-08-01' };
    const { moves } = planOf(withPaddockLost(standing, lost));
    const within = moves.filter(
      ({ paddockId, from }) => paddockId === 'p1' && from <= '2027-08-01',
    );
    expect(within).toEqual([]);
    expect(planOf(withPaddockLost(standing, FOR_GOOD)).moves.map((m) => m.paddockId)).not.toContain(
      'p1',
    );
  });

  it('sends the herd that stands there to where the plan has it today', () => {
    const after = planOf(withPaddockLost(standing, FOR_GOOD));
    const [led] = ledOff(standing, FOR_GOOD, {}, after);
    const today = after.moves.find(({ from, to }) => from <= TODAY && TODAY <= to)!;
    expect(led).toMatchObject({ herdId: 'h1', to: { id: today.paddockId } });
    expect(ledOff(standing, { ...FOR_GOOD, paddockId: 'p3' }, {}, after)).toEqual([]);
    expect(sayPaddockLost(standing, FOR_GOOD, planOf(standing), after)[0]).toBe(
      `Cows: move them to ${led!.to!.name} today.`,
    );
  });

  it('says what hay it takes: what the plan without it feeds more than the one with it', () => {
    const [before, after] = [planOf(standing), planOf(withPaddockLost(standing, FOR_GOOD))];
    const kg = after.hay.all.value - before.hay.all.value;
    expect(kg).toBeGreaterThan(100);
    const said = sayPaddockLost(standing, FOR_GOOD, before, after).join(' ');
    expect(said).toContain(`${Math.round(kg).toLocaleString('en-US')} kg of dry matter more`);
    expect(said).toContain('is out of the round');
  });

  it('has shorter rests save only what they do save', () => {
    const lost = withPaddockLost(standing, FOR_GOOD);
    const [before, after, shorter] = [
      standing,
      lost,
      withShorterRest(lost, tables.judgements.alarms),
    ].map(planOf);
    const plans = { before: before!, after: after!, shorter: shorter! };
    const saves = after!.hay.all.value - shorter!.hay.all.value;
    const said = sayShorterRest(standing, plans);
    expect(said === undefined).toBe(saves < 5);
    expect(sayShorterRest(standing, { ...plans, shorter: after! })).toBeUndefined();
    expect(sayShorterRest(standing, { ...plans, before: after! })).toBeUndefined();
  });
});

describe('a paddock that is lost while nothing is told of the herd', () => {
  const silent: FarmPicture = { ...standingOn(12, 1000), today: '2027-07-08' };
  const before = planOf(silent);
  const assumed = before.assumedMoves!;
  const now = assumed.at(-1)!;
  const lostOf = (paddockId: string) => {
    const lost: PaddockLost = { ...FOR_GOOD, paddockId };
    const after = planOf(withPaddockLost(silent, lost, assumed));
    return { after, led: ledOff(silent, lost, before, after) };
  };

  it('has it led off where it is taken to stand, and not where it was told to be', () => {
    expect(assumed.length).toBeGreaterThan(1);
    expect(now.paddockId).not.toBe('p1');
    expect(lostOf('p1').led).toEqual([]);
    const { after, led } = lostOf(now.paddockId!);
    expect(led).toMatchObject([{ herdId: 'h1' }]);
    expect(led[0]!.to?.id).not.toBe(now.paddockId);
    expect(after.assumedMoves).toBeUndefined();
    const within = after.moves.filter(({ paddockId, to }) => {
      return paddockId === now.paddockId && silent.today <= to;
    });
    expect(within).toEqual([]);
  });

  it('tells the moves that were taken for made with the one that leads it off', () => {
    const { led } = lostOf(now.paddockId!);
    const told = toldOfLedOff(led[0]!, before);
    expect(
      told.map(({ on, details }) => [on, (details as { paddockId?: string }).paddockId]),
    ).toEqual([
      ...assumed.map(({ on, paddockId }) => [on, paddockId]),
      [silent.today, led[0]!.to?.id],
    ]);
    // One undo takes all of them back.
    expect(told.slice(0, -1).every(({ details }) => 'tickedOn' in details)).toBe(true);
    // Nowhere to go: they are told to be off grass, as the plan that was shown has them.
    const { to: _to, ...nowhere } = led[0]!;
    expect(toldOfLedOff(nowhere, before).at(-1)!.details).toMatchObject({ isOff: true });
  });
});
