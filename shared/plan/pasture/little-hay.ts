import { from, quantity } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { listed } from '../../units/listed.js';
import { hayStoreFormulas } from './hay-store.js';
import type { PastureContext } from './pasture-context.js';
import { baleOf, surplusOf, type Chosen, type Surplus } from './surplus.js';

/** Goes of mowing that give a bale or so, and what else to do with their grass. */
export function littleHay(context: PastureContext, chosen: Chosen): PlanIssue[] {
  const { say, paddocks, tables } = context;
  const { littleGoBales } = tables.judgements.grazing;
  const leastKg = littleGoBales.value * baleOf(context).kg;
  const goes = new Map<string, Surplus[]>();
  for (const cut of surplusOf(context, chosen))
    goes.set(cut.mowFrom, [...(goes.get(cut.mowFrom) ?? []), cut]);
  const little = [...goes.values()].filter((cuts) => kgOf(cuts) < leastKg);
  if (little.length === 0) return [];
  const nameOf = ({ paddockId }: Surplus): string =>
    paddocks.find(({ id }) => id === paddockId)!.name;
  const hay = quantity(
    'Hay of small goes',
    kgOf(little.flat()),
    'kg',
    hayStoreFormulas.own,
    little.flat().map((cut) => from(cut.hay)),
    { rows: [context.order] },
  );
  const said = little.map(
    (cuts) => `${listed(cuts.map(nameOf))} from ${say(cuts[0]!.mowFrom, 'date')}`,
  );
  const give = 1 < little.length ? 'each give' : 1 < little.flat().length ? 'give' : 'gives';
  return [
    issue(
      'note',
      'little-hay',
      `${listed(said)} ${give} less than ${say(littleGoBales.value, 'bales')}, and nothing else is mown with it. Few get out mower and baler for that: where they are not at hand, leave it to the herd, or top it before it goes rank. It is counted in the hay that you make, ${say(hay.value, 'kg')}: what is not mown is to be bought.`,
      [hay, littleGoBales],
    ),
  ];
}

const kgOf = (cuts: readonly Surplus[]): number =>
  cuts.reduce((sum, { hay }) => sum + hay.value, 0);
