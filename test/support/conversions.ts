import {
  CM_PER_IN,
  J_PER_BTU,
  KG_PER_LB,
  L_PER_FT3,
  M2_PER_FT2,
} from '../../shared/units/convert.js';

/** Conversions in which published figures are stated, and which the program itself never does. */
export const W_PER_BTU_H = J_PER_BTU / 3600;
/** m³/h for one cubic foot a minute. */
export const M3_H_PER_CFM = (L_PER_FT3 / 1000) * 60;

export const lbToKg = (lb: number): number => lb * KG_PER_LB;
export const kgToLb = (kg: number): number => kg / KG_PER_LB;
export const ft2ToM2 = (ft2: number): number => ft2 * M2_PER_FT2;
export const m2ToFt2 = (m2: number): number => m2 / M2_PER_FT2;
export const inToMm = (inches: number): number => inches * CM_PER_IN * 10;
