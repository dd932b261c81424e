import type { PlainDate } from '../../calendar/plain-date.js';
import { fromJudgement, input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { carriedFormulas, carriedKg, offBackKg } from '../../pasture/carried.js';
import type { StayRecord } from '../../pasture/season-books.js';
import { cowDay } from '../../pasture/cow-day.js';
import { dueOf, grainSpares, isThere } from '../../pasture/herd-demand.js';
import type { PlannedGroup } from '../../pasture/named-cows.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { CattleClass } from '../../tables/pasture-tables.js';
import { listed } from '../../units/listed.js';
import type { PastureContext } from './pasture-context.js';
import { needRows, usualRows } from './pasture-support.js';
import type { Chosen } from './surplus.js';

/** What the grass of the plan carries of the milk or gain of one group. */
export interface CarriedPart {
  readonly name: string;
  /** It is a cow’s own name. */
  readonly isOneCow: boolean;
  readonly what: 'milk' | 'gain';
  readonly wanted: NumberQuantity;
  /** On the day of the plan on which it carries least. */
  readonly least: NumberQuantity;
  readonly leastOn: string;
  /** What a beef cow gives of her weight on that day to milk on, kg. */
  readonly offBack?: NumberQuantity;
  /** First and last day on which it carries clearly less than wanted, where these are some days. */
  readonly poorFrom?: string;
  readonly poorTo?: string;
  readonly poorDays: number;
  /** Paddocks that are grazed on such days. */
  readonly poorIn: readonly string[];
}

interface CarriedDay {
  readonly day: number;
  readonly stay: StayRecord;
  readonly of: CattleClass;
  readonly weightKg: number;
  readonly what: 'milk' | 'gain';
  readonly kg: number;
  readonly wantedKg: number;
}

/** By group of a herd: groups that are asked for neither milk nor gain are left out. */
export function carriedParts(context: PastureContext, { books }: Chosen, h: number): CarriedPart[] {
  const herd = context.herds[h]!;
  const stayOf = new Map<number, StayRecord>();
  for (const stay of books.stays) {
    if (stay.herd !== h) continue;
    for (let day = stay.from; day < stay.from + stay.days; day++)
      if (books.eatenKg[h]![day]! > 0) stayOf.set(day, stay);
  }
  return herd.groups.flatMap((group, g) => {
    const { weightKg: weightKgs } = context.herdDays[h]!.groups[g]!;
    const ofGroup = {
      ...{ group, weightKgs, due: dueOf(group, context.tables)?.due },
      typedOn: context.dateOf(context.span.from),
    };
    const days: CarriedDay[] = [];
    for (const [day, stay] of stayOf) {
      const carried = dayOf(context, ofGroup, day, stay);
      if (carried) days.push(carried);
    }
    return days.length === 0 ? [] : [partOf(context, group, days)];
  });
}

interface OfGroup {
  readonly group: PlannedGroup;
  readonly weightKgs: Float64Array;
  readonly due: PlainDate | undefined;
  readonly typedOn: PlainDate;
}

function dayOf(
  { tables, dateOf }: PastureContext,
  { group, weightKgs, due, typedOn }: OfGroup,
  day: number,
  stay: StayRecord,
): CarriedDay | undefined {
  const date = dateOf(day);
  const weightKg = weightKgs[day]!;
  if (!isThere(group, date)) return undefined;
  const { of, milkKg, weekOfLactation } = cowDay(group, due, { date, typedOn }, tables);
  const gainKg = group.gainKgPerDay ?? of.gainKgPerDay;
  // Of a dry cow nothing is asked: most days of a beef herd.
  if (milkKg <= 0 && gainKg <= 0) return undefined;
  const carried = carriedKg(of, {
    ...{ weightKg, milkKg, weekOfLactation, digestibleShare: stay.digestibleEaten },
    grainKg: group.grainKgPerDay ?? 0,
    grainSparesKg: grainSpares(group, of, tables),
  });
  if (!carried) return undefined;
  const wantedKg = carried.what === 'milk' ? milkKg : gainKg;
  return 0 < wantedKg ? { day, stay, of, weightKg, wantedKg, ...carried } : undefined;
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
    isOneCow: group.cow !== undefined,
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
        input('Digestible of what is eaten', least.stay.digestibleEaten, 'share', 'd'),
        input('Live weight', least.weightKg, 'kg', 'BW'),
        fromJudgement(carriesShare),
      ],
      { rows },
    ),
    leastOn: dateOf(least.day),
    ...offBackOf(context, least, name),
    poorDays: poor.length,
    poorIn: [...new Set(poor.map(({ stay }) => paddocks[stay.paddock]!.name))],
    ...(carriesDays.value <= poor.length
      ? { poorFrom: dateOf(poor[0]!.day), poorTo: dateOf(poor.at(-1)!.day) }
      : {}),
  };
}

