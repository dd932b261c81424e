import { describe, expect, it } from '@jest/globals';
import { waysInDry } from '../../../shared/plan/pasture/ways-in-dry.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const planWith = (augustRain: number, head = 6) =>
  plannedPasture(
    newPastureRequest({
      paddocks: newPaddocks(8, { areaM2: 5000 }),
      herds: [newHerd({ groups: [newGroup({ head })] })],
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
    expect(text).toMatch(/or sell or ship \d of 6 head, each of which needs about [\d,]+ lb/);
    const without = waysInDry(usual, dry, [], reader);
    expect(without).toContain('type what a bale costs under Feed');
  });

  it('says nothing where no more is fed or bought, and of no head where none would be left', () => {
    expect(waysInDry(dry, usual, [], reader)).toBe('');
    const single = waysInDry(planWith(1, 1), planWith(0, 1), [], reader);
    expect(single).not.toContain('head');
  });
});
