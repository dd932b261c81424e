import {
  from,
  fromFarm,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  together,
} from '../../explain/quantity.js';
import type { Sourced } from '../../explain/formula.js';
import { forageMassFormulas } from '../../pasture/forage-mass.js';
import { groupsOf } from '../../pasture/named-cows.js';
import { recalibrateFormulas } from '../../pasture/recalibrate.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import type { Cow } from '../../farm/cow.js';
import type { FarmPicture } from '../../farm/picture.js';
import { FieldError, type FieldProblem } from '../../problems/field-problem.js';
import type { Judgement } from '../../tables/judgements.js';
import { rowById, type Tables } from '../../tables/tables.js';
import { byLevel, joined } from '../found.js';
import type { PlanEvent } from '../tasks/event.js';
import type { Task } from '../tasks/task.js';
import { checkPasture } from './check-pasture.js';
import { drySpell, type DrySpell } from './dry-spell.js';
import { planHay, type HayPart } from './hay-part.js';
import { planHerdTasks } from './herd-tasks.js';
import { planManure, type BirdMove } from './manure.js';
import { movesOf, type Move } from './moves.js';
import { pastureContext, type PastureContext } from './pasture-context.js';
import { pastureOfFarm } from './pasture-of-farm.js';
import type { SeasonSward } from './season-swards.js';
import { farmFactorRow, growthRows, needRows, waterRows } from './pasture-support.js';
import { planSizing, type SizingPart } from './sizing-part.js';
import { chooseWithCuts, surplusOf, type Chosen, type Surplus } from './surplus.js';
import { planTurning, type TurningPart } from './turning-points.js';

export interface PaddockPart {
  readonly id: string;
  readonly name: string;
  readonly area: NumberQuantity;
  readonly forage: string;
  readonly perCm: NumberQuantity;
  /** Height and mass on the first day of the plan. */
  readonly height: NumberQuantity;
  readonly mass: NumberQuantity;
  readonly readyHeightCm: number;
  readonly residualHeightCm: number;
  readonly rankCm: number;
  readonly turnInKgPerHa: number;
  readonly residualKgPerHa: number;
  readonly rankKgPerHa: number;
  readonly lastReading?: { readonly date: string; readonly heightCm: number };
  /** How far the last reading was off what had been expected. */
  readonly deviation?: NumberQuantity;
  /** Clover and alfalfa in it, against what is advised because of bloat. */
  readonly legumes: NumberQuantity;
  readonly nitrogen: NumberQuantity;
  readonly phosphorus: NumberQuantity;
  /** Standing in the evening of each day of the plan, kg/ha. */
  readonly massByDay: readonly number[];
  /** What each day of the plan brought and took, kg/ha. */
  readonly days: PaddockDays;
  /** Days on which no herd may go in, those before and after mowing included. */
  readonly closedDays: readonly {
    readonly from: string;
    readonly to: string;
    readonly why: string;
  }[];
}

/** Head of one group of a herd and what one animal of it needs, by day of the plan. */
export interface GroupPart {
  readonly name: string;
  readonly headByDay: readonly number[];
  readonly eachKgByDay: readonly number[];
}

export interface HerdPart {
  readonly id: string;
  readonly name: string;
  readonly groups: readonly GroupPart[];
  readonly needByDay: readonly number[];
  readonly hayByDay: readonly number[];
  readonly waterByDay: readonly number[];
  /** What its need and its water rest on beside their equations. */
  readonly need: Sourced;
  readonly water: Sourced;
  /** The days its tasks hang on. */
  readonly events: readonly PlanEvent[];
  /** Cattle in it that go by a name; left out where none does. */
  readonly cows?: readonly NamedCow[];
}

/** What whoever looks after a named cow should know her by. */
export type NamedCow = Pick<Cow, 'id' | 'name' | 'earTag' | 'notes'>;

const namedCow = ({ id, name, earTag, notes }: Cow): NamedCow => ({
  id,
  name,
  ...(earTag === undefined ? {} : { earTag }),
  ...(notes === undefined ? {} : { notes }),
});

/** Summed up to any day, each is within a twentieth of a kg/ha. */
export interface PaddockDays {
  readonly grown: readonly number[];
  readonly eaten: readonly number[];
  readonly trampled: readonly number[];
  readonly mown: readonly number[];
  readonly diedOff: readonly number[];
}

/** Where the grass of all paddocks went, kg of dry matter. */
export interface GrassBook {
  readonly startKg: number;
  readonly grownKg: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly mownKg: number;
  readonly diedOffKg: number;
  readonly endKg: number;
}

