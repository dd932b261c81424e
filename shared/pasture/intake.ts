import type { Formula } from '../explain/formula.js';
import type { CattleClass, IntakeEquation } from '../tables/pasture-tables.js';

export const intakeFormulas = {
  cow: {
    id: 'intake-beef-cow',
    title: 'Dry matter a beef cow eats in a day',
    words:
      'Grows with metabolic weight and with the energy of the forage, plus a fifth of a kilogram for each kilogram of milk.',
    symbols: 'DMI = SBW^0.75·(0.04997·NE² + 0.0384 or 0.04631) ÷ NE + 0.2·milk',
    sources: ['NRC_BEEF_1996'],
    mark: 'from-memory',
  },
  growing: {
    id: 'intake-growing-cattle',
    title: 'Dry matter growing cattle eat in a day',
    words: 'By metabolic weight and the energy of the forage; yearlings eat a little more.',
    symbols: 'DMI = SBW^0.75·(0.2435·NE − 0.0466·NE² − 0.1128 or 0.0869) ÷ NE',
    sources: ['NRC_BEEF_1996'],
    mark: 'from-memory',
  },
  dairy: {
    id: 'intake-milk-cow',
    title: 'Dry matter a milk cow eats in a day',
    words:
      'By fat-corrected milk and metabolic weight, less in the first weeks after calving. Grain counts as part of it.',
    symbols: 'DMI = (0.372·FCM + 0.0968·BW^0.75)·(1 − e^(−0.192·(week + 3.67)))',
    sources: ['NRC_DAIRY_2001'],
    mark: 'from-memory',
  },
  share: {
    id: 'intake-share-of-weight',
    title: 'Dry matter as a share of body weight',
    words: 'Body weight times the usual share for that class.',
    symbols: 'DMI = s·BW',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  demand: {
    id: 'herd-demand',
    title: 'Dry matter the herd needs in a day',
    words: 'Dry matter of one animal times the head of its class, over the classes of the herd.',
    symbols: 'F = Σ head·DMI',
    sources: ['NRC_BEEF_1996', 'NRC_DAIRY_2001'],
    mark: 'from-memory',
  },
  animalUnits: {
    id: 'animal-units',
    title: 'Animal units',
    words: 'One unit is 1,000 lb (454 kg) of live weight.',
    symbols: 'AU = Σ head·BW ÷ 454 kg',
    sources: ['GRAZING_5'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/** Shrunk body weight over full weight. NRC 1996, from memory. */
export const SHRUNK = 0.96;

/**
 * Dry matter of a beef cow, kg a day: open, in the first third of pregnancy or in milk; or in the
 * last two thirds.
 *
 * Range: 350 to 800 kg, forage of 0.9 to 1.8 Mcal NEm/kg. NRC 1996, from memory.
 */
export function beefCowIntakeKg(cow: {
  shrunkKg: number;
  energyMcalPerKg: number;
  milkKg: number;
  isLatePregnant: boolean;
}): number {
  const ne = cow.energyMcalPerKg;
  const base = cow.isLatePregnant ? 0.04631 : 0.0384;
  return (cow.shrunkKg ** 0.75 * (0.04997 * ne * ne + base)) / ne + 0.2 * cow.milkKg;
}

/** Dry matter of a growing calf or yearling, kg a day. NRC 1996, from memory. */
export function growingIntakeKg(animal: {
  shrunkKg: number;
  energyMcalPerKg: number;
  isYearling: boolean;
}): number {
  const ne = animal.energyMcalPerKg;
  const off = animal.isYearling ? 0.0869 : 0.1128;
  const intakeMcal = animal.shrunkKg ** 0.75 * (0.2435 * ne - 0.0466 * ne * ne - off);
  return intakeMcal / Math.max(ne, 0.95);
}

/** Milk corrected to 4 % fat, kg a day. NRC 2001, from memory. */
export const fatCorrectedMilkKg = (milkKg: number, fatPercent: number): number =>
  0.4 * milkKg + 15 * milkKg * (fatPercent / 100);

/** Dry matter of a milk cow, kg a day, at a week of lactation. NRC 2001, from memory. */
export const dairyIntakeKg = (cow: {
  weightKg: number;
  milkKg: number;
  fatPercent: number;
  weekOfLactation: number;
}): number =>
  (0.372 * fatCorrectedMilkKg(cow.milkKg, cow.fatPercent) + 0.0968 * cow.weightKg ** 0.75) *
  (1 - Math.exp(-0.192 * (cow.weekOfLactation + 3.67)));

export interface AnimalDay {
  readonly weightKg: number;
  readonly milkKg: number;
  readonly energyMcalPerKg: number;
  readonly weekOfLactation: number;
}

/** Dry matter of one animal of a class on a day, kg, by the class's equation. */
export function intakeKg(of: CattleClass, day: AnimalDay): number {
  const { energyMcalPerKg, milkKg, weightKg } = day;
  const shrunkKg = SHRUNK * weightKg;
  switch (of.equation) {
    case 'nrc-cow-lactating':
      return beefCowIntakeKg({ shrunkKg, energyMcalPerKg, milkKg, isLatePregnant: false });
    case 'nrc-cow-pregnant':
      return beefCowIntakeKg({ shrunkKg, energyMcalPerKg, milkKg: 0, isLatePregnant: true });
    case 'nrc-calf':
      return growingIntakeKg({ shrunkKg, energyMcalPerKg, isYearling: false });
    case 'nrc-yearling':
      return growingIntakeKg({ shrunkKg, energyMcalPerKg, isYearling: true });
    case 'nrc-dairy':
      return dairyIntakeKg({
        weightKg,
        milkKg,
        fatPercent: of.milkFatPercent ?? 4,
        weekOfLactation: day.weekOfLactation,
      });
    case 'share':
      return of.bodyWeightShare.value * weightKg;
  }
}

export const formulaOfEquation = (equation: IntakeEquation): Formula => {
  if (equation === 'share') return intakeFormulas.share;
  if (equation === 'nrc-dairy') return intakeFormulas.dairy;
  return equation.startsWith('nrc-cow') ? intakeFormulas.cow : intakeFormulas.growing;
};

/** Animal units by live weight: 1 for every 1,000 lb. */
export const animalUnits = (perKgLive: number, weightKg: number): number => perKgLive * weightKg;
