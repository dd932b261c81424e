import { addDays } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  fromFarm,
  fromJudgement,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { calvingsOf } from '../../pasture/herd-demand.js';
import { gestationFormulas } from '../../pasture/gestation.js';
import { groupsOf } from '../../pasture/named-cows.js';
import { regrown } from '../../pasture/regrowth.js';
import type { SeasonBooks, StayRecord } from '../../pasture/season-books.js';
import { massOn } from '../../pasture/sward.js';
import { issue } from '../../problems/plan-issue.js';
import { found, joined, type Findings, type Found } from '../found.js';
import { autumnShutDay, lastGrowingDay } from './autumn.js';
import { grazingOf } from './hay-part.js';
import { firstFitDay, rotationProblem, type PastureContext } from './pasture-context.js';
import { END_WORDS, endOfStay } from './stay-reasons.js';
import type { Chosen } from './surplus.js';

export const turningFormulas = {
  ready: {
    id: 'grass-ready',
    title: 'First paddock ready',
    words: 'First day on which a paddock that is not closed reaches its ready height.',
    symbols: 'min{t: h(t) ≥ h_in}',
    sources: ['GRAZING_25', 'GRAZING_73'],
    mark: 'published',
  },
  turnOut: {
    id: 'turn-out',
    title: 'Turn-out',
    words:
      'First day on which the herd is there, the ground has drained and grass grows, or the date you set has come, and a paddock that is open, rested and free stands at its ready height with a day’s feed on it. Wet ground is known from measured and forecast rain only: wait longer where a hoof print stays 5 cm (2 in) deep.',
    symbols: 'D = min{t ≥ t₀: h(t) ≥ h_in, paddock open, rested and free}',
    sources: ['GRAZING_25', 'GRAZING_73'],
    mark: 'published',
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
    title: 'Magnesium mineral from',
    words: 'Turn-out less thirty days, for cows in milk or near calving.',
    symbols: 'D = turn-out − 30',
    sources: ['GRAZING_78', 'GRAZING_77'],
    mark: 'published',
  },
  gradual: {
    id: 'gradual-until',
    title: 'Feed hay too until',
    words: 'Turn-out plus one to two weeks: hay first, an hour or two of grass rising to the day.',
    symbols: 'D = turn-out + 10',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
  stockpile: {
    id: 'stockpile-shut',
    title: 'Closed for fall grass',
    words: 'End of growth less ten to eleven weeks: graze it down, then keep everything off.',
    symbols: 'D = end of growth − 75',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
  stockpileMass: {
    id: 'stockpile-standing',
    title: 'Grass on hand when growth ends',
    words:
      'The first paddock named, grazed down to its residual and grown on along the logistic curve over the days it is closed.',
    symbols: 'W = K ÷ (1 + (K ÷ W_res − 1)·e^(−Σr))',
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
    /** Animals that calve by it. */
    readonly head: number;
    /** Place of her or their group among those that calve, from 1. */
    readonly number: number;
    /** The one cow it is of; the group's is of all others. */
    readonly cow?: { readonly id: string; readonly name: string };
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
    readonly forageOnHand: NumberQuantity;
  };
}

const MILK_OR_CALF = ['cow-calf', 'milk-cow', 'dry-cow', 'heifer'];

/** Turn-out, calving, arrivals, the last grazing and what to shut for fall. */
export function planTurning(context: PastureContext, chosen: Chosen): Found<TurningPart> {
  const { span, grass, dateOf, tables, paddocks } = context;
  const ready = firstReady(context);
  const end = lastGrowingDay(grass.swards, span, tables);
  const { stockpile } = tables.pasture;
  const days = stockpile.daysBeforeGrowthEnds;
  const { growsKgPerHa, autumnShare } = tables.judgements.grass;
  const shut = autumnShutDay(context, end);
  const cool = grass.swards
    .map((s, p) => ({ s, p }))
    .filter(({ s }) => s.forage.habit === 'cool-season')
    .sort((a, b) => b.s.forage.heights.readyHeightCm - a.s.forage.heights.readyHeightCm);
  const kept = context.choices.keepForAutumnIds ?? [];
  const picked =
    0 < kept.length
      ? paddocks.flatMap(({ id }, p) => (kept.includes(id) ? [{ p }] : []))
      : cool.slice(0, Math.max(1, Math.round(paddocks.length * autumnShare.value)));
  const herds = context.herds.map((_, h) => datesOf(context, chosen, h));
  const part: TurningPart = {
    ...(ready === undefined
      ? {}
      : {
          ready: datedFact(
            'Grass ready',
            dateOf(ready.day),
            turningFormulas.ready,
            [
              input('Paddock', ready.name, 'text'),
              input('Ready height', ready.readyHeightCm, 'cm', 'h_in'),
              input('Weather used', context.climate.label, 'text'),
            ],
            { rows: [context.growth] },
          ),
        }),
    growthEnds: dateOf(end),
    herds: herds.map((each) => each.part),
    ...(picked.length === 0 || shut <= span.from
      ? {}
      : {
          stockpile: {
            shutFrom: datedFact(
              'To keep grass for fall, closed from',
              dateOf(shut),
              turningFormulas.stockpile,
              [
                input('Growth ends about', dateOf(end), 'date'),
                fromJudgement(growsKgPerHa),
                fromTable(stockpile, 'Days closed', days, 'day'),
                fromTable(stockpile, 'At least', stockpile.low, 'day'),
                fromTable(stockpile, 'At most', stockpile.high, 'day'),
                ...(0 < kept.length ? [] : [fromJudgement(autumnShare)]),
              ],
              { rows: [context.growth] },
            ),
            isKept: 0 < kept.length,
            paddockIds: picked.map(({ p }) => paddocks[p]!.id),
            forageOnHand: stockpiled(context, picked[0]!.p, shut, end),
          },
        }),
  };
  return found(
    part,
    joined([
      { cautions: ['turn-out'] },
      ofLegumes(context),
      { cautions: ['nitrate-frost'] },
      ...herds,
    ]),
  );
}

/** The caution from a judged share on; more legumes than publications advise are named. */
function ofLegumes({ grass, tables, say }: PastureContext): Partial<Findings> {
  const limit = tables.pasture.bloatLegumeShare;
  const { bloatCautionShare } = tables.judgements.grass;
  const hasBloat = grass.swards.some((s) => bloatCautionShare.value <= s.forage.legumeShare.value);
  const over = grass.swards.filter((s) => limit.value < s.forage.legumeShare.value);
  return {
    cautions: hasBloat ? ['bloat'] : [],
    issues:
      over.length === 0
        ? []
        : [
            issue(
              'note',
              'legumes-over-limit',
              `${over.map(({ paddock }) => paddock.name).join(', ')}: more than ${say(limit.value, 'share')} of the stand is clover or alfalfa, the most that is advised against bloat. Never turn hungry cattle in, least of all when it is wet.`,
              [limit, ...over.map(({ forage }) => forage.legumeShare)],
            ),
          ],
  };
}

function stockpiled(
  { grass, dateOf, growth, tables }: PastureContext,
  paddock: number,
  from: number,
  to: number,
): NumberQuantity {
  const { sward, paddock: own } = grass.swards[paddock]!;
  const sum = sward.rateSum[to]! - sward.rateSum[from]!;
  const ceiling = tables.pasture.ceilingKgPerHa;
  const standing = (kgPerHa: number): number =>
    regrown(sward.residualKgPerHa, sum, (sward.ceilingKgPerHa * kgPerHa) / ceiling.value);
  return quantity(
    'Grass on hand when growth ends',
    standing(ceiling.value),
    'kgPerHa',
    turningFormulas.stockpileMass,
    [
      input('Paddock', own.name, 'text'),
      input('Closed from', dateOf(from), 'date'),
      input('Growth ends about', dateOf(to), 'date'),
      input('Residual', sward.residualKgPerHa, 'kgPerHa', 'W_res'),
      input('Relative growth rates of those days, summed', sum, 'ratio', 'Σr'),
      fromTable(ceiling, 'Ceiling', sward.ceilingKgPerHa, 'kgPerHa', 'K'),
    ],
    {
      rows: [growth],
      spread: {
        low: standing(ceiling.low),
        high: standing(ceiling.high),
        because: ceiling.because ?? 'the ceiling differs',
      },
    },
  );
}

function firstReady({
  span,
  grass,
}: PastureContext): { day: number; name: string; readyHeightCm: number } | undefined {
  for (let day = span.from; day < span.to; day++) {
    for (const { sward, paddock, kgPerHaCm } of grass.swards) {
      if (sward.isClosed[day] !== 0) continue;
      if (sward.turnInKgPerHa <= massOn(sward, sward.startKgPerHa, span.from, day))
        return { day, name: paddock.name, readyHeightCm: sward.turnInKgPerHa / kgPerHaCm };
    }
  }
  return undefined;
}

function datesOf(context: PastureContext, chosen: Chosen, h: number): Found<HerdDates> {
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
        ...(group.bredOn ? [fromFarm('Bred on', group.bredOn, 'date')] : []),
        fromTable(due.row, 'Gestation', due.meanDays, 'day', 'g'),
        fromTable(due.row, 'Usual spread', due.sdDays, 'day', 's'),
      ],
    ),
    early: due.early,
    late: due.late,
    head,
    number,
    ...(cow ? { cow: { id: cow.id, name: cow.name } } : {}),
  }));
  const arrivals = groupsOf(herd).flatMap((group) =>
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
  const cautions = [
    ...(0 < calvings.length ? ['calving'] : []),
    ...(0 < arrivals.length ? ['quarantine'] : []),
  ];
  const base: HerdDates = { herdId: herd.id, arrivals, calvings };
  if (!grazing) {
    const never = issue(
      'stop',
      'herd-without-grass',
      `${herd.name} never finds a paddock that is tall enough, rested and free before ${context.say(dateOf(context.span.to - 1), 'date')}. Add paddocks, take head off, or feed hay for the whole time.`,
    );
    return found(base, { issues: [never], cautions });
  }
  // A herd that is on grass already has had its turn-out.
  const isOut = herd.inPaddockId !== undefined && grazing.first === context.span.from;
  const first = dateOf(grazing.first);
  const needsMagnesium = herd.groups.some((group) => MILK_OR_CALF.includes(group.classId));
  const { magnesiumLeadDays, gradualDays } = tables.pasture;
  const stay = chosen.books.stays.find((s) => s.herd === h)!;
  const dates: HerdDates = {
    ...base,
    ...(isOut
      ? {}
      : {
          turnOut: turnOutOf(context, stay),
          hayBesideUntil: datedFact(
            'Feed hay too until',
            addDays(first, gradualDays.value),
            turningFormulas.gradual,
            [
              input('Turn-out', first, 'date'),
              fromTable(gradualDays, 'Days after it', gradualDays.value, 'day'),
              fromTable(gradualDays, 'At least', gradualDays.low, 'day'),
              fromTable(gradualDays, 'At most', gradualDays.high, 'day'),
            ],
            { rows: [context.growth] },
          ),
          ...(needsMagnesium
            ? {
                magnesiumFrom: datedFact(
                  'Magnesium mineral from',
                  addDays(first, -magnesiumLeadDays.value),
                  turningFormulas.magnesium,
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
  return found(dates, {
    cautions: needsMagnesium && !isOut ? [...cautions, 'grass-tetany'] : cautions,
  });
}

function turnOutOf(context: PastureContext, stay: StayRecord): Quantity {
  const { herds, herdDays, span, dateOf, tables, paddocks } = context;
  const { turnOutOn } = herds[stay.herd]!;
  const { kgPerHaCm, sward, depletionMm } = context.grass.swards[stay.paddock]!;
  const { grassKg } = herdDays[stay.herd]!;
  let there = span.from;
  while (there < stay.from && grassKg[there]! <= 0) there++;
  return datedFact(
    'Turn-out',
    dateOf(stay.from),
    turningFormulas.turnOut,
    [
      input('First paddock', paddocks[stay.paddock]!.name, 'text'),
      input('Height then', stay.massBefore / kgPerHaCm, 'cm', 'h'),
      input('Ready height', sward.turnInKgPerHa / kgPerHaCm, 'cm', 'h_in'),
      turnOutOn === undefined
        ? input('Ground drained and grass growing from', dateOf(firstFitDay(context)), 'date', 't₀')
        : fromFarm('Not before the date you set', turnOutOn, 'date', 't₀'),
      ...(turnOutOn === undefined ? [fromJudgement(tables.judgements.grass.growsKgPerHa)] : []),
      input('Herd can graze from', dateOf(there), 'date'),
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
  { books, swards }: Chosen,
  h: number,
  turnOut: string,
): Quantity {
  const { dateOf, grass, paddocks, span } = context;
  const stay = books.stays.findLast((s) => s.herd === h)!;
  const { kgPerHaCm, sward } = grass.swards[stay.paddock]!;
  const last = stay.from + stay.days - 1;
  const end = endOfStay(rotationProblem(context, { swards }), books, stay);
  const tallest = last + 1 < span.to ? ripestAfter(context, books, last) : undefined;
  return datedFact(
    'Last day on grass',
    dateOf(last),
    turningFormulas.lastGrazing,
    [
      input('Last paddock', paddocks[stay.paddock]!.name, 'text'),
      input('Why they leave it', END_WORDS[end], 'text'),
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
            : `${day + 1 - end} of ${sward.minRestDays[day + 1]!} days`,
      },
    ];
  });
  return open.sort((a, b) => b.ripeness - a.ripeness)[0];
}