/** A season of grass and cattle, as sent by the API and printed by the terminal. */
export interface PasturePlan {
  readonly from: string;
  readonly to: string;
  readonly today: string;
  readonly weather: {
    readonly label: string;
    readonly knownDays: number;
    readonly hasRain: boolean;
    readonly dry?: DrySpell;
    readonly rainMm?: readonly number[];
  };
  readonly farmFactor: NumberQuantity;
  /** What all growth rests on, and what the order of moves does besides. */
  readonly growth: Sourced;
  readonly order: Sourced;
  /** Days of need that the grass on hand is held against. */
  readonly aheadDays: Judgement;
  readonly paddocks: readonly PaddockPart[];
  readonly herds: readonly HerdPart[];
  readonly moves: readonly Move[];
  readonly surplus: readonly Surplus[];
  readonly hay: HayPart;
  readonly keyDates: TurningPart;
  readonly stocking: SizingPart;
  readonly birds: readonly BirdMove[];
  /** Work of all herds, by date. */
  readonly tasks: readonly Task[];
  readonly forageBalance: GrassBook;
  readonly issues: readonly PlanIssue[];
  readonly cautions: readonly string[];
}

/**
 * Plans the grass of a season: where every herd is on every day, and whether the grass lasts.
 *
 * @param width of the search for the order of moves; left out, it takes about a third of a second
 * @throws FieldError naming every field that makes a plan impossible
 */
export function planPasture(picture: FarmPicture, tables: Tables, width?: number): PasturePlan {
  const request = pastureOfFarm(picture, tables);
  checkPasture(request);
  if (request.paddocks.length === 0) throw new FieldError([NO_PADDOCK]);
  const context = pastureContext(request);
  const { span, weather, climate, dateOf } = context;
  const chosen = chooseWithCuts(context, width);
  const sizing = planSizing(context);
  const turning = planTurning(context, chosen);
  const hay = planHay(context, chosen);
  const manure = planManure(context, chosen.books);
  const tasks = planHerdTasks(context, turning.part);
  const { issues, cautions } = joined([
    { cautions: OF_EVERY_PASTURE },
    ...[sizing, turning, hay, manure, tasks],
    { issues: issuesOf(context, chosen) },
  ]);
  const dry = drySpell(context);
  const { rainMm } = weather.expected;
  const { readingWeight } = request.tables.pasture;
  return {
    from: dateOf(span.from),
    to: dateOf(span.to - 1),
    today: request.today,
    weather: {
      label: climate.label,
      knownDays: weather.knownDays,
      hasRain: rainMm !== undefined,
      ...(dry ? { dry } : {}),
      ...(rainMm ? { rainMm: rounded(rainMm, span.from, span.to, 10) } : {}),
    },
    farmFactor: quantity(
      'Your growth against the model',
      context.grass.farmFactor,
      'ratio',
      recalibrateFormulas.factor,
      [
        {
          ...input('Readings with growth between them', context.grass.pairs, 'count', 'n'),
          mark: farmFactorRow(request.tables, context.grass.pairs).mark,
        },
        input('Readings the model counts for', readingWeight.priorReadings, 'count'),
      ],
      { sources: readingWeight.sources },
    ),
    growth: context.growth,
    order: context.order,
    aheadDays: context.tables.judgements.grass.aheadDays,
    paddocks: context.grass.swards.map((own, p) => ({
      ...paddockPart(context, own),
      nitrogen: manure.part.nitrogen[p]!,
      phosphorus: manure.part.phosphorus[p]!,
      massByDay: rounded(chosen.books.massKgPerHa[p]!, span.from, span.to, 1),
      days: daysOf(context, chosen, p),
      closedDays: shutDays(context, chosen, p),
    })),
    herds: context.herds.map((herd, h) => ({
      id: herd.id,
      name: herd.name,
      groups: groupParts(context, h),
      needByDay: rounded(context.herdDays[h]!.demandKg, span.from, span.to, 10),
      hayByDay: rounded(fedByHand(context, chosen, h), span.from, span.to, 10),
      waterByDay: rounded(context.herdDays[h]!.waterL, span.from, span.to, 10),
      need: together(needRows({ ...request, herds: [herd] })),
      water: together(waterRows(request.tables, herd)),
      events: tasks.part.events[h]!,
      ...(0 < herd.cows.length ? { cows: herd.cows.map(namedCow) } : {}),
    })),
    moves: movesOf(context, chosen),
    surplus: surplusOf(context, chosen),
    hay: hay.part,
    keyDates: turning.part,
    stocking: sizing.part,
    birds: manure.part.birds,
    tasks: tasks.part.tasks,
    forageBalance: bookOf(chosen),
    issues: byLevel(issues),
    cautions,
  };
}

