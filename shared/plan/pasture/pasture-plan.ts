import type { Sourced } from '../../explain/formula.js';
import type { NumberQuantity } from '../../explain/quantity.js';
import type { MowingWork } from '../../farm/mowing.js';
import type { AnimalPicture } from '../../farm/picture.js';
import { FieldError, type FieldProblem } from '../../problems/field-problem.js';
import type { PlanIssue } from '../../problems/plan-issue.js';
import type { Judgement } from '../../tables/judgements.js';
import type { Tables } from '../../tables/tables.js';
import { byLevel, joined } from '../found.js';
import type { Task } from '../tasks/task.js';
import { bedsOf, type BedPart } from './beds.js';
import { carriedParts, tooPoor } from './carried-part.js';
import { checkPasture } from './check-pasture.js';
import { drySpell, type DrySpell } from './dry-spell.js';
import { believed, leftOutOf, oddIssues, type Believed, type LeftOutReading } from './believed.js';
import { bookOf, type GrassBook } from './grass-book.js';
import { planHay, type HayPart } from './hay-part.js';
import { herdPart, type HerdPart } from './herd-part.js';
import { planHerdTasks } from './herd-tasks.js';
import { planManure, type BirdMove } from './manure.js';
import { littleHay } from './little-hay.js';
import { calvingUnknown } from './calving-unknown.js';
import { grassUnderSnow } from './grass-under-snow.js';
import { lowEntries } from './low-entries.js';
import { mowingGoes, mowingWorkOf } from './mowing-goes.js';
import { movesOf, type Move } from './moves.js';
import { nothingToGraze, type NothingToGraze } from './nothing-to-graze.js';
import {
  assumedIssues,
  unplacedIssues,
  withMovesAssumed,
  type AssumedMove,
  type UnplacedHerd,
} from './moves-assumed.js';
import { paddockPart, type PaddockPart } from './paddock-part.js';
import { pastureIssues } from './pasture-issues.js';
import { quarantineIssues } from './quarantine-issues.js';
import { pastureOfFarm } from './pasture-of-farm.js';
import { pensIssues, pensOf, type PensPart } from './pens-part.js';
import { farmFactor } from './farm-growth.js';
import { rounded } from './rounded-days.js';
import { spareGrass } from './spare-grass.js';
import { planSizing, type SizingPart } from './sizing-part.js';
import { surplusOf, type Surplus } from './surplus.js';
import { planTurning, type TurningPart } from './turning-points.js';

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
  /** Paddocks that are cut down because they go rank, where no hay is made. */
  readonly toppings: readonly { readonly paddockId: string; readonly on: string }[];
  /** The work by which paddocks are mown or topped. */
  readonly mowingWork: readonly MowingWork[];
  readonly hay: HayPart;
  readonly keyDates: TurningPart;
  readonly stocking: SizingPart;
  readonly birds: readonly BirdMove[];
  /** Heights that it does not go by until somebody says they are right; left out where there are none. */
  readonly leftOut?: readonly LeftOutReading[];
  /** Ground that becomes garden. */
  readonly beds: readonly BedPart[];
  readonly pens: readonly PensPart[];
  /** Herds that stand where there is nothing to graze on its first day; left out where none does. */
  readonly nothingToGraze?: readonly NothingToGraze[];
  /** Moves that nobody told, where nothing was told of a herd for long. */
  readonly assumedMoves?: readonly AssumedMove[];
  /** Herds of which nothing was told for long, and of which no move can be assumed. */
  readonly unplaced?: readonly UnplacedHerd[];
  /** Work of all herds, by date. */
  readonly tasks: readonly Task[];
  readonly forageBalance: GrassBook;
  readonly issues: readonly PlanIssue[];
  readonly cautions: readonly string[];
}

const NO_PADDOCK: FieldProblem = {
  field: 'paddocks',
  code: 'missing',
  given: undefined,
  fix: 'Add at least one paddock: without one there is no grass to plan.',
};

/** Keys of the cautions that belong to any plan with cattle on grass. */
const OF_EVERY_PASTURE = ['electric-fence'];

