import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { addDays, daysBetween } from '../../../shared/calendar/plain-date.js';
import type { Grazing } from '../../../shared/farm/herd-places.js';
import type { Mowing } from '../../../shared/farm/mowing.js';
import type { Herd } from '../../../shared/farm/herd.js';
import {
  newGroup,
  newHerd,
  newPaddocks,
  newPastureRequest,
} from '../../support/pasture-factories.js';
import { plannedPasture } from '../../support/pictures.js';

const farms = fc.record({
  paddocks: fc.integer({ min: 3, max: 9 }),
  areaM2: fc.integer({ min: 3000, max: 9000 }),
  head: fc.integer({ min: 2, max: 6 }),
  forageId: fc.constantFrom('mixed', 'ryegrass-clover', 'tall-fescue'),
  after: fc.integer({ min: 20, max: 190 }),
  makesHay: fc.boolean(),
});

describe('a season of grass that was walked as planned', () => {
  it('stands as it was said to stand, and goes on as it was said to go on', () => {
    fc.assert(
      fc.property(farms, ({ paddocks, areaM2, head, forageId, after, makesHay }) => {
        const herd = newHerd({ groups: [newGroup({ head })] });
        const land = newPaddocks(paddocks, { areaM2, forageId });
        const request = newPastureRequest({
          ...{ paddocks: land, herds: [herd] },
          choices: { makesHay },
        });
        const plan = plannedPasture(request);
        const today = addDays(plan.from, after);
        const walked = plan.moves.filter(({ from }) => from < today);
        const grazings = walked.map(({ herdId, paddockId, from, to }): Grazing =>
          to < addDays(today, -1) ? { herdId, paddockId, from, to } : { herdId, paddockId, from },
        );
        // A go is one piece of work: all of it is mown on one day.
        for (const { cutOn, mowFrom } of plan.surplus) expect(cutOn).toBe(mowFrom);
        const mowings = plan.surplus
          .filter(({ mowFrom }) => mowFrom < today)
          .map(({ paddockId, mowFrom }): Mowing => ({
            ...{ id: `${paddockId} ${mowFrom}`, paddockId, date: mowFrom },
          }));
        const here = walked.find(({ to }) => addDays(today, -1) <= to);
        const later = plannedPasture({
          ...request,
          today,
          grazings,
          mowings,
          herds: [
            {
              ...herd,
              ...(here ? { inPaddockId: here.paddockId, inSince: here.from } : {}),
            } as Herd,
          ],
          paddocks: land.map((own) => {
            const last = walked.findLast(
              ({ paddockId, to }) => paddockId === own.id && to < addDays(today, -1),
            );
            return last ? { ...own, lastGrazedOn: last.to } : own;
          }),
        });
        const evening = daysBetween(plan.from, today) - 1;
        plan.paddocks.forEach(({ massByDay }, p) => {
          const said = massByDay[evening]!;
          expect(Math.abs(later.paddocks[p]!.mass.value - said)).toBeLessThan(1 + 0.002 * said);
        });
        const ahead = ({ moves }: typeof plan) =>
          moves.filter(({ from }) => today < from).map((m) => [m.paddockId, m.from, m.to]);
        expect(ahead(later)).toEqual(ahead(plan));
        // A date that was said does not run ahead of its day.
        expect(later.keyDates.ready?.value).toBe(plan.keyDates.ready?.value);
        const hayOf = ({ hay }: typeof plan): number =>
          (hay.taken?.value ?? 0) + (hay.own?.value ?? 0);
        expect(Math.abs(hayOf(later) - hayOf(plan))).toBeLessThanOrEqual(0.02 * hayOf(plan));
        const topped = ({ toppings }: typeof plan) => toppings.filter(({ on }) => today <= on);
        expect(topped(later)).toEqual(topped(plan));
      }),
      {
        numRuns: 12,
        // The herd moves on the very morning on which is planned again.
        examples: [
          [
            {
              ...{ paddocks: 3, areaM2: 3000, head: 2, forageId: 'ryegrass-clover' },
              ...{ after: 34, makesHay: true },
            },
          ],
          // One more paddock is ready four days after the first of its go.
          [
            {
              ...{ paddocks: 7, areaM2: 5000, head: 3, forageId: 'ryegrass-clover' },
              ...{ after: 75, makesHay: true },
            },
          ],
          // Before the first move a look ahead asks whether to begin.
          [
            {
              ...{ paddocks: 4, areaM2: 8881, head: 6, forageId: 'mixed' },
              ...{ after: 31, makesHay: false },
            },
          ],
        ],
      },
    );
  });
});
