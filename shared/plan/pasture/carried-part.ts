import { fromJudgement, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { carriedFormulas, carriedKg } from '../../pasture/carried.js';
import { cowDay } from '../../pasture/cow-day.js';
import { dueOf, grainSpares, isThere } from '../../pasture/herd-demand.js';
import type { PlannedGroup } from '../../pasture/named-cows.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { CattleClass } from '../../tables/pasture-tables.js';
import type { PastureContext } from './pasture-context.js';
import { needRows, usualRows } from './pasture-support.js';
import type { Chosen } from './surplus.js';

/** What the grass of the plan carries of the milk or gain of one group. */
export interface CarriedPart {
  readonly name: string;
  readonly what: 'milk' | 'gain';
  readonly wanted: NumberQuantity;
  /** On the day of the plan on which it carries least. */
  readonly least: NumberQuantity;
  readonly leastOn: string;
  /** First day from which it carries clearly less than wanted for some days, and how many such days. */
  readonly poorFrom?: string;
  readonly poorDays: number;
}

interface CarriedDay {
  readonly day: number;
  readonly of: CattleClass;
  readonly weightKg: number;
  readonly digestibleShare: number;
  readonly what: 'milk' | 'gain';
  readonly kg: number;
  readonly wantedKg: number;
}

/** By group of a herd: groups that are asked for neither milk nor gain are left out. */
export function carriedParts(context: PastureContext, { books }: Chosen, h: number): CarriedPart[] {
  const herd = context.herds[h]!;
  const digestible = new Map<number, number>();
  for (const stay of books.stays) {
    if (stay.herd !== h) continue;
    for (let day = stay.from; day < stay.from + stay.days; day++)
      if (books.eatenKg[h]![day]! > 0) digestible.set(day, stay.digestibleShare);
  }
  return herd.groups.flatMap((group, g) => {
    const { weightKg: weightKgs } = context.herdDays[h]!.groups[g]!;
    const days = [...digestible].flatMap(([day, share]) =>
      dayOf(context, { group, weightKgs }, day, share),
    );
    return days.length === 0 ? [] : [partOf(context, group, days)];
  });
}

function dayOf(
  { span, tables, dateOf }: PastureContext,
  { group, weightKgs }: { group: PlannedGroup; weightKgs: Float64Array },
  day: number,
  digestibleShare: number,
): CarriedDay[] {
  const date = dateOf(day);
  const weightKg = weightKgs[day]!;
  if (!isThere(group, date)) return [];
  const due = dueOf(group, tables)?.due;
  const { of, milkKg, weekOfLactation } = cowDay(
    group,
    due,
    { date, typedOn: dateOf(span.from) },
    tables,
  );
  const gainKg = group.gainKgPerDay ?? of.gainKgPerDay;
  const carried = carriedKg(of, {
    ...{ weightKg, milkKg, weekOfLactation, digestibleShare },
    grainKg: group.grainKgPerDay ?? 0,
    grainSparesKg: grainSpares(group, of, tables),
  });
  if (!carried) return [];
  const wantedKg = carried.what === 'milk' ? milkKg : gainKg;
  return 0 < wantedKg ? [{ day, of, weightKg, digestibleShare, wantedKg, ...carried }] : [];
}

function partOf(
  context: PastureContext,
  group: PlannedGroup,
  days: readonly CarriedDay[],
): CarriedPart {
  const { tables, dateOf, paddocks } = context;
  const least = days.reduce((a, b) => (b.kg / b.wantedKg < a.kg / a.wantedKg ? b : a));
  const { carriesShare, carriesDays } = tables.judgements.grass;
  const poor = days.filter(({ kg, wantedKg }) => kg < carriesShare.value * wantedKg);
  const { what, of } = least;
  const name = group.cow?.name ?? of.name;
  const rows = [
    ...needRows({ tables, herds: [], paddocks }),
    ...usualRows(tables, group),
    context.growth,
  ];
  return {
    name,
    what,
    wanted: quantity(
      what === 'milk' ? `Milk wanted, ${name}` : `Gain wanted, ${name}`,
      least.wantedKg,
      'kg',
      carriedFormulas[what],
      [input('Live weight', least.weightKg, 'kg', 'BW')],
      { rows: usualRows(tables, group) },
    ),
    least: quantity(
      what === 'milk' ? `Milk the grass carries, ${name}` : `Gain the grass carries, ${name}`,
      least.kg,
      'kg',
      carriedFormulas[what],
      [
        input('On', dateOf(least.day), 'date'),
        input('Digestible at entry', least.digestibleShare, 'share', 'd'),
        input('Live weight', least.weightKg, 'kg', 'BW'),
        fromJudgement(carriesShare),
      ],
      { rows },
    ),
    leastOn: dateOf(least.day),
    poorDays: poor.length,
    ...(carriesDays.value <= poor.length ? { poorFrom: dateOf(poor[0]!.day) } : {}),
  };
}

/** Says when the grass no longer carries animals that milk or grow. */
export function tooPoor(
  { herds, say }: PastureContext,
  parts: readonly (readonly CarriedPart[])[],
): PlanIssue[] {
  return parts.flatMap((ofHerd, h) =>
    ofHerd.flatMap(({ name, what, wanted, least, leastOn, poorFrom, poorDays }) =>
      poorFrom === undefined
        ? []
        : [
            issue(
              'note',
              'grass-too-poor',
              `From ${say(poorFrom, 'date')} on the grass of ${herds[h]!.name} is too old or too dry to carry all of the ${what} of ${name.toLowerCase()}: about ${say(least.value, 'kg')} a day of ${say(wanted.value, 'kg')} on ${say(leastOn, 'date')}, and less than wanted on ${poorDays} days. ${what === 'milk' ? 'Give grain or good hay beside it, graze it younger, or expect less milk and thinner cows.' : 'Graze it younger, feed beside it, or expect slower gain.'}`,
              [least],
            ),
          ],
    ),
  );
}
