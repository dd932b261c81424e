import { describe, expect, it } from '@jest/globals';
import { waysInDry } from '../../../shared/plan/pasture/ways-in-dry.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

/** @param gone head that leave on a day */
const planWith = (augustRain: number, head = 6, gone?: { count: number; on: string }) =>
  plannedPasture(
    newPastureRequest({
      paddocks: newPaddocks(8, { areaM2: 5000 }),
      herds: [
        newHerd({
          groups: [
            newGroup({ head: head - (gone?.count ?? 0) }),
            ...(gone ? [newGroup({ head: gone.count, leavesOn: gone.on })] : []),
          ],
        }),
      ],
      choices: {
        rainShareByMonth: Array.from({ length: 12 }, (_, m) =>
          m === 6 || m === 7 ? augustRain : 1,
        ),
      },
    }),
  );
const reader = { units: 'us', currency: 'USD', today: '2027-04-21' } as const;
const hay = { id: 'hay', version: 1, name: 'Round bale', kind: 'hay', price: '60' } as const;

describe('a dry summer', () => {
  const [usual, dry] = [planWith(1), planWith(0)];

  it('says from which day it is seen, and what each way to answer it comes to', () => {
    const text = waysInDry(usual, dry, [hay], reader);
    expect(text).toMatch(/You would see it from .*To answer it from that day: /);
    const bales = dry.hay.balesToBuy.value - usual.hay.balesToBuy.value;
    expect(bales).toBeGreaterThan(0);
    expect(text).toContain(`buy ${bales} bale`);
    expect(text).toContain(`$${bales * 60}`);
    expect(text).toMatch(/or sell or ship about \d of 6 head, each of which needs about [\d,]+ lb/);
    const without = waysInDry(usual, dry, [], reader);
    expect(without).toContain('type what a bale costs under Your place, Prices');
  });

  it.each([6, 8, 10])(
    'names as many of %i head as planning without them shows to be enough',
    (head) => {
      const [wet, thirsty] = [planWith(1, head), planWith(0, head)];
      const text = waysInDry(wet, thirsty, [hay], reader);
      const said = Number(/about (\d+) of \d+ head/.exec(text)![1]);
      const on = thirsty.weather.dry!.from;
      const toBuyKg = (count: number): number =>
        (count === 0 ? thirsty : planWith(0, head, { count, on })).hay.toBuy.value;
      expect(toBuyKg(said)).toBeLessThanOrEqual(wet.hay.toBuy.value);
      expect(toBuyKg(said - 1)).toBeGreaterThan(wet.hay.toBuy.value);
    },
  );

  it('says nothing where no more is fed or bought, and of no head where none would be left', () => {
    expect(waysInDry(dry, usual, [], reader)).toBe('');
    const single = waysInDry(planWith(1, 1), planWith(0, 1), [], reader);
    expect(single).not.toContain('head');
  });
});
