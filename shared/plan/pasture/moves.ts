import type { Formula } from '../../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../../explain/quantity.js';
import { regrowthFormulas } from '../../pasture/regrowth.js';
import { perHectare, sizingFormulas } from '../../pasture/sizing.js';
import type { StayRecord } from '../../pasture/season-books.js';
import type { PastureContext } from './pasture-context.js';
import type { PasturePlan } from './pasture-plan.js';

export const moveFormulas = {
  massBefore: {
    id: 'mass-before-stay',
    title: 'Standing when the herd goes in',
    words: 'The last height read or left, grown on day by day to the morning of the move.',
    symbols: 'W(t) = K ÷ (1 + (K ÷ W₀ − 1)·e^(−Σr))',
    sources: ['LOGISTIC'],
    mark: 'from-memory',
  },
  massAfter: {
    id: 'mass-after-stay',
    title: 'Standing when the herd leaves',
    words:
      'What stood, plus growth during the stay, less what is eaten and trampled. What is eaten is a share of what disappears, by the days of stay.',
    symbols: 'W = W₀ + growth − F ÷ (u·A), never below the residual',
    sources: ['GRAZING_20', 'LOGISTIC'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** A dated move: a herd goes into a paddock and stays some days. */
export interface Move {
  readonly herdId: string;
  readonly paddockId: string;
  readonly from: string;
  readonly to: string;
  readonly days: number;
  readonly massBefore: number;
  readonly massAfter: number;
  readonly heightBeforeCm: number;
  readonly heightAfterCm: number;
  readonly restDays?: number;
  readonly grownInRestKgPerHa?: number;
  readonly eatenKg: number;
  readonly trampledKg: number;
  readonly hayKg: number;
  readonly liveKg: number;
  readonly head: number;
  readonly isEarly: boolean;
  readonly isRank: boolean;
}

export function moveOf(context: PastureContext, stay: StayRecord): Move {
  const { paddocks, herds, grass, herdDays, dateOf } = context;
  const { kgPerHaCm } = grass.swards[stay.paddock]!;
  const days = herdDays[stay.herd]!;
  const tidy = (value: number): number => Math.round(value * 10) / 10;
  return {
    herdId: herds[stay.herd]!.id,
    paddockId: paddocks[stay.paddock]!.id,
    from: dateOf(stay.from),
    to: dateOf(stay.from + stay.days - 1),
    days: stay.days,
    massBefore: tidy(stay.massBefore),
    massAfter: tidy(stay.massAfter),
    heightBeforeCm: tidy(stay.massBefore / kgPerHaCm),
    heightAfterCm: tidy(stay.massAfter / kgPerHaCm),
    ...(stay.restDays === undefined ? {} : { restDays: stay.restDays }),
    ...(stay.grownInRestKgPerHa === undefined
      ? {}
      : { grownInRestKgPerHa: tidy(stay.grownInRestKgPerHa) }),
    eatenKg: tidy(stay.eatenKg),
    trampledKg: tidy(stay.trampledKg),
    hayKg: tidy(stay.hayKg),
    liveKg: tidy(days.liveKg[stay.from]!),
    head: days.head[stay.from]!,
    isEarly: stay.isEarly,
    isRank: stay.isRank,
  };
}

/** The numbers of one move, opened to where they come from. */
export function moveQuantities(plan: PasturePlan, move: Move): NumberQuantity[] {
  const paddock = plan.paddocks.find((p) => p.id === move.paddockId)!;
  const areaM2 = paddock.area.value;
  const options = { mark: plan.growthMark };
  return [
    quantity(
      'Standing before',
      move.massBefore,
      'kgPerHa',
      moveFormulas.massBefore,
      [
        input('Height', move.heightBeforeCm, 'cm', 'h'),
        input('Dry matter in a centimetre', paddock.perCm.value, 'kgPerHaCm', 'm'),
        input('Growth of this farm over the table’s', plan.farmFactor.value, 'ratio', 'f_farm'),
      ],
      options,
    ),
    quantity(
      'Standing after',
      move.massAfter,
      'kgPerHa',
      moveFormulas.massAfter,
      [
        input('Standing before', move.massBefore, 'kgPerHa', 'W₀'),
        input('Eaten', move.eatenKg, 'kg', 'F'),
        input('Trampled and refused', move.trampledKg, 'kg'),
        input('Area', areaM2, 'ha', 'A'),
      ],
      options,
    ),
    quantity(
      'Animal days',
      perHectare(move.head * move.days, areaM2),
      'perHa',
      sizingFormulas.animalDays,
      [
        input('Head', move.head, 'count'),
        input('Days', move.days, 'day'),
        input('Area', areaM2, 'ha', 'A'),
      ],
    ),
    quantity(
      'Stocking density',
      perHectare(move.liveKg, areaM2),
      'kgPerHa',
      sizingFormulas.stockDensity,
      [input('Live weight', move.liveKg, 'kg'), input('Area', areaM2, 'ha', 'A')],
    ),
    ...(move.grownInRestKgPerHa === undefined
      ? []
      : [
          quantity(
            'Growth while it rested',
            move.grownInRestKgPerHa,
            'kgPerHa',
            regrowthFormulas.regrowth,
            [
              input('Rest', move.restDays!, 'day'),
              input('Standing before', move.massBefore, 'kgPerHa'),
            ],
            options,
          ),
        ]),
  ];
}
