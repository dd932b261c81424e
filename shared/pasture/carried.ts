import type { Formula } from '../explain/formula.js';
import type { CattleClass } from '../tables/pasture-tables.js';
import {
  eatenShare,
  gainMcalPerKg,
  metabolizableMcalPerKg,
  milkMcalPerKg,
  upkeepMcalPerKg,
} from './forage-energy.js';
import { intakeKg, SHRUNK } from './intake.js';

export const carriedFormulas = {
  milk: {
    id: 'milk-carried',
    title: 'Milk that the grass carries',
    words:
      'What a cow eats of such grass, the best parts of it first, times its energy, less her upkeep with walking and grazing; what is left makes milk. That cattle choose so was found with six kinds of grass; that they do to the end is a planning rule. Cows of good condition milk on beyond it for some weeks, off their backs.',
    symbols: 'M = (DMI·NE − upkeep) ÷ energy of a kilogram of milk',
    sources: ['NRC_BEEF_1996', 'NRC_DAIRY_2001', 'FEEDING_TABLES', 'SELECTION_1954'],
    mark: 'from-memory',
  },
  offBack: {
    id: 'milk-off-the-back',
    title: 'Weight that a cow gives for milk',
    words:
      'What the grass does not carry of her milk a beef cow makes from her own fat, as far as she has any: in a trial of two years cows on tall fescue that was let go to seed milked as much as others on clipped pasture, and ended it 18 kg lighter. A kilogram off her back gives 5.82 Mcal, of which four fifths become milk.',
    symbols: 'ΔW = (M_wanted − M)·0.72 ÷ (0.8·5.82)',
    sources: ['FESCUE_COWS_1979', 'NRC_BEEF_1996'],
    mark: 'from-memory',
  },
  gain: {
    id: 'gain-carried',
    title: 'Gain that the grass carries',
    words:
      'What growing cattle eat of such grass, the best parts of it first; what their upkeep with walking and grazing leaves of it goes to gain.',
    symbols: 'G = 13.91·RE^0.9116·EQSBW^−0.6837, RE = (DMI − upkeep ÷ NEm)·NEg',
    sources: ['NRC_BEEF_1996', 'FEEDING_TABLES', 'SELECTION_1954'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

/** Upkeep of a grazing animal over one in a pen: from memory, 10 to 20 % on good pasture. */
const GRAZING = 1.15;
/** Upkeep of a beef cow in milk over a dry one. NRC 1996, from memory. */
const IN_MILK = 1.2;
/** Energy of milk of beef cows, Mcal/kg. NRC 1996, from memory. */
const BEEF_MILK = 0.72;
/** Net energy for milk of grain, Mcal a kg of dry matter: from memory. */
const GRAIN_MCAL_PER_KG = 1.85;
/** A digestible share at which a milk cow eats what the equation says. */
const GOOD_GRASS = 0.75;
/** Weight of a grown animal that the equation for gain is scaled to, and of a medium frame, kg. */
const STANDARD_KG = 478;
const GROWN_KG = 523;

/** Energy of a kilogram of a cow's own weight, Mcal, and the share that becomes milk: from memory. */
const BACK_MCAL_PER_KG = 5.82;
const BACK_TO_MILK = 0.8;

/** Weight that a beef cow gives to make milk which the grass does not carry, kg a day. */
export const offBackKg = (milkShortKg: number): number =>
  (Math.max(0, milkShortKg) * BEEF_MILK) / (BACK_TO_MILK * BACK_MCAL_PER_KG);

/** One animal, and what it eats on a day. */
export interface Grazing {
  readonly weightKg: number;
  readonly milkKg: number;
  readonly weekOfLactation: number;
  readonly digestibleShare: number;
  /** Grain of a milk cow, and what it takes off the grass she eats, kg a day. */
  readonly grainKg: number;
  readonly grainSparesKg: number;
}

/** What the grass carries of a class: milk or gain, kg a day; undefined where it asks for neither. */
export function carriedKg(
  of: CattleClass,
  day: Grazing,
): { readonly what: 'milk' | 'gain'; readonly kg: number } | undefined {
  const me = metabolizableMcalPerKg(day.digestibleShare);
  const energyMcalPerKg = upkeepMcalPerKg(me);
  const shrunkKg = SHRUNK * day.weightKg;
  const eatenKg = intakeKg(of, { ...day, energyMcalPerKg });
  switch (of.equation) {
    case 'nrc-cow-lactating': {
      const upkeep = 0.077 * shrunkKg ** 0.75 * IN_MILK * GRAZING;
      return { what: 'milk', kg: Math.max(0, (eatenKg * energyMcalPerKg - upkeep) / BEEF_MILK) };
    }
    case 'nrc-dairy': {
      const appetite = Math.min(1, eatenShare(day.digestibleShare) / eatenShare(GOOD_GRASS));
      const upkeep = 0.08 * day.weightKg ** 0.75 * GRAZING;
      const inMilk = 0.36 + 0.0969 * (of.milkFatPercent ?? 4);
      const grass = Math.max(0, appetite * eatenKg - day.grainSparesKg) * milkMcalPerKg(me);
      const energy = grass + day.grainKg * GRAIN_MCAL_PER_KG;
      return { what: 'milk', kg: Math.max(0, (energy - upkeep) / inMilk) };
    }
    case 'nrc-calf':
    case 'nrc-yearling': {
      const upkeepKg = (0.077 * shrunkKg ** 0.75 * GRAZING) / energyMcalPerKg;
      const retained = Math.max(0, eatenKg - upkeepKg) * Math.max(0, gainMcalPerKg(me));
      const standardKg = (shrunkKg * STANDARD_KG) / GROWN_KG;
      return { what: 'gain', kg: 13.91 * retained ** 0.9116 * standardKg ** -0.6837 };
    }
    default:
      return undefined;
  }
}