/**
 * Plans the grass of a season: where every herd is on every day, and whether the grass lasts. Herds of
 * which nothing was told for long are taken to have moved as planned.
 *
 * @throws FieldError naming every field that makes a plan impossible
 */
export function planPasture(picture: AnimalPicture, tables: Tables): PasturePlan {
  const since = withMovesAssumed(picture, tables, (then) => movesAsTold(then, tables));
  const { assumed, unplaced } = since;
  const plan = planAsTold(since.picture, tables);
  if (assumed.length + unplaced.length === 0) return plan;
  return {
    ...plan,
    ...(assumed.length === 0 ? {} : { assumedMoves: assumed }),
    ...(unplaced.length === 0 ? {} : { unplaced }),
    issues: byLevel([
      ...assumedIssues(picture, tables, assumed),
      ...unplacedIssues(picture, tables, unplaced),
      ...plan.issues,
    ]),
  };
}

/** The season as it was told, without what cannot be. */
function seasonOf(picture: AnimalPicture, tables: Tables): Believed {
  const request = pastureOfFarm(picture, tables);
  checkPasture(request);
  if (request.paddocks.length === 0) throw new FieldError([NO_PADDOCK]);
  return believed(request);
}

function movesAsTold(picture: AnimalPicture, tables: Tables): Move[] {
  const { context, chosen } = seasonOf(picture, tables);
  return movesOf(context, chosen);
}

function planAsTold(picture: AnimalPicture, tables: Tables): PasturePlan {
  const season = seasonOf(picture, tables);
  const { context, chosen } = season;
  const { span, weather, climate, dateOf } = context;
  const sizing = planSizing(context, chosen);
  const turning = planTurning(context, chosen);
  const hay = planHay(context, chosen);
  const manure = planManure(context, chosen.books);
  const tasks = planHerdTasks(context, turning.part, chosen);
  const carries = context.herds.map((_, h) => carriedParts(context, chosen, h));
  const { issues, cautions } = joined([
    { cautions: OF_EVERY_PASTURE },
    ...[sizing, turning, hay, manure, tasks],
    {
      issues: [
        ...oddIssues(season),
        ...pastureIssues(context, chosen),
        ...quarantineIssues(context, chosen),
        ...pensIssues(context),
        ...tooPoor(context, carries),
        ...spareGrass(context, chosen),
        ...littleHay(context, chosen),
        ...lowEntries(context, chosen),
        ...grassUnderSnow(context, chosen),
        ...calvingUnknown(context),
      ],
    },
  ]);
  const dry = drySpell(context);
  const bare = nothingToGraze(context, chosen);
  const { rainMm } = weather.expected;
  return {
    from: dateOf(span.from),
    to: dateOf(span.to - 1),
    today: context.today,
    weather: {
      label: climate.label,
      knownDays: weather.knownDays,
      hasRain: rainMm !== undefined,
      ...(dry ? { dry } : {}),
      ...(rainMm ? { rainMm: rounded(rainMm, span.from, span.to, 10) } : {}),
    },
    farmFactor: farmFactor(context),
    growth: context.growth,
    order: context.order,
    aheadDays: context.tables.judgements.grass.aheadDays,
    paddocks: context.paddocks.map((_, p) => paddockPart(context, chosen, p, manure.part)),
    herds: context.herds.map((_, h) =>
      herdPart(context, chosen, h, { events: tasks.part.events[h]!, carries: carries[h]! }),
    ),
    moves: movesOf(context, chosen),
    surplus: surplusOf(context, chosen),
    toppings: chosen.books.toppings.map(({ paddock, day }) => ({
      paddockId: context.paddocks[paddock]!.id,
      on: dateOf(day),
    })),
    ...(0 < season.leftOut.length ? { leftOut: leftOutOf(season) } : {}),
    ...(0 < bare.length ? { nothingToGraze: bare } : {}),
    mowingWork: mowingWorkOf(context, mowingGoes(context, chosen.books)),
    hay: hay.part,
    keyDates: turning.part,
    stocking: sizing.part,
    birds: manure.part.birds,
    beds: bedsOf(context),
    pens: pensOf(context),
    tasks: tasks.part.tasks,
    forageBalance: bookOf(chosen),
    issues: byLevel(issues),
    cautions,
  };
}
