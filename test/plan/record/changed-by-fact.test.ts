import { describe, expect, it } from '@jest/globals';
import type { ToldFact } from '../../../shared/farm/told-fact.js';
import { changedByFact } from '../../../shared/plan/record/changed-by-fact.js';
import { newRequest, tables } from '../../support/factories.js';
import { newHerd, newPaddocks } from '../../support/pasture-factories.js';
import { newPicture } from '../../support/pictures.js';

describe('what a fact changed', () => {
  it('names the paddock that a herd was moved to', () => {
    const paddocks = newPaddocks(2);
    const { farm, climate, today } = newRequest({});
    const picture = newPicture({ farm, climate, today, paddocks, herds: [newHerd()] });
    const [, to] = paddocks;
    const fact = {
      ...{ id: 'f', key: 'f', kind: 'herd-move', about: 'cows', on: picture.today },
      ...{ toldAt: `${picture.today}T10:00:00.000Z`, details: { paddockId: to!.id } },
    } as ToldFact;
    const { because } = changedByFact(picture, tables, { fact, facts: [fact] as never });
    expect(because).toBe(`moved to ${to!.name}`);
  });
});
