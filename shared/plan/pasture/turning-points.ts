import { addDays, daysBetween } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { dueOf } from '../../pasture/herd-demand.js';
import { gestationFormulas } from '../../pasture/gestation.js';
import { regrown } from '../../pasture/regrowth.js';
import { massOn } from '../../pasture/sward.js';
import { issue } from '../../problems/plan-issue.js';
import { rowById } from '../../tables/tables.js';
import { autumnShutDay, lastGrowingDay } from './autumn.js';
import { grazingOf } from './hay-part.js';
import type { PastureContext } from './pasture-context.js';
import type { Chosen } from './surplus.js';

export const turningFormulas = {
  ready: {
    id: 'grass-ready',
    title: 'First paddock at its height',
    words: 'First day on which a paddock that is not shut reaches the height to go in at.',
    symbols: 'min{t: h(t) ≥ h_in}',
    sources: ['GRAZING_25', 'GRAZING_73'],
    mark: 'published',
  },
  turnOut: {
    id: 'turn-out',
    title: 'Turn-out',
    words:
      'First day on which the herd goes into a paddock in the chosen order. A plan by height alone: wait longer where a hoof print stays 5 cm (2 in) deep.',
    symbols: 'min{t: herd on grass}',
    sources: ['GRAZING_25'],
    mark: 'published',
  },
  lastGrazing: {
    id: 'last-grazing',
    title: 'Last day on grass',
    words: 'Last day of the last stay: from then on nothing above the residual is left or ready.',
    symbols: 'max{t: herd on grass}',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  magnesium: {
    id: 'magnesium-from',
    title: 'Magnesium mineral from',
    words: 'Turn-out less thirty days, for cows in milk or near calving.',
    symbols: 'D = turn-out − 30',
    sources: ['GRAZING_78', 'GRAZING_77'],
    mark: 'published',
  },
  gradual: {
    id: 'gradual-until',
    title: 'Hay beside grass until',
    words: 'Turn-out plus one to two weeks: hay first, an hour or two of grass rising to the day.',
    symbols: 'D = turn-out + 10',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
  stockpile: {
    id: 'stockpile-shut',
    title: 'Shut for autumn grass',
    words: 'End of growth less ten to eleven weeks: graze it down, then keep everything off.',
    symbols: 'D = end of growth − 75',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
  stockpileMass: {
    id: 'stockpile-standing',
    title: 'Standing when growth ends',
    words: 'Grown from the residual over the days it is shut.',
    symbols: 'W = regrown(W_res, Σr)',
    sources: ['LOGISTIC'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

export interface HerdDates {
  readonly herdId: string;
  readonly turnOut?: Quantity;
  readonly lastGrazing?: Quantity;
  readonly magnesiumFrom?: Quantity;
  readonly hayBesideUntil?: Quantity;
  readonly arrivals: readonly {
    readonly classId: string;
    readonly on: string;
    readonly out: string;
  }[];
  readonly calvings: readonly {
    readonly classId: string;
    readonly due: Quantity;
    readonly early: string;
    readonly late: string;
  }[];
}

export interface TurningPart {
  readonly ready?: Quantity;
  readonly growthEnds: string;
  readonly herds: readonly HerdDates[];
  readonly stockpile?: {
    readonly shutFrom: Quantity;
    /** Those the household keeps, else those that suit it best. */
    readonly paddockIds: readonly string[];
    /** The moves of this plan leave them alone. */
    readonly isKept: boolean;
    readonly standing: NumberQuantity;
  };
}

const MILK_OR_CALF = ['cow-calf', 'milk-cow', 'dry-cow', 'heifer'];

/** Turn-out, calving, arrivals, the last grazing and what to shut for autumn. */
export function planTurning(context: PastureContext, chosen: Chosen): TurningPart {
  const { span, grass, dateOf, tables, paddocks, cautions } = context;
  cautions.add('turn-out');
  if (grass.swards.some((s) => 0.3 <= s.forage.legumeShare)) cautions.add('bloat');
  cautions.add('nitrate-frost');
  const ready = firstReady(context);
  const end = lastGrowingDay(grass.swards, span);
  const days = tables.pasture.stockpile.daysBeforeGrowthEnds;
  const shut = autumnShutDay(context, end);
  const cool = grass.swards
    .map((s, p) => ({ s, p }))
    .filter(({ s }) => s.forage.habit === 'cool-season')
    .sort((a, b) => b.s.forage.heights.turnInCm - a.s.forage.heights.turnInCm);
  const kept = context.choices.keepForAutumnIds ?? [];
  const picked =
    0 < kept.length
      ? paddocks.flatMap(({ id }, p) => (kept.includes(id) ? [{ p }] : []))
      : cool.slice(0, Math.max(1, Math.round(paddocks.length / 4)));
  return {
    ...(ready === undefined
      ? {}
      : {
          ready: datedFact(
            'Grass ready',
            dateOf(ready.day),
            turningFormulas.ready,
            [
              input('Paddock', ready.name, 'text'),
              input('Height to go in at', ready.turnInCm, 'cm', 'h_in'),
              input('Weather used', context.climate.label, 'text'),
            ],
            { mark: context.growthMark },
          ),
        }),
    growthEnds: dateOf(end),
    herds: context.herds.map((_, h) => datesOf(context, chosen, h)),
    ...(picked.length === 0 || shut <= span.from
      ? {}
      : {
          stockpile: {
            shutFrom: datedFact(
              'To keep grass for autumn, shut from',
              dateOf(shut),
              turningFormulas.stockpile,
              [input('Growth ends about', dateOf(end), 'date'), input('Days shut', days, 'day')],
            ),
            isKept: 0 < kept.length,
            paddockIds: picked.map(({ p }) => paddocks[p]!.id),
            standing: stockpiled(context, picked[0]!.p, shut, end),
          },
        }),
  };
}

function stockpiled(
  { grass }: PastureContext,
  paddock: number,
  from: number,
  to: number,
): NumberQuantity {
  const { sward } = grass.swards[paddock]!;
  const sum = sward.rateSum[to]! - sward.rateSum[from]!;
  return quantity(
    'Standing when growth ends',
    regrown(sward.residualKgPerHa, sum, sward.ceilingKgPerHa),
    'kgPerHa',
    turningFormulas.stockpileMass,
    [
      input('Residual', sward.residualKgPerHa, 'kgPerHa', 'W_res'),
      input('Ceiling', sward.ceilingKgPerHa, 'kgPerHa', 'K'),
    ],
  );
}

function firstReady({
  span,
  grass,
}: PastureContext): { day: number; name: string; turnInCm: number } | undefined {
  for (let day = span.from; day < span.to; day++) {
    for (const { sward, paddock, kgPerHaCm } of grass.swards) {
      if (sward.isClosed[day] !== 0) continue;
      if (sward.turnInKgPerHa <= massOn(sward, sward.startKgPerHa, span.from, day))
        return { day, name: paddock.name, turnInCm: sward.turnInKgPerHa / kgPerHaCm };
    }
  }
  return undefined;
}

function datesOf(context: PastureContext, chosen: Chosen, h: number): HerdDates {
  const { herds, tables, dateOf, cautions } = context;
  const herd = herds[h]!;
  const grazing = grazingOf(chosen.books, h);
  const calvings = herd.groups.flatMap((group) => {
    const due = dueOf(group, tables);
    if (!due) return [];
    return [
      {
        classId: group.classId,
        due: datedFact('Calving due', due.due, gestationFormulas.due, [
          ...(group.bredOn ? [input('Service', group.bredOn, 'date')] : []),
          input('Gestation', due.meanDays, 'day', 'g'),
          input('Standard deviation', due.sdDays, 'day', 's'),
        ]),
        early: due.early,
        late: due.late,
      },
    ];
  });
  if (0 < calvings.length) cautions.add('calving');
  const arrivals = herd.groups.flatMap((group) =>
    group.arrivesOn === undefined
      ? []
      : [
          {
            classId: group.classId,
            on: group.arrivesOn,
            out: addDays(group.arrivesOn, tables.pasture.quarantineDays.value),
          },
        ],
  );
  if (0 < arrivals.length) cautions.add('quarantine');
  const base: HerdDates = { herdId: herd.id, arrivals, calvings };
  if (!grazing) {
    context.issues.push(
      issue(
        'stop',
        'herd-without-grass',
        `${herd.name} never finds a paddock that is tall enough, rested and free before ${context.say(dateOf(context.span.to - 1), 'date')}. Add paddocks, take head off, or feed hay for the whole time.`,
      ),
    );
    return base;
  }
  // A herd that is on grass already has had its turn-out.
  const isOut = herd.inPaddockId !== undefined && grazing.first === context.span.from;
  const first = dateOf(grazing.first);
  const needsMagnesium = herd.groups.some((group) => MILK_OR_CALF.includes(group.classId));
  const { magnesiumLeadDays, gradualDays } = tables.pasture;
  if (needsMagnesium && !isOut) cautions.add('grass-tetany');
  const stay = chosen.books.stays.find((s) => s.herd === h)!;
  const { kgPerHaCm, depletionMm } = context.grass.swards[stay.paddock]!;
  return {
    ...base,
    ...(isOut
      ? {}
      : {
          turnOut: datedFact(
            'Turn-out',
            first,
            turningFormulas.turnOut,
            [
              input('First paddock', context.paddocks[stay.paddock]!.name, 'text'),
              input('Height then', stay.massBefore / kgPerHaCm, 'cm', 'h'),
              ...(depletionMm
                ? [
                    input(
                      'Ground drier than field capacity by',
                      depletionMm[grazing.first]!,
                      'rainMm',
                    ),
                  ]
                : []),
            ],
            { mark: context.growthMark },
          ),
          hayBesideUntil: datedFact(
            'Hay beside grass until',
            addDays(first, gradualDays.value),
            turningFormulas.gradual,
            [input('Turn-out', first, 'date')],
            { mark: gradualDays.mark },
          ),
          ...(needsMagnesium
            ? {
                magnesiumFrom: datedFact(
                  'Magnesium mineral from',
                  addDays(first, -magnesiumLeadDays.value),
                  turningFormulas.magnesium,
                  [input('Turn-out', first, 'date'), input('Lead', magnesiumLeadDays.value, 'day')],
                  { mark: context.growthMark },
                ),
              }
            : {}),
        }),
    lastGrazing: datedFact(
      'Last day on grass',
      dateOf(grazing.last),
      turningFormulas.lastGrazing,
      [input('Days since turn-out', daysBetween(first, dateOf(grazing.last)), 'day')],
      { mark: context.growthMark },
    ),
  };
}

/** Name of a class, for sentences. */
export const className = ({ tables }: PastureContext, id: string): string =>
  rowById(tables.cattle.classes, id).name.toLowerCase();
