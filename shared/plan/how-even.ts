import type { PlainDate } from '../calendar/plain-date.js';
import { fromFarm, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { bothSexesCv, evennessFormulas, nearShare } from '../poultry/evenness.js';
import { birdsToWeigh, weighingFormulas } from '../poultry/weighings.js';
import type { PlanContext } from './context.js';
import type { OwnGrowth } from './how-they-grow.js';

/** What single weights say of how alike the birds of a batch are. */
export interface EvennessPart {
  readonly on: PlainDate;
  readonly birds: number;
  readonly is: 'even' | 'usual' | 'uneven';
  /** Within a tenth of the average. */
  readonly near: NumberQuantity;
  /** How many of so many usually are. */
  readonly usuallyNear: number;
  /** How far they differ, one standard deviation as a share. */
  readonly differ: NumberQuantity;
  /** What is to be done, where something is. */
  readonly advice?: string;
  /** Birds to weigh beyond those, so that the average is known; undefined when these do. */
  readonly more?: NumberQuantity;
}

const UNEVEN =
  'Some do not get their share: give more room at feeders and drinkers, fill them before they run dry, and look for small or sick ones.';

/** Of the last weighing with single weights enough to say something; undefined without one. */
export function howEven(context: PlanContext, { weighings }: OwnGrowth): EvennessPart | undefined {
  const { batch, tables } = context;
  const { fewestWeights, evenSpread, unevenSpread, sexesApart, usualSpreadBirds } =
    tables.judgements.birds;
  const last = weighings.findLast(
    ({ weighing }) => fewestWeights.value <= (weighing.eachKg?.length ?? 0),
  );
  if (last?.spread?.cv === undefined) return undefined;
  const { weighing, spread, cv } = last;
  const apart = batch.sex === 'straight-run' ? sexesApart.value : 0;
  const isEven = spread.cv! <= bothSexesCv(evenSpread.value, apart);
  const isUneven = bothSexesCv(unevenSpread.value, apart) < spread.cv!;
  const flock = batch.orderedBirds ?? batch.wantedBirds;
  const more = birdsToWeigh({ cv }, flock) - weighing.birds;
  const weighed = fromFarm('Birds weighed', weighing.birds, 'count', 'n');
  const mean = fromFarm('Average weight', spread.meanKg, 'kg', 'W');
  return {
    on: weighing.date,
    birds: weighing.birds,
    is: isEven ? 'even' : isUneven ? 'uneven' : 'usual',
    near: quantity('Birds near the average', spread.near, 'count', evennessFormulas.near, [
      weighed,
      mean,
    ]),
    usuallyNear: Math.round(
      weighing.birds * nearShare(bothSexesCv(tables.growing.evenness.cv, apart)),
    ),
    differ: quantity('How far they differ', spread.cv!, 'share', evennessFormulas.cv, [
      weighed,
      mean,
    ]),
    ...(isUneven ? { advice: UNEVEN } : {}),
    ...(more <= 0
      ? {}
      : {
          more: quantity('More birds to weigh', more, 'count', weighingFormulas.toWeigh, [
            input('Birds differ by', cv, 'share', 'cv'),
            fromTable(
              usualSpreadBirds,
              usualSpreadBirds.name,
              usualSpreadBirds.value,
              'count',
              'm',
            ),
            input('Birds in all', flock, 'count', 'N'),
            weighed,
          ]),
        }),
  };
}
