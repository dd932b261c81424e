import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { CattleGroup } from '../../farm/herd.js';
import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  fromFarm,
  fromJudgement,
  fromTable,
  input,
  type Quantity,
} from '../../explain/quantity.js';
import { rowById } from '../../tables/tables.js';
import { restsOnAssumedHeight } from '../../farm/assumed.js';
import { weanedOn } from '../../pasture/cow-day.js';
import { gestationFormulas } from '../../pasture/gestation.js';
import { calvingsOf } from '../../pasture/herd-demand.js';
import { groupsOf } from '../../pasture/named-cows.js';
import { apartOf, type Apart } from '../../pasture/quarantine.js';
import type { SeasonBooks, StayRecord } from '../../pasture/season-books.js';
import { issue } from '../../problems/plan-issue.js';
import { found, type Found } from '../found.js';
import { grazingOf } from './season-feed.js';
import { firstFitDay, toldStays, type PastureContext } from './pasture-context.js';
import { END_WORDS } from './stay-reasons.js';
import type { Chosen } from './surplus.js';
import { withoutGrass } from './without-grass.js';

export const herdDateFormulas = {
  turnOut: {
    id: 'turn-out',
    title: 'Turn-out',
    words:
      'First day on which the herd is there, the ground has drained and grass grows, or the date you set has come, and a paddock that is open, rested and free stands at its ready height with a day’s feed on it. Wet ground is known from measured and forecast rain only: wait longer where a hoof print stays 5 cm (2 in) deep.',
    symbols: 'D = min{t ≥ t₀: h(t) ≥ h_in, paddock open, rested and free}',
    sources: ['GRAZING_25', 'GRAZING_73'],
    mark: 'published',
  },
  turnOutTold: {
    id: 'turn-out-told',
    title: 'Turn-out, as told',
    words: 'The first move onto grass of this season that you told.',
    symbols: 'D = min{t: a move told}',
    sources: [],
    mark: 'computed',
  },
  lastGrazing: {
    id: 'last-grazing',
    title: 'Last day on grass',
    words:
      'Last day of the last stay. On no later day of the plan is there a paddock that is open, rested and at its ready height with a day’s feed on it, or no animal is left to graze it.',
    symbols: 'D = max{t: day of a stay}, with no t > D: h(t) ≥ h_in',
    sources: ['GRAZING_25', 'GRAZING_73'],
    mark: 'published',
  },
  magnesium: {
    id: 'magnesium-from',
    title: 'Start magnesium mineral by',
    words: 'Turn-out less thirty days, for cows in milk or near calving.',
    symbols: 'D = turn-out − 30',
    sources: ['GRAZING_78', 'GRAZING_77'],
    mark: 'published',
  },
  weaned: {
    id: 'weaned-on',
    title: 'Calves weaned about',
    words:
      'Calving plus the age at weaning. Until then calves at foot eat more grass each month; from then on the cow is dry, and a weaned calf that stays needs a group of its own in the herd, else what it eats is not counted.',
    symbols: 'D = calving + a',
    sources: [],
    mark: 'assumed',
  },
  gradual: {
    id: 'gradual-until',
    title: 'Feed hay too until',
    words: 'Turn-out plus one to two weeks: hay first, an hour or two of grass rising to the day.',
    symbols: 'D = turn-out + 10',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** Days in the year of a herd: turn-out and what hangs on it, arrivals, calvings, the last grazing. */
export interface HerdDates {
  readonly herdId: string;
  readonly turnOut?: Quantity;
  readonly lastGrazing?: Quantity;
  readonly magnesiumFrom?: Quantity;
  readonly hayBesideUntil?: Quantity;
  readonly arrivals: readonly {
    readonly classId: string;
    readonly on: string;
    readonly head: number;
    /** The first day among those that are there; left out where they come to none. */
    readonly out?: string;
    /** Where they stand apart until then, as the household says. */
    readonly apartIn?: string;
  }[];
  readonly calvings: readonly {
    readonly classId: string;
    readonly due: Quantity;
    /** When its calves are weaned; left out of milk cows. */
    readonly weaned?: Quantity;
    readonly early: string;
    readonly late: string;
    /** Animals that calve by it. */
    readonly head: number;
    /** Place of her or their group among those that calve, from 1. */
    readonly number: number;
    /** The one cow it is of; the group's is of all others. */
    readonly cow?: { readonly id: string; readonly name: string };
  }[];
}

/** The work that says for which cattle the mineral is. */
const MAGNESIUM = 'turn-out.start-high-magnesium-mineral';

function weanedOf(
  { tables, today }: PastureContext,
  group: CattleGroup,
  due: PlainDate,
  cow: string | undefined,
): { weaned?: Quantity } {
  const { weaningDays } = tables.judgements.grass;
  const on = weanedOn(group, due, today, weaningDays.value);
  if (on === undefined) return {};
  const label = cow === undefined ? 'Calves weaned about' : `${cow}: calf weaned about`;
  return {
    weaned: datedFact(label, on, herdDateFormulas.weaned, [
      input('Calving', addDays(on, -weaningDays.value), 'date'),
      fromJudgement(weaningDays),
    ]),
  };
}

/** The dates of one herd under the moves chosen, with the cautions that belong to them. */
export function datesOf(context: PastureContext, chosen: Chosen, h: number): Found<HerdDates> {
  const { herds, tables, dateOf } = context;
  const herd = herds[h]!;
  const grazing = grazingOf(chosen.books, h);
  const calvings = calvingsOf(herd, tables).map(({ group, due, head, number, cow }) => ({
    classId: group.classId,
    due: datedFact(
      cow ? `${cow.name}: calving due` : 'Calving due',
      due.due,
      gestationFormulas.due,
      [
        ...(group.calvesOn === undefined
          ? [
              ...(group.bredOn ? [fromFarm('Bred on', group.bredOn, 'date')] : []),
              fromTable(due.row, 'Gestation', due.meanDays, 'day', 'g'),
            ]
          : [fromFarm('Due, as you typed it', group.calvesOn, 'date')]),
        fromTable(due.row, 'Usual spread', due.sdDays, 'day', 's'),
      ],
    ),
    ...weanedOf(context, group, due.due, cow?.name),
    early: due.early,
    late: due.late,
    head,
    number,
    ...(cow ? { cow: { id: cow.id, name: cow.name } } : {}),
  }));
  const groups = groupsOf(herd);
  const arrivals = groups.flatMap((group) =>
    group.arrivesOn === undefined
      ? []
      : [
          {
            classId: group.classId,
            on: group.arrivesOn,
            head: group.head,
            ...outOf(apartOf(groups, group, tables)),
            ...(group.apartIn === undefined ? {} : { apartIn: group.apartIn }),
          },
        ],
  );
  const cautions = [
    ...(0 < calvings.length ? ['calving'] : []),
    ...(0 < arrivals.length ? ['quarantine'] : []),
    ...(groups.some((group) => isStillToLeave(group, dateOf(context.span.from)))
      ? ['cattle-leaving']
      : []),
  ];
  const base: HerdDates = { herdId: herd.id, arrivals, calvings };
  if (!grazing) {
    const never = issue('stop', 'herd-without-grass', withoutGrass(context, chosen, herd.name));
    return found(base, { issues: [never], cautions });
  }
  // A herd that is on grass already has had its turn-out: on the day it was told of, if it was.
  const isOut = herd.inPaddockId !== undefined && grazing.first === context.span.from;
  const told = isOut ? toldTurnOut(context, h) : undefined;
  const first = told ?? dateOf(grazing.first);
  const { classes = [] } = rowById(tables.herdTaskTemplates, MAGNESIUM);
  const needsMagnesium = herd.groups.some(({ classId }) => classes.includes(classId));
  const { magnesiumLeadDays, gradualDays } = tables.pasture;
  const stay = chosen.books.stays.find((s) => s.herd === h)!;
  const dates: HerdDates = {
    ...base,
    ...(isOut && told === undefined
      ? {}
      : {
          turnOut:
            told === undefined
              ? turnOutOf(context, stay)
              : datedFact('Turn-out', told, herdDateFormulas.turnOutTold, [
                  fromFarm('First move onto grass', told, 'date'),
                ]),
          hayBesideUntil: datedFact(
            'Feed hay too until',
            addDays(first, gradualDays.value),
            herdDateFormulas.gradual,
            [
              input('Turn-out', first, 'date'),
              fromTable(gradualDays, 'Days after it', gradualDays.value, 'day'),
              fromTable(gradualDays, 'At least', gradualDays.low, 'day'),
              fromTable(gradualDays, 'At most', gradualDays.high, 'day'),
            ],
            { rows: [context.growth] },
          ),
          ...(needsMagnesium && !isOut
            ? {
                magnesiumFrom: datedFact(
                  addDays(first, -magnesiumLeadDays.value) < context.today
                    ? 'Start magnesium mineral now; it was due'
                    : 'Start magnesium mineral by',
                  addDays(first, -magnesiumLeadDays.value),
                  herdDateFormulas.magnesium,
                  [
                    input('Turn-out', first, 'date'),
                    fromTable(magnesiumLeadDays, 'Lead', magnesiumLeadDays.value, 'day'),
                  ],
                  { rows: [context.growth] },
                ),
              }
            : {}),
        }),
    lastGrazing: lastGrazingOf(context, chosen, h, first),
  };
  const eatsDry = chosen.books.stays.some((s) => s.herd === h && s.entry === 'at-rest');
  return found(dates, {
    issues: isOut ? [] : laterThanSet(context, stay),
    cautions: [
      ...cautions,
      ...(needsMagnesium && !isOut ? ['grass-tetany'] : []),
      ...(eatsDry ? ['dry-grass'] : []),
    ],
  });
}

/** A day set for turn-out on which no paddock is ready yet is not kept, which is said. */
function laterThanSet(context: PastureContext, stay: StayRecord) {
  const { herds, dateOf, span, say, tables } = context;
  const { name, turnOutOn } = herds[stay.herd]!;
  if (turnOutOn === undefined || turnOutOn < dateOf(span.from)) return [];
  if (dateOf(stay.from) <= turnOutOn || turnOutOn < dateOf(thereFrom(context, stay))) return [];
  return [
    issue(
      'note',
      'turn-out-later',
      `You set turn-out of ${name} for ${say(turnOutOn, 'date')}, but no paddock that is open and rested stands tall enough before ${say(dateOf(stay.from), 'date')}: they go out then, and are on hay until that day. Going out on grass that is shorter costs growth all spring; where yours is taller than planned, walk it and type the heights under Pasture walk.`,
      [tables.judgements.grass.growsKgPerHa],
    ),
  ];
}

const isStillToLeave = ({ leavesOn, leftAs }: CattleGroup, from: PlainDate): boolean =>
  leavesOn !== undefined && leftAs === undefined && from <= leavesOn;

/**
 * The first day on grass of this season by the moves that were told, one of today with them; undefined
 * where none was. A place that only stands in a file of the farm says nothing of its first day.
 */
function toldTurnOut(context: PastureContext, h: number): PlainDate | undefined {
  const { grazings = [], herds, span, today } = context;
  const { id } = herds[h]!;
  const isTold = grazings.some(({ herdId }) => herdId === id);
  const days = toldStays(context).flatMap(({ herdId, from }) =>
    herdId === id && (isTold || from < today) ? [from] : [],
  );
  const [first] = days.sort();
  // On grass since before its year begins: nobody turned it out.
  return first === undefined || first <= span.first ? undefined : first;
}

const outOf = (apart: Apart | undefined): { out?: string } => (apart ? { out: apart.out } : {});

/** Day of the plan from which a herd has cattle that may graze, at the latest that of a stay of theirs. */
function thereFrom({ herdDays, span }: PastureContext, stay: StayRecord): number {
  const { grassKg } = herdDays[stay.herd]!;
  let there = span.from;
  while (there < stay.from && grassKg[there]! <= 0) there++;
  return there;
}

function turnOutOf(context: PastureContext, stay: StayRecord): Quantity {
  const { farm, herds, dateOf, tables, paddocks } = context;
  const { turnOutOn } = herds[stay.herd]!;
  const { kgPerHaCm, sward, depletionMm } = context.grass.swards[stay.paddock]!;
  return datedFact(
    'Turn-out',
    dateOf(stay.from),
    herdDateFormulas.turnOut,
    [
      input('First paddock', paddocks[stay.paddock]!.name, 'text'),
      input('Height then', stay.massBefore / kgPerHaCm, 'cm', 'h'),
      stay.entry === 'first-pass'
        ? input('Height for the first quick pass', sward.firstPassKgPerHa / kgPerHaCm, 'cm', 'h_in')
        : input('Ready height', sward.turnInKgPerHa / kgPerHaCm, 'cm', 'h_in'),
      turnOutOn === undefined
        ? input('Ground drained and grass growing from', dateOf(firstFitDay(context)), 'date', 't₀')
        : fromFarm('Not before the date you set', turnOutOn, 'date', 't₀'),
      ...(turnOutOn === undefined ? [fromJudgement(tables.judgements.grass.growsKgPerHa)] : []),
      input('Herd can graze from', dateOf(thereFrom(context, stay)), 'date'),
      ...(restsOnAssumedHeight(farm)
        ? [input('Height above sea level, assumed: higher up it is later', farm.elevationM, 'm')]
        : []),
      ...(depletionMm
        ? [
            input('Ground drier than field capacity by', depletionMm[stay.from]!, 'rainMm'),
            fromTable(
              tables.pasture.wetGround,
              'Counted as wet, where measured or forecast, below',
              tables.pasture.wetGround.drierThanFieldCapacityMm,
              'rainMm',
            ),
          ]
        : []),
    ],
    { rows: [context.order] },
  );
}

function lastGrazingOf(
  context: PastureContext,
  { books }: Chosen,
  h: number,
  turnOut: string,
): Quantity {
  const { dateOf, grass, paddocks, span } = context;
  const stay = books.stays.findLast((s) => s.herd === h)!;
  const { kgPerHaCm, sward } = grass.swards[stay.paddock]!;
  const last = stay.from + stay.days - 1;
  const tallest = last + 1 < span.to ? ripestAfter(context, books, last) : undefined;
  return datedFact(
    'Last day on grass',
    dateOf(last),
    herdDateFormulas.lastGrazing,
    [
      input('Last paddock', paddocks[stay.paddock]!.name, 'text'),
      input('Why they leave it', END_WORDS[stay.end], 'text'),
      input('Height left', stay.massAfter / kgPerHaCm, 'cm'),
      input('Residual', sward.residualKgPerHa / kgPerHaCm, 'cm', 'h_res'),
      ...(tallest
        ? [
            input('Nearest to its height then', tallest.name, 'text'),
            input('Its height', tallest.heightCm, 'cm', 'h'),
            input('Its ready height', tallest.readyHeightCm, 'cm', 'h_in'),
            input('Its rest', tallest.rest, 'text'),
          ]
        : []),
      input('First day on grass', turnOut, 'date'),
    ],
    { rows: [context.order] },
  );
}

/** The open paddock that is nearest to its height on the morning after a day. */
function ripestAfter(
  { grass }: PastureContext,
  books: SeasonBooks,
  day: number,
): { name: string; heightCm: number; readyHeightCm: number; rest: string } | undefined {
  const open = grass.swards.flatMap(({ sward, kgPerHaCm, paddock }, p) => {
    if (sward.isClosed[day + 1] !== 0) return [];
    const mass = books.massKgPerHa[p]![day]!;
    const left = books.stays.findLast((s) => s.paddock === p);
    const end = left ? left.from + left.days : sward.lastGrazedEnd;
    return [
      {
        name: paddock.name,
        heightCm: mass / kgPerHaCm,
        readyHeightCm: sward.turnInKgPerHa / kgPerHaCm,
        ripeness: mass / sward.turnInKgPerHa,
        rest:
          end === undefined
            ? 'not grazed before'
            : `${day + 1 - end} of ${sward.leastRestDays} days`,
      },
    ];
  });
  return open.sort((a, b) => b.ripeness - a.ripeness)[0];
}
