import type { BuyingProblem } from '../../shared/buying/buying-problem.js';

/** What an offer costs, written out: all bags of a trip at the price of the highest step reached. */
export type Tiers = readonly { readonly fromBags: number; readonly each: number }[];

/** A problem whose prices are known to the writer of the program. */
export interface PricedProblem {
  readonly problem: BuyingProblem;
  /** By item and offer. */
  readonly tiers: readonly (readonly Tiers[])[];
}

export const costOfTiers =
  (tiers: Tiers) =>
  (bags: number, pricedAsBags = 0): number =>
    bags * tiers.findLast(({ fromBags }) => fromBags <= Math.max(bags, pricedAsBags))!.each;

/** A kilogram that is missing. */
export const SHORT_COST = 1e5;

/**
 * Buying feed as a mixed-integer program in LP text for a general-purpose solver: a variable for
 * every trip, whole bags of each offer and step of its price, what is fed of each purchase on each
 * day, and what is thrown away of it. Written from the question, not from the way it is solved.
 */
export function buyingProgram({ problem, tiers }: PricedProblem): string {
  const { days, suppliers, items, storeKg, handDays } = problem;
  const costs: string[] = [];
  const rows: string[] = [];
  const binary: string[] = [];
  const integer: string[] = [];
  suppliers.forEach(({ tripCost, days: open }, s) => {
    for (let t = 0; t < days; t++)
      if (open[t] === 1) {
        binary.push(`y${s}_${t}`);
        costs.push(`${tripCost} y${s}_${t}`);
      }
  });
  /** By day: terms of what lies in the store after its trips. */
  const stock: string[][] = Array.from({ length: days }, () => []);
  /** Bags of every feed of a trip, where those count together. */
  const ofTrip = new Map<string, string[]>();
  const together: { readonly z: string; readonly fromBags: number; readonly trip: string }[] = [];
  items.forEach(({ needKg, offers, stock: lots }, i) => {
    const all = needKg.reduce((sum, kg) => sum + kg, 0);
    const fed: string[][] = Array.from({ length: days }, () => []);
    const first = Math.min(
      ...offers.map(({ supplier }) => {
        const open = suppliers[supplier]!.days.indexOf(1);
        return open < 0 ? days : open;
      }),
    );
    const inHand = (day: number): number => (day < first ? 0 : Math.min(handDays, day - first));
    lots.forEach(({ kg, untilDay }, l) => {
      const uses: string[] = [];
      for (let d = 0; d <= Math.min(untilDay, days - 1); d++) {
        uses.push(`l${i}_${l}_${d}`);
        fed[d]!.push(`l${i}_${l}_${d}`);
      }
      if (uses.length === 0) return;
      rows.push(`${uses.join(' + ')} <= ${kg}`);
      // What is never fed of it is thrown out today.
      for (let t = 0; t < days; t++) for (let d = t; d < uses.length; d++) stock[t]!.push(uses[d]!);
    });
    offers.forEach(({ supplier, bagKg, keepsDays }, o) => {
      for (let t = 0; t < days; t++) {
        if (suppliers[supplier]!.days[t] !== 1) continue;
        const steps = tiers[i]![o]!.map(({ fromBags, each }, k) => {
          const [n, z] = [`n${i}_${o}_${t}_${k}`, `z${i}_${o}_${t}_${k}`];
          const most = Math.ceil(all / bagKg) + fromBags;
          integer.push(n);
          binary.push(z);
          costs.push(`${each} ${n}`);
          rows.push(`${n} - ${most} ${z} <= 0`);
          if (suppliers[supplier]!.countsTogether && 0 < k)
            together.push({ z, fromBags, trip: `${supplier}_${t}` });
          else rows.push(`${n} - ${Math.max(1, fromBags)} ${z} >= 0`);
          const bags = ofTrip.get(`${supplier}_${t}`) ?? [];
          ofTrip.set(`${supplier}_${t}`, [...bags, n]);
          return { n, z };
        });
        rows.push(`${steps.map(({ z }) => z).join(' + ')} - y${supplier}_${t} <= 0`);
        const uses: string[] = [];
        for (let d = t; d <= Math.min(days - 1, t + keepsDays); d++) {
          if (d - inHand(d) < t) continue;
          uses.push(`u${i}_${o}_${t}_${d}`);
          fed[d]!.push(`u${i}_${o}_${t}_${d}`);
        }
        const bought = steps.map(({ n }) => `${bagKg} ${n}`).join(' + ');
        rows.push(`${bought}${uses.map((u) => ` - ${u}`).join('')} - w${i}_${o}_${t} = 0`);
        stock[t]!.push(...steps.map(({ n }) => `${bagKg} ${n}`));
        for (let later = t + 1; later < days; later++)
          for (let d = later; d <= Math.min(days - 1, t + keepsDays); d++)
            if (uses.includes(`u${i}_${o}_${t}_${d}`)) stock[later]!.push(`u${i}_${o}_${t}_${d}`);
      }
    });
    for (let d = 0; d < days; d++) {
      if (needKg[d] === 0) continue;
      costs.push(`${SHORT_COST} s${i}_${d}`);
      rows.push(`${[...fed[d]!, `s${i}_${d}`].join(' + ')} = ${needKg[d]}`);
    }
  });
  for (const { z, fromBags, trip } of together)
    rows.push(`${ofTrip.get(trip)!.join(' + ')} - ${fromBags} ${z} >= 0`);
  if (storeKg < Infinity)
    stock.forEach((terms) => {
      if (0 < terms.length) rows.push(`${terms.join(' + ')} <= ${storeKg}`);
    });
  return [
    'Minimize',
    ` obj: ${costs.join(' + ')}`,
    'Subject To',
    ...rows.map((row, k) => ` c${k}: ${row}`),
    'Binary',
    ...binary.map((name) => ` ${name}`),
    'General',
    ...integer.map((name) => ` ${name}`),
    'End',
  ].join('\n');
}
