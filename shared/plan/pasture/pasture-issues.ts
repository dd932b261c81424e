import { addDays, daysBetween } from '../../calendar/plain-date.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { PastureContext } from './pasture-context.js';
import { grassOver } from './grass-over.js';
import { onHayDay } from './on-hay-day.js';
import { YEAR } from './pasture-span.js';
import type { Chosen } from './surplus.js';

/** What the land, the herds and the moves chosen give to say, beside what the sections found. */
export function pastureIssues(context: PastureContext, chosen: Chosen): PlanIssue[] {
  const { books } = chosen;
  const { weather, herds, paddocks, say, tables } = context;
  const issues: PlanIssue[] = [
    ...goesRank(context, books),
    ...(heightTaken(context, chosen) ?? notRead(context)),
    ...onHayUnused(context, chosen),
    ...grassOver(context, chosen),
  ];
  if (!weather.expected.rainMm) {
    issues.push(
      issue(
        'note',
        'no-rain-known',
        'No rain is known for this farm, so dry spells do not slow the grass in this plan: expect less grass and less hay than it says. Type the monthly rain under Your place, fetch the weather, or import it with rain.',
      ),
    );
  }
  if (context.climate.isEstimate && context.farm.estimated?.includes('monthlyRainMm')) {
    issues.push(
      issue(
        'note',
        'rain-estimated',
        'The rain of this plan is estimated from where the farm lies: what grows, and the hay that it takes, follow from it. Compare it with a gauge or a weather service nearby and type it under Your place, or fetch the weather.',
      ),
    );
  }
  const dry = paddocks.filter((p) => !p.hasWater);
  if (0 < dry.length) {
    issues.push(
      issue(
        'note',
        'no-water',
        `${dry.map((p) => p.name).join(', ')} ${dry.length === 1 ? 'has' : 'have'} no water: bring it, or a lane to it, before the herd goes in, within ${say(tables.cattleWater.distance.otherM, 'm')} of where they graze (milk cows ${say(tables.cattleWater.distance.milkM, 'm')}).`,
        [tables.cattleWater.distance],
      ),
    );
  }
  const long = herds.filter((h) => tables.pasture.longestStayDays.value < (h.longestStayDays ?? 0));
  for (const herd of long) {
    issues.push(
      issue(
        'note',
        'long-stay',
        `${herd.name} may stay ${herd.longestStayDays} days: from the third or fourth day on it bites the regrowth.`,
        [tables.pasture.longestStayDays],
      ),
    );
  }
  return issues;
}

/** Nothing goes rank without a word: paddocks that are neither grazed, mown nor topped in time. */
function goesRank(context: PastureContext, books: Chosen['books']): PlanIssue[] {
  const { paddocks, dateOf, say, tables, choices } = context;
  const { rankDays } = tables.judgements.grass;
  const rank = paddocks.flatMap(({ name }, p) => {
    const since = rankSince(context, books, p);
    if (since === undefined) return [];
    const next = books.stays.find((stay) => stay.paddock === p && since <= stay.from);
    const isIn = books.stays.some(
      ({ paddock, from, days }) => paddock === p && from <= since && since < from + days,
    );
    const then = isIn
      ? 'while they graze it'
      : next
        ? `kept until ${say(dateOf(next.from), 'date')}`
        : 'not grazed again';
    return [
      { isKept: next !== undefined, text: `${name} (${say(dateOf(since), 'date')}, ${then})` },
    ];
  });
  if (rank.length === 0) return [];
  const makesNone = choices.makesHay === false;
  const byMaking = paddocks.length === 1 ? 'or top it' : 'shut it for hay earlier, or top it';
  const ways = makesNone ? 'or let a neighbor mow it early' : byMaking;
  const kept = rank.some(({ isKept }) => isKept)
    ? ` What is kept is feed for the weeks in which nothing younger is ready${makesNone ? ', and would be missed if it were topped' : ''}; it is old and poor by then.`
    : '';
  return [
    issue(
      'note',
      'goes-rank',
      `Grass goes rank. For three weeks and more: ${rank.map(({ text }) => text).join('; ')}.${kept} Graze it with more head, ${ways}.`,
      [rankDays],
    ),
  ];
}

