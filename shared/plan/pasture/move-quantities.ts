import { addDays } from '../../calendar/plain-date.js';
import type { Formula } from '../../explain/formula.js';
import {
  datedFact,
  from,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../../explain/quantity.js';
import { forageMassFormulas, heightSpread } from '../../pasture/forage-mass.js';
import { swardFormulas } from '../../pasture/sward-day.js';
import { perHectare, sizingFormulas } from '../../pasture/sizing.js';
import { seasonFeedFormulas } from './season-feed.js';
import type { Move } from './moves.js';
import type { PaddockPart } from './paddock-part.js';
import type { PasturePlan } from './pasture-plan.js';
import { END_WORDS, ENTRY_WORDS, START_WORDS } from './stay-reasons.js';

export const moveFormulas = {
  date: {
    id: 'move-date',
    title: 'Why they go in on this day',
    words:
      'A herd moves on the morning after its stay ends, into a paddock that is open, rested and at its ready height: of several into the one that has just become so. So a round begins anew as soon as its first paddock is ready again, and what grows past it is left out, for hay, for topping or for a dry spell. In the first quick pass of spring they go in lower. Where none is at that height they go into one that is ready by its leaves: it has three again, and stands at the least height that is printed or above. Leaves come by warmth, and slower in dry soil; by how much is taken from what dry soil takes of growth. With none of these the herd waits on hay until there is grass for some days. Each move is decided by what stands that morning, not by weather to come.',
    symbols: 'D = end of the stay before + 1, or min{t: a paddock is open, rested and h(t) ≥ h_in}',
    sources: [
      'GRAZING_25',
      'GRAZING_73',
      'GRAZIER_FIRST_PASS',
      'SHELTON_2019',
      'MISSOURI_M185',
      'LEAVES_IN_DRY_SOIL',
    ],
    mark: 'published',
  },
  days: {
    id: 'days-of-stay',
    title: 'Days of stay',
    words:
      'As long as what stands above the residual feeds a day more. Where that is longer than the longest stay, the paddock is grazed in strips with a back fence, each no longer than that and each once, so that no regrowth is bitten.',
    symbols: 'n = max{t: (W − W_res)·A·u ≥ need}, strips = ⌈n ÷ n_max⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  rest: {
    id: 'rest-before-stay',
    title: 'Rest before the stay',
    words:
      'Days since the paddock was last grazed or mown. How long it must be, growth decides: until it is back at its ready height, or else has three leaves again, which takes longer in dry soil, and never shorter than the shortest rest published for the kind.',
    symbols: 'D = day in − day left',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  grownInRest: {
    id: 'growth-in-rest',
    title: 'Growth while it rested',
    words: 'What stands when the herd goes in, less what stood when the paddock was left or mown.',
    symbols: 'ΔW = W − W₀',
    sources: ['JOUVEN_2006'],
    mark: 'computed',
  },
  massBefore: {
    id: 'mass-before-stay',
    title: 'Grass on hand at entry',
    words:
      'What stood when the paddock was last left or mown, or when the plan begins, and what grew since, day by day, less what died off.',
    symbols: 'W = W₀ + ΔW',
    sources: ['JOUVEN_2006'],
    mark: 'computed',
  },
  massAfter: {
    id: 'mass-after-stay',
    title: 'Grass on hand at exit',
    words:
      'What stood, plus growth during the stay, less what is eaten and trampled. What is eaten is a share of what disappears, by the days of stay.',
    symbols: 'W = W₀ + (growth − F − trampled) ÷ A, never grazed below the residual',
    sources: ['GRAZING_20', 'JOUVEN_2006'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** What is read first of a move: dates and heights, opened to their reasons. */
export interface MoveHeads {
  readonly date: Quantity;
  readonly days: NumberQuantity;
  readonly heightBefore: NumberQuantity;
  readonly heightAfter: NumberQuantity;
  readonly rest?: NumberQuantity;
}

export function moveHeads(plan: PasturePlan, move: Move): MoveHeads {
  const paddock = paddockOf(plan, move);
  const { restDays } = move;
  const condition = restIf(plan, move);
  return {
    date: dateOfMove(plan, paddock, move),
    days: quantity(
      'Days of stay',
      move.days,
      'day',
      moveFormulas.days,
      [
        input('Longest stay in one strip', move.longestDays, 'day', 'n_max'),
        input('Strips', move.strips, 'count'),
        input('Why they leave', END_WORDS[move.end], 'text'),
        input('Last day there', move.to, 'date'),
        input('Exit height', move.exitHeightCm, 'cm'),
        input('Residual', paddock.residualHeightCm, 'cm', 'h_res'),
      ],
      { rows: [plan.order] },
    ),
    heightBefore: heightOf(plan, paddock, {
      label: move.start === 'out-already' ? 'Height now' : 'Entry height',
      heightCm: move.entryHeightCm,
      mass: standingBefore(plan, paddock, move),
    }),
    heightAfter: heightOf(plan, paddock, {
      label: 'Exit height',
      heightCm: move.exitHeightCm,
      mass: standingAfter(plan, paddock, move),
    }),
    ...(restDays === undefined
      ? {}
      : {
          rest: quantity(
            condition === undefined ? 'Rest before' : `Rest before, ${condition}`,
            restDays,
            'day',
            moveFormulas.rest,
            [
              input(
                condition === undefined ? 'Left or mown before' : 'If they leave on',
                addDays(move.from, -restDays),
                'date',
              ),
              input('In on', move.from, 'date'),
              input('Shortest rest of the kind', move.restAskedDays, 'day'),
            ],
            { rows: [plan.order] },
          ),
        }),
  };
}

/** Every number of one move, opened to where it comes from. */
export const moveQuantities = (plan: PasturePlan, move: Move): Quantity[] => [
  ...Object.values<Quantity>({ ...moveHeads(plan, move) }),
  ...moveDetails(plan, move),
];

/** The numbers of one move that stand behind its dates and heights. */
export function moveDetails(plan: PasturePlan, move: Move): NumberQuantity[] {
  const paddock = paddockOf(plan, move);
  const areaM2 = paddock.area.value;
  return [
    standingBefore(plan, paddock, move),
    standingAfter(plan, paddock, move),
    digestibleOf(plan, move),
    quantity(
      'Animal days',
      perHectare(move.head * move.days, areaM2),
      'perHa',
      sizingFormulas.animalDays,
      [input('Head', move.head, 'count'), input('Days', move.days, 'day'), from(paddock.area, 'A')],
      { rows: [plan.order] },
    ),
    quantity(
      'Stocking density',
      perHectare(move.liveKg, areaM2),
      'kgPerHa',
      sizingFormulas.stockDensity,
      [input('Live weight', move.liveKg, 'kg'), from(paddock.area, 'A')],
      { rows: [plan.order, plan.stocking.stockingRate] },
    ),
    ...(move.hayKg <= 0
      ? []
      : [
          quantity(
            'Hay fed too, dry matter',
            move.hayKg,
            'kg',
            seasonFeedFormulas.short,
            [
              input('Need of the stay', move.eatenKg + move.hayKg, 'kg', 'need'),
              input('Eaten of grass', move.eatenKg, 'kg', 'eaten'),
            ],
            { rows: [plan.order] },
          ),
        ]),
    ...(move.grownInRestKgPerHa === undefined
      ? []
      : [
          quantity(
            'Growth while it rested',
            move.grownInRestKgPerHa,
            'kgPerHa',
            moveFormulas.grownInRest,
            [
              input('Grass before', move.massBefore, 'kgPerHa', 'W'),
              input('Grass when left', move.massBefore - move.grownInRestKgPerHa, 'kgPerHa', 'W₀'),
              input('Rest', move.restDays!, 'day'),
            ],
            { rows: [plan.order] },
          ),
        ]),
  ];
}

/**
 * On what its rest depends that has not begun: a herd stands there when the plan begins, though there
 * is nothing to graze. Undefined where none does.
 */
export function restIf(
  { nothingToGraze = [], from: begins, today }: PasturePlan,
  { paddockId, from: inOn, restDays }: Move,
): string | undefined {
  const isThere =
    restDays !== undefined &&
    addDays(inOn, -restDays) === begins &&
    nothingToGraze.some((bare) => bare.paddockId === paddockId);
  if (!isThere) return undefined;
  return begins <= today ? 'if they leave it today' : 'if they are out of it as the season begins';
}

/** How well what stands there feeds, when the herd goes in. */
const digestibleOf = (plan: PasturePlan, move: Move): NumberQuantity =>
  quantity(
    'Digestible at entry',
    move.digestibleShare,
    'share',
    swardFormulas.digestible,
    [
      input('Grass before', move.massBefore, 'kgPerHa'),
      input('Dead leaf and stem in it', move.deadShare, 'share'),
    ],
    { rows: [plan.order] },
  );

const paddockOf = (plan: PasturePlan, move: Move): PaddockPart =>
  plan.paddocks.find((each) => each.id === move.paddockId)!;

function dateOfMove(plan: PasturePlan, paddock: PaddockPart, move: Move): Quantity {
  return datedFact(
    'In on',
    move.from,
    moveFormulas.date,
    [
      input('Why then', START_WORDS[move.start], 'text'),
      ...(move.endBefore && move.start === 'next'
        ? [input('Why they left the paddock before', END_WORDS[move.endBefore], 'text')]
        : []),
      input('Paddock', paddock.name, 'text'),
      input('Why this one', ENTRY_WORDS[move.entry], 'text'),
      input('Height then', move.entryHeightCm, 'cm', 'h'),
      input('Ready from', paddock.readyFromCm, 'cm'),
      input('Ready height', paddock.readyHeightCm, 'cm', 'h_in'),
      ...(move.restDays === undefined ? [] : [input('Rest', move.restDays, 'day')]),
      input('Shortest rest of the kind', move.restAskedDays, 'day'),
    ],
    { rows: [plan.order] },
  );
}

function heightOf(
  plan: PasturePlan,
  paddock: PaddockPart,
  { label, heightCm, mass }: { label: string; heightCm: number; mass: NumberQuantity },
): NumberQuantity {
  return quantity(
    label,
    heightCm,
    'cm',
    forageMassFormulas.height,
    [
      from(mass, 'W'),
      from(paddock.perCm, 'm'),
      input('Ready height', paddock.readyHeightCm, 'cm', 'h_in'),
      input('Residual', paddock.residualHeightCm, 'cm', 'h_res'),
    ],
    { rows: [plan.order], spread: heightSpread(mass.value, paddock.perCm.spread) },
  );
}

function standingBefore(plan: PasturePlan, paddock: PaddockPart, move: Move): NumberQuantity {
  const isFirst = move.grownInRestKgPerHa === undefined;
  const grown = move.grownInRestKgPerHa ?? move.massBefore - paddock.mass.value;
  return quantity(
    'Grass before',
    move.massBefore,
    'kgPerHa',
    moveFormulas.massBefore,
    [
      input(
        isFirst ? 'Stood when the plan begins' : 'Stood when left or mown',
        move.massBefore - grown,
        'kgPerHa',
        'W₀',
      ),
      input('Grown since, less what died off', grown, 'kgPerHa', 'ΔW'),
      isFirst
        ? input('Plan begins', plan.from, 'date')
        : input('Days since', move.restDays!, 'day'),
      from(paddock.growthFactor, 'f_paddocks'),
    ],
    { rows: [plan.order] },
  );
}

function standingAfter(plan: PasturePlan, paddock: PaddockPart, move: Move): NumberQuantity {
  return quantity(
    'Grass after',
    move.massAfter,
    'kgPerHa',
    moveFormulas.massAfter,
    [
      input('Grass before', move.massBefore, 'kgPerHa', 'W₀'),
      input('Grown during the stay', move.grownKg, 'kg', 'growth'),
      input('Eaten', move.eatenKg, 'kg', 'F'),
      input('Trampled and refused', move.trampledKg, 'kg', 'trampled'),
      input('Area', paddock.area.value, 'ha', 'A'),
      input('Residual', paddock.residualKgPerHa, 'kgPerHa', 'W_res'),
    ],
    { rows: [plan.order] },
  );
}