const NO_PADDOCK: FieldProblem = {
  field: 'paddocks',
  code: 'missing',
  given: undefined,
  fix: 'Add at least one paddock: without one there is no grass to plan.',
};

/** Keys of the cautions that belong to any plan with cattle on grass. */
const OF_EVERY_PASTURE = ['electric-fence'];

function rounded(values: Float64Array, from: number, to: number, parts: number): number[] {
  return Array.from(values.subarray(from, to), (value) => Math.round(value * parts) / parts);
}

/** Rounded so that their sums stay true: each takes over what the ones before it rounded away. */
function steps(values: Float64Array, from: number, to: number, parts: number): number[] {
  let sum = 0;
  let said = 0;
  return Array.from(values.subarray(from, to), (value) => {
    sum += value;
    const step = Math.round(sum * parts) - said;
    said += step;
    return step / parts;
  });
}

function daysOf({ span }: PastureContext, { books }: Chosen, p: number): PaddockDays {
  const of = (values: Float64Array): number[] => steps(values, span.from, span.to, 10);
  const { grown, eaten, trampled, mown, diedOff } = books.days[p]!;
  return {
    grown: of(grown),
    eaten: of(eaten),
    trampled: of(trampled),
    mown: of(mown),
    diedOff: of(diedOff),
  };
}

function groupParts({ herds, herdDays, span, tables }: PastureContext, h: number): GroupPart[] {
  const { groups: planned } = herds[h]!;
  const groups = groupsOf(herds[h]!);
  return herdDays[h]!.groups.map(({ head, eachKg }, g) => {
    const { of, cow } = planned[g]!;
    const { name } = rowById(tables.cattle.classes, of.classId);
    const isOnly = groups.filter(({ classId }) => classId === of.classId).length === 1;
    return {
      name: cow?.name ?? (isOnly ? name : `${name}, group ${groups.indexOf(of) + 1}`),
      headByDay: rounded(head, span.from, span.to, 1),
      eachKgByDay: rounded(eachKg, span.from, span.to, 100),
    };
  });
}

function paddockPart(
  context: PastureContext,
  own: SeasonSward,
): Omit<PaddockPart, 'nitrogen' | 'phosphorus' | 'massByDay' | 'days' | 'closedDays'> {
  const { paddock, forage, kgPerHaCm, sward, reading, expectedAtReading } = own;
  const range = forage.massKgPerHaCm[paddock.stand];
  const perCm = quantity(
    'Forage per unit of height',
    kgPerHaCm,
    'kgPerHaCm',
    forageMassFormulas.mass,
    [input('Kind', forage.name, 'text'), input('Stand', paddock.stand, 'text')],
    {
      rows: paddock.massKgPerHaCm === undefined ? [forage.massKgPerHaCm] : [],
      ...(paddock.massKgPerHaCm === undefined
        ? {
            spread: {
              low: range.low,
              high: range.high,
              because: 'the printed range of that stand',
            },
          }
        : {}),
    },
  );
  const heightCm = sward.startKgPerHa / kgPerHaCm;
  const fromWhat = reading
    ? [fromFarm('Last reading', reading.heightCm, 'cm'), input('Read on', reading.date, 'date')]
    : own.heightKnown === 'last-grazing'
      ? [fromFarm('Last grazed', paddock.lastGrazedOn!, 'date')]
      : [fromJudgement(context.tables.judgements.grass.unknownHeightCm)];
  // Its own growth alone: another paddock that nobody read makes this one no less known.
  const growth = together(
    growthRows(context, context.weather, { ...context.grass, swards: [own] }),
  );
  return {
    id: paddock.id,
    name: paddock.name,
    forage: forage.name,
    area: quantity('Area', paddock.areaM2, 'ha', forageMassFormulas.area, []),
    perCm,
    legumes: legumesOf(context, own),
    height: quantity(
      `Height on ${context.say(context.dateOf(context.span.from), 'date')}`,
      heightCm,
      'cm',
      forageMassFormulas.grownHeight,
      fromWhat,
      { rows: [growth] },
    ),
    mass: quantity(
      'Grass on hand then',
      sward.startKgPerHa,
      'kgPerHa',
      forageMassFormulas.mass,
      [input('Height', heightCm, 'cm', 'h'), from(perCm, 'm')],
      { rows: [growth] },
    ),
    readyHeightCm: sward.turnInKgPerHa / kgPerHaCm,
    residualHeightCm: sward.residualKgPerHa / kgPerHaCm,
    rankCm: sward.rankKgPerHa / kgPerHaCm,
    turnInKgPerHa: sward.turnInKgPerHa,
    residualKgPerHa: sward.residualKgPerHa,
    rankKgPerHa: sward.rankKgPerHa,
    ...(reading ? { lastReading: { date: reading.date, heightCm: reading.heightCm } } : {}),
    ...(reading && expectedAtReading !== undefined
      ? {
          deviation: quantity(
            'Difference from what was expected',
            reading.heightCm / (expectedAtReading / kgPerHaCm) - 1,
            'share',
            recalibrateFormulas.off,
            [
              fromFarm('Read', reading.heightCm, 'cm', 'h_read'),
              input('Expected', expectedAtReading / kgPerHaCm, 'cm', 'h_expected'),
            ],
            { rows: [growth] },
          ),
        }
      : {}),
  };
}