/** First day of those on which a paddock stands rank so long that it is said. */
function rankSince(
  { span, grass, tables }: PastureContext,
  books: Chosen['books'],
  p: number,
): number | undefined {
  const { sward } = grass.swards[p]!;
  const mass = books.massKgPerHa[p]!;
  let since: number | undefined;
  for (let day = span.from; day < span.to; day++) {
    const isShut = books.cuts.some(
      (cut) => cut.paddock === p && cut.shutFrom <= day && day < cut.openFrom,
    );
    if (isShut || sward.isClosed[day] === 1 || mass[day]! <= sward.rankKgPerHa) since = undefined;
    else since ??= day;
    if (since !== undefined && tables.judgements.grass.rankDays.value <= day - since) return since;
  }
  return undefined;
}

/** Before the first turn-out, that it goes by a height that nobody told; undefined where some is known. */
function heightTaken(context: PastureContext, chosen: Chosen): PlanIssue[] | undefined {
  const { grass, span, choices, dateOf, say } = context;
  const { books } = chosen;
  if (!isBeforeTurnOut(context, chosen)) return undefined;
  if (grass.swards.some(({ heightKnown }) => ['reading', 'last-grazing'].includes(heightKnown)))
    return undefined;
  const heightsCm = grass.swards.map(({ kgPerHaCm }, p) => books.startKgPerHa[p]! / kgPerHaCm);
  const said = [Math.min(...heightsCm), Math.max(...heightsCm)].map((cm) => say(cm, 'cm'));
  const isOnHay = grass.swards.some(({ heightKnown }) => heightKnown === 'on-hay');
  const orTheDay = isOnHay ? '' : ', or under “Hay” the day on which they went on hay';
  const grazedDown = isOnHay
    ? `grazed down until ${say(choices.onHaySince!, 'date')}, from when on they are taken to eat hay,`
    : 'grazed down in fall, left before winter';
  return [
    issue(
      'note',
      'height-taken',
      `How tall is the grass? No height was told for this season, so it is taken as ${[...new Set(said)].join(' to ')} on ${say(dateOf(span.from), 'date')}: ${grazedDown} and grown since. Turn-out, and the hay until then, go by that: walk the pasture when no snow lies on it and type the heights under Pasture walk${orTheDay}.`,
    ),
  ];
}

const isBeforeTurnOut = (
  { today, dateOf }: PastureContext,
  { problem, books: { stays } }: Chosen,
): boolean => stays[0] !== undefined && today < dateOf(stays[0].from) && problem.past.length === 0;

/** Before turn-out, that a day is typed on which herds went on hay, but none of the winter before. */
function onHayUnused(context: PastureContext, chosen: Chosen): PlanIssue[] {
  const { choices, span, say, tables } = context;
  const { onHaySince: on } = choices;
  if (on === undefined || !isBeforeTurnOut(context, chosen)) return [];
  if (onHayDay(span, context, { closedDays: [] }) !== undefined) return [];
  const earliest = addDays(span.first, -tables.judgements.grass.winterReadingDays.value);
  return [
    issue(
      'note',
      'on-hay-unused',
      `“On hay since” is ${say(on, 'date')}, which is not of the winter before this season, so the grass is taken as if no day was typed. Give the day of this winter under “Hay”, from ${say(earliest, 'date')} to ${say(addDays(span.opens, -1), 'date')}, or leave it empty.`,
    ),
  ];
}

/** In the season, that what stands is reckoned by nothing that was seen this year. */
function notRead({ grass, span, today, dateOf, say }: PastureContext): PlanIssue[] {
  if (today < dateOf(span.from)) return [];
  const last = grass.swards
    .flatMap(({ reading }) => (reading ? [reading.date] : []))
    .sort()
    .at(-1);
  if (last !== undefined && daysBetween(last, today) <= YEAR) return [];
  const since =
    last === undefined ? 'has been read yet' : `has been read since ${say(last, 'date')}`;
  return [
    issue(
      'note',
      'not-read',
      `No grass height ${since}: what stands, and with it every move, is reckoned from the weather and what is told alone. Walk the pasture and type the heights under Pasture walk.`,
    ),
  ];
}
