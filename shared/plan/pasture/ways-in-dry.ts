import { daysBetween } from '../../calendar/plain-date.js';
import type { Product } from '../../farm/product.js';
import { costMinor } from '../../money/money.js';
import { formatDate } from '../../units/dates.js';
import { formatMoney, formatValue, type Reader } from '../../units/format.js';
import type { PasturePlan } from './pasture-plan.js';

/**
 * When a household would see that it is drier than the plan it has goes by, and what each way to
 * answer it comes to on that day; empty where no more is fed or bought.
 */
export function waysInDry(
  base: PasturePlan,
  dry: PasturePlan,
  products: readonly Product[],
  reader: Reader,
): string {
  const seenOn = dry.weather.dry?.from;
  const { all, toBuy, toStore } = dry.hay;
  // Where the herds eat standing what was shut, no more is fed, but less hay is made of it.
  const moreFedKg = all.value - base.hay.all.value;
  const moreBoughtKg = toBuy.value - base.hay.toBuy.value;
  if (seenOn === undefined || Math.max(moreFedKg, moreBoughtKg) < 1) return '';
  // What is bought is hay with its losses, what is fed dry matter: where none is fed, nobody knows how they go together.
  const hayPerDryKg = 0 < all.value ? toStore.value / all.value : undefined;
  const bales = dry.hay.balesToBuy.value - base.hay.balesToBuy.value;
  const ways = [
    ...(0 < bales ? [`buy ${formatValue(bales, 'bales', reader)}${costOf(bales)}`] : []),
    ...(hayPerDryKg === undefined
      ? []
      : fewerHead(
          dry,
          { seenOn, moreDryKg: Math.max(moreFedKg, moreBoughtKg / hayPerDryKg), hayPerDryKg },
          reader,
        )),
  ];
  if (ways.length === 0) return '';
  return ` You would see it from ${formatDate(seenOn, reader)}, when the soil begins to slow the grass. To answer it from that day: ${ways.join('; or ')}.`;

  function costOf(count: number): string {
    const [price] = products
      .flatMap((each) => (each.kind === 'hay' ? [each.price] : []))
      .sort((a, b) => Number(a) - Number(b));
    return price === undefined
      ? ' of hay (type what a bale costs under Your place, Prices, to see the money)'
      : ` of hay, about ${formatMoney(costMinor(price, count, reader.currency), reader.currency)} at your price`;
  }
}

/**
 * Head that would have to go on a day, so that no more is needed: what is known then is what each
 * needs, and who has gone eats no hay in the winter after either.
 */
function fewerHead(
  { herds, from, to, hay }: PasturePlan,
  of: { readonly seenOn: string; readonly moreDryKg: number; readonly hayPerDryKg: number },
  reader: Reader,
): string[] {
  const day = Math.max(0, daysBetween(from, of.seenOn));
  const groups = herds.flatMap((herd) => herd.groups);
  const headOn = (on: number): number =>
    groups.reduce((sum, { headByDay }) => sum + (headByDay[on] ?? 0), 0);
  const head = headOn(day);
  if (head === 0) return [];
  const needKg = herds
    .flatMap(({ needByDay }) => needByDay.slice(day))
    .reduce((sum, kg) => sum + kg, 0);
  const winterKg = (hay.nextWinter?.value ?? 0) / of.hayPerDryKg;
  const eachKg = needKg / head;
  const eachWinterKg = winterKg / Math.max(head, headOn(daysBetween(from, to)));
  const fewer = Math.ceil(of.moreDryKg / (eachKg + eachWinterKg));
  if (head <= fewer) return [];
  const say = (kg: number): string => formatValue(kg, 'kg', reader);
  const winter = eachWinterKg < 1 ? '' : `, and ${say(eachWinterKg)} in the winter after`;
  return [
    `sell or ship about ${fewer} of ${head} head, each of which needs about ${say(eachKg)} of dry matter until ${formatDate(to, reader)}${winter}`,
  ];
}