function legumesOf({ tables }: PastureContext, { forage }: SeasonSward): NumberQuantity {
  const { legumeShare } = forage;
  const { bloatLegumeShare: limit } = tables.pasture;
  return quantity(
    'Clover and alfalfa in it',
    legumeShare.value,
    'share',
    forageMassFormulas.legumes,
    [
      input('Kind', forage.name, 'text'),
      fromTable(limit, 'Advised against bloat, at most', limit.value, 'share'),
      fromJudgement(tables.judgements.grass.bloatCautionShare),
    ],
    { rows: [legumeShare] },
  );
}

/** Feed besides grass, the feed of cattle in quarantine included. */
function fedByHand({ herdDays }: PastureContext, { books }: Chosen, h: number): Float64Array {
  const { demandKg, grassKg } = herdDays[h]!;
  return books.hayKg[h]!.map((kg, day) => kg + demandKg[day]! - grassKg[day]!);
}

function shutDays(
  { paddocks, dateOf, span }: PastureContext,
  { swards }: Chosen,
  p: number,
): PaddockPart['closedDays'] {
  const own = paddocks[p]!;
  const { cutDays, isClosed } = swards[p]!;
  return [
    ...own.closedDays,
    ...cutDays.map((cut) => {
      let [from, to] = [cut, cut];
      while (span.from < from && isClosed[from - 1] === 1) from--;
      while (to + 1 < span.to && isClosed[to + 1] === 1) to++;
      return { from: dateOf(from), to: dateOf(to), why: 'hay' };
    }),
  ];
}

function bookOf({ books }: Chosen): GrassBook {
  const total = (key: keyof GrassBook): number =>
    Math.round(books.paddocks.reduce((sum, book) => sum + book[key], 0) * 10) / 10;
  return {
    startKg: total('startKg'),
    grownKg: total('grownKg'),
    eatenKg: total('eatenKg'),
    trampledKg: total('trampledKg'),
    mownKg: total('mownKg'),
    diedOffKg: total('diedOffKg'),
    endKg: total('endKg'),
  };
}

/** What the land, the herds and the moves chosen give to say, beside what the sections found. */
function issuesOf(context: PastureContext, { books }: Chosen): PlanIssue[] {
  const { weather, herds, paddocks, say, tables } = context;
  const issues: PlanIssue[] = [];
  if (!weather.expected.rainMm) {
    issues.push(
      issue(
        'note',
        'no-rain-known',
        'No rain is known for this farm, so dry spells do not slow the grass in this plan. Type the monthly rain under Your place, fetch the weather, or import it with rain.',
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
  const harvests = paddocks.flatMap((own, p) => {
    if (own.harvestOn === undefined) return [];
    const last = books.stays.findLast((s) => s.paddock === p);
    if (!last) return [];
    const left = context.dateOf(last.from + last.days - 1);
    const days = tables.pasture.rawManure.touchingSoilDays;
    return context.dateOf(last.from + last.days - 1 + days) <= own.harvestOn
      ? []
      : [`${own.name} (last grazed ${say(left, 'date')}, harvest ${say(own.harvestOn, 'date')})`];
  });
  if (0 < harvests.length) {
    issues.push(
      issue(
        'stop',
        'manure-before-harvest',
        `Fewer than ${tables.pasture.rawManure.touchingSoilDays} days between grazing and harvest: ${harvests.join('; ')}. Close the paddock earlier or plant what does not touch the soil (${tables.pasture.rawManure.offSoilDays} days).`,
        [tables.pasture.rawManure],
      ),
    );
  }
  return issues;
}
