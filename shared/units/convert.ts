/**
 * Exact and conventional factors between US customary and SI units.
 *
 * Source: NIST Special Publication 811 (2008), appendix B; the pound, foot and US gallon are exact
 * by definition.
 */
export const KG_PER_LB = 0.45359237;
export const M_PER_FT = 0.3048;
export const CM_PER_IN = 2.54;
export const M2_PER_FT2 = M_PER_FT * M_PER_FT;
export const L_PER_US_GAL = 3.785411784;
export const L_PER_FT3 = 28.316846592;
export const J_PER_BTU = 1055.05585262;
export const HA_PER_ACRE = 0.40468564224;
/** m²·K/W per ft²·h·°F/BTU. */
export const R_SI_PER_R_IP = M2_PER_FT2 * (3600 / J_PER_BTU) * (5 / 9);

export const fToC = (f: number): number => ((f - 32) * 5) / 9;
export const cToF = (c: number): number => (c * 9) / 5 + 32;
