import type { NumberQuantity } from '../../explain/quantity.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { capacityOf } from './capacity.js';
import type { PastureContext } from './pasture-context.js';
import { baleOf, type Chosen } from './surplus.js';

/** Hay that is made and that no herd eats until there is grass after the next winter: what else could use it. */
export function hayOver(
  context: PastureContext,
  chosen: Chosen,
  { own, overKg }: { readonly own: NumberQuantity | undefined; readonly overKg: number },
): PlanIssue[] {
  const { hayReserveShare, fewestSpareBales } = context.tables.judgements.grass;
  const bales = Math.floor(overKg / baleOf(context).kg);
  if (!own || overKg < hayReserveShare.value * own.value || bales < fewestSpareBales.value)
    return [];
  const { harvestShare, dryMatterShare } = context.tables.pasture.hay;
  const head = moreHead(
    context,
    chosen,
    (Math.min(overKg, own.value) * dryMatterShare) / harvestShare,
  );
  const ways = [
    'sell it or let a neighbor mow for a share',
    ...wordsOfHead(context, head),
    'or mow less and top what goes rank',
  ];
  return [
    issue(
      'note',
      'hay-over',
      `More hay is made than the herds eat until there is grass after the next winter: about ${context.say(bales, 'bales')}, ${context.say(overKg, 'kg')}, are left over in the usual weather. Keep some for a dry year; of the rest, ${ways.join(', ')}.`,
      [own],
    ),
  ];
}

/** Head that grass which is cut would feed in the season, beside those that are there. */
export function moreHead(
  context: PastureContext,
  { problem, books }: Chosen,
  cutKg: number,
): number {
  const { herdDays } = context;
  const eatenKg = books.eatenKg.reduce((sum, kg) => sum + kg.reduce((a, b) => a + b, 0), 0);
  const ofDay = (herdDays[0]?.head ?? []).map((_, day) =>
    herdDays.reduce((sum, { head }) => sum + head[day]!, 0),
  );
  const head = Math.max(0, ...ofDay);
  if (eatenKg <= 0) return 0;
  const more = Math.floor((head * cutKg * problem.harvestShare[0]!) / eatenKg);
  return Math.max(0, Math.min(more, Math.floor(capacityOf(context).value) - head));
}

/** Fewer than the land carries: the rest of its growth is hay for those that are there, or is left. */
export const wordsOfHead = (context: PastureContext, more: number): string[] =>
  more === 0
    ? []
    : [
        `keep about ${more} more head in summer (the land carries about ${Math.floor(capacityOf(context).value)} in all where none of it is mown and all hay is bought)`,
      ];
