import { describe, expect, it } from '@jest/globals';
import type { Moved } from '../../../shared/explain/moved.js';
import type { Quantity } from '../../../shared/explain/quantity.js';
import { aboutGrass } from '../../../shared/plan/pasture/about-grass.js';
import { planPasture } from '../../../shared/plan/pasture/pasture-plan.js';
import { tables } from '../../support/factories.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

const {
  tables: _tables,
  choices,
  followers: _none,
  ...given
} = newPastureRequest({
  paddocks: newPaddocks(3).map((each, k) => ({ ...each, areaM2: 8000 + 1000 * k })),
  herds: [newHerd({ groups: [newGroup({ head: 5 })] })],
  choices: { to: '2027-07-31' },
});
const picture = newPicture({ ...given, pastureChoices: choices });
const plan = planPasture(picture, tables);
const about = aboutGrass(picture, plan, tables);

/** What the page gets to say in the end. */
function movedOf(quantity: Quantity): Moved | undefined {
  const asking = about.movedMost(quantity);
  for (;;) {
    const { done, value } = asking.next();
    if (done === true) return value ?? undefined;
  }
}

describe('what moves a number of the grass most', () => {
  it('is a plan made anew with one thing otherwise, and the farthest off of them', () => {
    const moved = movedOf(plan.hay.all)!;
    expect(moved.to!.label).toBe(plan.hay.all.label);
    const dry = planPasture(
      {
        ...picture,
        pastureChoices: { ...choices, rainShareByMonth: new Array<number>(12).fill(2 / 3) },
      },
      tables,
    );
    const off = (value: number): number => Math.abs(value - plan.hay.all.value);
    expect(off(Number(moved.to!.value))).toBeGreaterThanOrEqual(off(dry.hay.all.value));
  });

  it('goes with the same paddock of the other season, not with the first of that name', () => {
    for (const { area } of plan.paddocks) expect(movedOf(area)).toBeUndefined();
  });

  it('is nothing where nothing of it changes the number', () => {
    expect(movedOf(plan.stocking.fence)).toBeUndefined();
  });
});

describe('when it is known better', () => {
  it('is after two walks for what grows, after the scale for what cattle need', () => {
    expect(movedOf(plan.hay.toBuy)!.knownBetter).toMatch(/walked the pasture twice/);
    expect(movedOf(plan.stocking.herds[0]!.demand)!.knownBetter).toMatch(/weighed or taped/);
    expect(movedOf(plan.keyDates.ready!)!.knownBetter).toMatch(/forecast|walked/);
  });
});
