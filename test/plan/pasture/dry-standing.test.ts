import { describe, expect, it } from '@jest/globals';
import { chooseMoves } from '../../../shared/plan/pasture/surplus.js';
import { tables } from '../../support/factories.js';
import { contextAt, OREGON } from '../../support/five-farms.js';
import { newPaddocks } from '../../support/pasture-factories.js';

describe('grass that a dry summer has put to rest', () => {
  // Two paddocks of it withered into October beside a herd on hay, as ten days of grass were waited for.
  it.each([3, 4, 5, 6, 7, 8])(
    'is eaten before hay is fed, where it feeds a stay: %i head',
    (head) => {
      for (const makesHay of [true, false])
        for (const count of [6, 8, 12]) {
          const paddocks = newPaddocks(count, { areaM2: 6070, forageId: OREGON.forageId });
          const { problem, books } = chooseMoves(
            contextAt(OREGON, head, 6070, { version: 1, makesHay }, paddocks),
          );
          const { demandKg, longestStayDays } = problem.herds[0]!;
          const first = books.stays[0]!.from;
          for (let day = first + 1; day < problem.growthEnds; day++) {
            if (books.hayKg[0]![day]! < demandKg[day]! || !isAtRest(problem, day)) continue;
            const standing = problem.swards.map((sward, p) => {
              const mass = books.massKgPerHa[p]![day]!;
              const isFree =
                daysLeft(books, p, day) >= tables.judgements.grazing.slowRestDays.value;
              const above =
                (mass - sward.residualKgPerHa) * sward.areaHa * problem.harvestShare[0]!;
              return isFree && sward.firstPassKgPerHa <= mass && demandKg[day]! <= above
                ? above
                : 0;
            });
            const days = standing.reduce((sum, kg) => sum + kg, 0) / demandKg[day]!;
            expect(days).toBeLessThanOrEqual(longestStayDays);
          }
        }
    },
  );
});

type Chosen = ReturnType<typeof chooseMoves>;

const isAtRest = ({ usualGrowth, growsKgPerHa }: Chosen['problem'], day: number): boolean =>
  usualGrowth.every((growth) => growth[day]! < growsKgPerHa);

/** Days since a paddock was grazed or mown; none while it is closed or shut. */
function daysLeft({ stays, cuts }: Chosen['books'], paddock: number, day: number): number {
  if (cuts.some((cut) => cut.paddock === paddock && cut.shutFrom <= day && day < cut.openFrom))
    return 0;
  const left = [
    ...stays.filter((stay) => stay.paddock === paddock).map(({ from, days }) => from + days),
    ...cuts.filter((cut) => cut.paddock === paddock).map((cut) => cut.day),
  ].filter((each) => each <= day);
  return day - Math.max(...left);
}
