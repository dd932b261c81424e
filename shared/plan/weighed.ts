import type { PlainDate } from '../calendar/plain-date.js';
import {
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type QuantityInput,
  type Spread,
} from '../explain/quantity.js';
import { birdsToWeigh, NINETEEN_IN_TWENTY, weighingFormulas } from '../poultry/weighings.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { howEven, type EvennessPart } from './how-even.js';
import { speedRange, type OwnGrowth, type UsedWeighing } from './how-they-grow.js';
import type { Life } from './life.js';

/** One weighing beside what was planned for that day. */
export interface WeighingRow {
  /** Id of the told fact, where it is one. */
  readonly id?: string;
  readonly on: PlainDate;
  readonly ageDays: number;
  readonly birds: number;
  readonly average: NumberQuantity;
  /** By the plan without any weighing, kg; undefined when they were not there on that day. */
  readonly plannedKg?: number;
  /** How far such a weighing lies from what the flock grows by, one standard deviation as a share. */
  readonly errorShare: number;
  readonly isUsed: boolean;
}

export interface WeighedPart {
  readonly rows: readonly WeighingRow[];
  /** How fast they grow, over the plan without weighings; undefined while no weighing counts. */
  readonly speed?: NumberQuantity;
  /** How alike they are; undefined while too few were weighed one by one. */
  readonly even?: EvennessPart;
}

export function weighedPart(context: PlanContext, own: OwnGrowth): WeighedPart {
  const even = howEven(context, own);
  return {
    rows: own.weighings.map((each) => rowOf(context, each)),
    ...(own.speed ? { speed: speedOf(context, own) } : {}),
    ...(even ? { even } : {}),
  };
}

function rowOf({ batch }: PlanContext, used: UsedWeighing): WeighingRow {
  const { weighing, kg, ageDays, plannedKg, isUsed, cv, error } = used;
  const about = NINETEEN_IN_TWENTY * used.averageOpen * kg;
  return {
    ...(weighing.id === undefined ? {} : { id: weighing.id }),
    on: weighing.date,
    ageDays,
    birds: weighing.birds,
    average: quantity(
      'Weighed, average',
      kg,
      'kg',
      weighingFormulas.average,
      [
        fromFarm('Average weight', kg, 'kg', 'W'),
        fromFarm('Birds weighed', weighing.birds, 'count', 'n'),
        input('Birds in all', batch.orderedBirds ?? batch.wantedBirds, 'count', 'N'),
        input('Birds differ by', cv, 'share', 'cv'),
      ],
      {
        spread: {
          low: kg - about,
          high: kg + about,
          because: `${weighing.birds === 1 ? '1 bird was' : `${weighing.birds} birds were`} weighed`,
        },
      },
    ),
    ...(Number.isNaN(plannedKg) ? {} : { plannedKg }),
    errorShare: error,
    isUsed,
  };
}

function speedOf({ tables }: PlanContext, { speed, weighings }: OwnGrowth): NumberQuantity {
  const { flocksApart, wanderDays } = tables.judgements.birds;
  const [low, high] = speedRange(speed!);
  return quantity(
    'Growth by your weighings',
    speed!.value,
    'share',
    weighingFormulas.speed,
    [
      ...weighings
        .filter(({ isUsed }) => isUsed)
        .flatMap(({ ageDays, kg, weighing }) => [
          fromFarm('Age', ageDays, 'day', 't'),
          fromFarm(`Average of ${weighing.birds}`, kg, 'kg', 'W'),
        ]),
      input(flocksApart.name, flocksApart.value, 'share', 'u'),
      input(wanderDays.name, wanderDays.value, 'day', 'w'),
    ],
    { spread: { low, high, because: 'few birds, and young ones, leave it open' } },
  );
}

/** How many birds to put on the scale, so that the average says something. */
export function toWeigh({ batch, tables }: PlanContext): NumberQuantity {
  const { evenness } = tables.growing;
  const flock = batch.orderedBirds ?? batch.wantedBirds;
  return quantity(
    'Birds to weigh',
    birdsToWeigh(evenness, flock),
    'count',
    weighingFormulas.toWeigh,
    [
      fromTable(evenness, 'Birds differ by', evenness.cv, 'share', 'cv'),
      input('Birds in all', flock, 'count', 'N'),
    ],
  );
}

/** How fast the birds grow by the household's weighings, as an input of weights and feed. */
export const speedInputs = ({ own }: Pick<Life, 'own'>): readonly QuantityInput[] =>
  own?.speed ? [fromFarm('Growth by your weighings', own.speed.value, 'share', 's')] : [];

/** What a weight or feed takes in of how the birds live: at home, and in the air outdoors. */
export const livingInputs = ({ life, batch }: PlanContext): readonly QuantityInput[] => {
  const { atHome } = life.growthTable;
  const { standsIn } = life.strain.heat;
  return [
    ...(atHome && batch.keptAs !== 'trial-house' ? [input('At home', atHome.note, 'text')] : []),
    ...(life.hasAir
      ? [
          input(
            'Heat and cold',
            `growth and feed answer to the air outdoors (an estimate${standsIn === undefined ? '' : `: ${standsIn}`})`,
            'text',
          ),
        ]
      : []),
  ];
};

/** What the weighings leave open of the average at the end. */
export const weighedSpread = ({ endWeightKg, own }: Life): Spread | undefined =>
  endWeightKg && {
    ...endWeightKg,
    because: `your ${own!.weighings.length === 1 ? 'weighing leaves' : 'weighings leave'} that open`,
  };

/** Weighings that say nothing, and those that no bird can have. */
export function weighedIssues({ life, tables, say }: PlanContext): PlanIssue[] {
  const { own } = life;
  if (!own) return [];
  if (own.isFarOff) {
    return [
      issue(
        'act',
        'weighing-far-off',
        'Your weighings lie so far from what these birds weigh that the plan leaves them out: check the scale’s unit, the number of birds and the breed.',
      ),
    ];
  }
  const { youngestDays } = tables.growing.evenness;
  return own.weighings
    .filter(({ isUsed }) => !isUsed)
    .map(({ weighing, ageDays }) =>
      issue(
        'note',
        'weighing-not-used',
        ageDays < youngestDays
          ? `The weighing of ${say(weighing.date, 'date')} says nothing of growth yet: birds younger than ${say(youngestDays, 'day')} do not count.`
          : `The weighing of ${say(weighing.date, 'date')} is of grown birds and says nothing of how fast they grow.`,
        [tables.growing.evenness],
      ),
    );
}
