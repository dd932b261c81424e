import type { Formula } from '../explain/formula.js';

export const forageEnergyFormulas = {
  energy: {
    id: 'forage-energy',
    title: 'Energy of the grass',
    words:
      'Of the organic matter nine tenths of the dry matter is, the digestible part gives 0.16 MJ of metabolizable energy a percent; of that a beef animal’s upkeep gets the net energy by a curve, and gain, which is harder, less.',
    symbols: 'ME = 0.16·90·d, NEm = 1.37·ME − 0.138·ME² + 0.0105·ME³ − 1.12 (Mcal/kg)',
    sources: ['FEEDING_TABLES', 'NRC_BEEF_1996'],
    mark: 'from-memory',
  },
} satisfies Record<string, Formula>;

const MJ_PER_MCAL = 4.184;
/** Organic matter of grass with a tenth of ash. */
const ORGANIC_SHARE = 0.9;

/**
 * Metabolizable energy of a forage, Mcal a kg of dry matter, from memory (feeding tables).
 *
 * @param digestibleShare of its organic matter, 0.35 to 0.9
 * @example metabolizableMcalPerKg(0.75) // => 2.58, as printed: 10.8 MJ
 */
export const metabolizableMcalPerKg = (digestibleShare: number): number =>
  (0.16 * 100 * ORGANIC_SHARE * digestibleShare) / MJ_PER_MCAL;

/** Net energy for upkeep of beef cattle, Mcal/kg. NRC 1996, from memory. */
export const upkeepMcalPerKg = (me: number): number =>
  1.37 * me - 0.138 * me * me + 0.0105 * me * me * me - 1.12;

/**
 * Share by which a forage feeds less than as much hay does; 0 where it is as good or better.
 *
 * @param hayMcalPerKg net energy of the hay for upkeep
 */
export const shortOfHay = (digestibleShare: number, hayMcalPerKg: number): number =>
  Math.max(0, 1 - upkeepMcalPerKg(metabolizableMcalPerKg(digestibleShare)) / hayMcalPerKg);

/** Net energy for gain of beef cattle, Mcal/kg. NRC 1996, from memory. */
export const gainMcalPerKg = (me: number): number =>
  1.42 * me - 0.174 * me * me + 0.0122 * me * me * me - 1.65;

/** Net energy for milk of dairy cows, Mcal/kg. NRC 2001, from memory. */
export const milkMcalPerKg = (me: number): number => 0.703 * me - 0.19;

/**
 * Share of their full appetite that cattle eat of a forage: less where it is harder to digest.
 * Freer, Moore and Donnelly 1997, from memory.
 */
export const eatenShare = (digestibleShare: number): number =>
  Math.min(1, 1 - 1.7 * (0.8 - digestibleShare));