/** What a beef cow in milk gives of her weight on her poorest day. */
function offBackOf(
  { dateOf }: PastureContext,
  { of, day, kg, wantedKg }: CarriedDay,
  name: string,
): Pick<CarriedPart, 'offBack'> {
  const lostKg = offBackKg(wantedKg - kg);
  if (of.equation !== 'nrc-cow-lactating' || lostKg === 0) return {};
  return {
    offBack: quantity(
      `Weight given for milk in a day, ${name}`,
      lostKg,
      'kg',
      carriedFormulas.offBack,
      [
        input('On', dateOf(day), 'date'),
        input('Milk wanted', wantedKg, 'kg', 'M_wanted'),
        input('Milk the grass carries', kg, 'kg', 'M'),
      ],
    ),
  };
}

/** Most paddocks that are named in one sentence. */
const NAMED = 3;

/** Says when the grass no longer carries animals that milk or grow, where, and what would help. */
export function tooPoor(
  context: PastureContext,
  parts: readonly (readonly CarriedPart[])[],
): PlanIssue[] {
  const { herds, say } = context;
  const { upkeepOnlyShare } = context.tables.judgements.grass;
  return parts.flatMap((ofHerd, h) =>
    ofHerd.flatMap((part) => {
      const { what, wanted, least, leastOn, poorFrom, poorTo, poorDays, offBack } = part;
      if (poorFrom === undefined || poorTo === undefined) return [];
      const when = `Between ${say(poorFrom, 'date')} and ${say(poorTo, 'date')}`;
      const on = say(leastOn, 'date');
      const carried =
        least.value < upkeepOnlyShare.value * wanted.value
          ? `no more than upkeep on ${on}`
          : `about ${say(least.value, 'kg')} a day of ${say(wanted.value, 'kg')} on ${on}`;
      const carries = `${carried}, and less than wanted on ${poorDays} days`;
      return [
        issue(
          'note',
          'grass-too-poor',
          `${when} the grass of ${herds[h]!.name} is too old or too dry to carry all of the ${what} of ${whoOf(part)}, ${whereOf(part)}: ${carries}. ${helpOf(context, part)}`,
          [least, ...(offBack ? [offBack] : [])],
        ),
      ];
    }),
  );
}

const whoOf = ({ name, isOneCow }: CarriedPart): string =>
  isOneCow ? name : `each ${name.toLowerCase()}`;

const whereOf = ({ poorIn }: CarriedPart): string =>
  poorIn.length <= NAMED
    ? `in ${listed(poorIn, 'and')}`
    : `in ${poorIn.slice(0, NAMED).join(', ')} and ${poorIn.length - NAMED} more`;

/** What a neighbor would do about it. */
function helpOf({ say, choices }: PastureContext, { what, offBack }: CarriedPart): string {
  const younger = choices.makesHay === false ? 'Graze or top' : 'Graze or mow';
  const first = `${younger} it younger, before it heads out, or give good hay`;
  if (what === 'gain') return `${first} beside it; else they gain slower.`;
  if (!offBack) return `${first} or grain beside it; else she milks less and gets thinner.`;
  return `${first} beside it. A cow in good flesh milks on all the same and gets thinner, by about ${say(offBack.value, 'kg')} a day then.`;
}
