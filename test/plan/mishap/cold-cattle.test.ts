import { describe, expect, it } from '@jest/globals';
import type { CalvingTold } from '../../../shared/farm/calving-told.js';
import type { Herd } from '../../../shared/farm/herd.js';
import { cattleInCold } from '../../../shared/plan/mishap/cold-cattle.js';
import { saySpellOnGrass } from '../../../shared/plan/mishap/spell-on-grass.js';
import { withSpell } from '../../../shared/plan/mishap/typed-weather.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { fToC } from '../../../shared/units/convert.js';
import { tables } from '../../support/factories.js';
import { newGroup, newHerd, newPastureRequest } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const TODAY = '2027-04-14';
const { farm, climate, paddocks } = newPastureRequest();

function inCold(airC: number, herd: Partial<Herd>, calvings: readonly CalvingTold[] = []) {
  const herds = [newHerd(herd)];
  const picture = newPicture({ farm, climate, today: TODAY, paddocks, herds, calvings });
  return cattleInCold(picture, tables, { kind: 'cold', airC, days: 3 });
}
const dueOn = (calvesOn: string, head = 3) => ({
  groups: [newGroup({ classId: 'dry-cow', head, calvesOn })],
});
const born = (date: string): CalvingTold => ({ herdId: 'h1', date, calves: 1 });

describe('cattle on cold nights', () => {
  it('need 28 % more at 4 °F in a dry winter coat (Oklahoma State University: 16 lb of hay become 20.5 lb)', () => {
    const [herd] = inCold(fToC(4), { groups: [newGroup({ classId: 'stocker', head: 5 })] });
    const [more] = herd!.ways.at(-1)!.numbers!;
    const hay = more!.inputs.find(({ symbol }) => symbol === 'H')!.value as number;
    // Five of 270 kg eat 2.5 to 3.5 % of it as dry matter; hay holds water, and some is wasted.
    expect(hay).toBeGreaterThan(5 * 270 * 0.025);
    expect(hay).toBeLessThan(5 * 270 * 0.035 * 1.4);
    // 32 °F - 4 °F = 28 times 1 %; the share is kept a kelvin, 1.8 %.
    expect(more!.value).toBeCloseTo(hay * 0.28, 1);
    expect(more!.unit).toBe('kg');
    expect(herd!.ways.map(({ id }) => id)).toEqual(['out-of-wind', 'more-hay']);
    expect(herd!.cautions.map(({ title }) => title)).toEqual(['Ice on the water of cattle']);
  });

  it('stand nights above freezing dry, feel them wet, and are not spoken of above 15 °C', () => {
    const stockers = { groups: [newGroup({ classId: 'stocker', head: 5 })] };
    const [herd] = inCold(2, stockers);
    expect(herd!.ways.map(({ id }) => id)).toEqual(['out-of-wind']);
    expect(herd!.follows[0]).toMatch(/wet, or in a summer coat, they feel the cold from 15/);
    // 59 °F in print: with a wet or a summer coat they need more feed below it.
    expect(inCold(14, dueOn('2027-08-01'))).toHaveLength(1);
    expect(inCold(16, dueOn('2027-08-01'))).toEqual([]);
    expect(inCold(2, { groups: [newGroup({ arrivesOn: '2027-05-20' })] })).toEqual([]);
  });

  it('have calves that may come, and a dry place for them comes first', () => {
    const [herd] = inCold(-10, dueOn('2027-04-15'));
    expect(herd!.follows.join(' ')).toContain('3 calves may come on these nights');
    expect(herd!.ways[0]!.id).toBe('bedded');
    expect(herd!.cautions.map(({ title }) => title)).toContain('A wet calf is a cold calf');
  });

  it('have calves that were told beside those that are still to come', () => {
    const [herd] = inCold(-10, dueOn('2027-04-15'), [born('2027-04-12'), born('2027-04-13')]);
    const said = herd!.follows.join(' ');
    expect(said).toContain('A calf may come on these nights');
    expect(said).toContain('2 calves are younger than four weeks');
  });

  it('have calves that feel a night which the cows stand', () => {
    const [herd] = inCold(4, dueOn('2027-04-15'));
    expect(herd!.ways.map(({ id }) => id)).toEqual(['bedded', 'out-of-wind']);
    expect(inCold(14, dueOn('2027-04-15'))[0]!.ways.map(({ id }) => id)).toEqual(['out-of-wind']);
  });
});

describe('a spell kept as forecast', () => {
  it('says another day of turn-out, and nothing where none is moved', () => {
    const picture = newPicture({ farm, climate, today: TODAY, paddocks, herds: [newHerd()] });
    const planOf = (of: typeof picture) => planPasture(of, tables);
    const before = planOf(picture);
    const turnOut = before.moves.find(({ from }) => TODAY < from)!;
    const colder = withSpell(picture, { kind: 'cold', airC: -8, days: 14 });
    const said = saySpellOnGrass(picture, before, planOf(colder)).join(' ');
    expect(turnOut).toBeDefined();
    expect(said).toMatch(/^Cows: next to Paddock \d on .* instead of /);
    expect(saySpellOnGrass(picture, before, before)).toEqual([]);
  });
});
