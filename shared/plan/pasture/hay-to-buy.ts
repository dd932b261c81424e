import type { NumberQuantity } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { HayStorePart } from './hay-store-part.js';
import type { PastureContext } from './pasture-context.js';

/** @param of days on which hay runs out: as it is counted, and if none was made that is taken as made */
export function toBuyIssue(
  { say, dateOf, tables }: PastureContext,
  part: HayStorePart,
  of: {
    readonly runsOutDay: number | undefined;
    readonly unmadeDay: number | undefined;
    readonly today: number;
    /** Nothing is grazed in the whole plan. */
    readonly isWithoutGrass: boolean;
  },
): PlanIssue[] {
  const { byWinter, toBuy, balesToBuy, toBuyUnmade, balesUnmade, own, inStore, baled, taken } =
    part;
  const { runsOutDay, unmadeDay, today, isWithoutGrass } = of;
  const isBought = 1 <= balesToBuy.value;
  const isUnsure = balesUnmade !== undefined && 1 <= balesUnmade.value;
  if (!isBought && !isUnsure) return [];
  const soonest = Math.min(runsOutDay ?? Infinity, unmadeDay ?? Infinity);
  const soon = soonest < today + tables.judgements.grass.haySoonDays.value;
  const about = (day: number): string => `about ${say(dateOf(day), 'date')}.`;
  const amount = (bales: NumberQuantity, kg: NumberQuantity): string =>
    bales.value < 1 ? 'nothing' : `about ${say(bales.value, 'bales')}, ${say(kg.value, 'kg')}`;
  const span = isWithoutGrass
    ? 'To buy for a year, as nothing is grazed'
    : 'To buy until there is grass again after the next winter, in the usual weather';
  const less = [
    inStore ? `${say(inStore.value, 'kg')} in store` : undefined,
    baled ? `${say(baled.value, 'kg')} baled already` : undefined,
    taken ? `${say(taken.value, 'kg')} taken as made` : undefined,
    own ? `${say(own.value, 'kg')} of your own` : undefined,
  ].filter((each) => each !== undefined);
  const text = [
    runsOutDay === undefined ? undefined : `Hay runs out ${about(runsOutDay)}`,
    `${isBought && byWinter ? `To buy in the usual weather: until turn-out ${amount(byWinter.balesUntilOut, byWinter.untilOut)}; from then through the next winter ${amount(byWinter.balesNextWinter, byWinter.nextWinter)}` : `${span}: ${amount(balesToBuy, toBuy)}`}${less.length === 0 ? '' : `, with ${less.join(' and ')} taken off`}.`,
    isUnsure
      ? `If none was made of the hay taken as made, it is ${amount(balesUnmade, toBuyUnmade!)}: look what lies in store before you count on less.`
      : undefined,
    unmadeDay === undefined || unmadeDay === runsOutDay
      ? undefined
      : `Without what is taken as made, hay runs out ${about(unmadeDay)}`,
    inStore ? undefined : 'Type what lies in store, so that it is taken off.',
    `Most years feed more: go by the bales for 8 of 10 years, which twenty years of weather are played for${isUnsure ? ', and which take that hay off, too' : ''}.`,
  ].filter((each) => each !== undefined);
  return [issue(soon ? 'act' : 'note', 'hay-to-buy', text.join(' '), [toBuy])];
}
