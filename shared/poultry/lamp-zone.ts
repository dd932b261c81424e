import type { Formula } from '../explain/formula.js';
import type { HeatTable } from '../tables/heat-tables.js';

export const lampZoneFormulas = {
  underLamp: {
    id: 'under-lamp',
    title: 'Temperature at the birds, under a lamp',
    words:
      'A lamp warms what it shines on, not the air: air of the brooder, plus what the lamp’s radiation adds straight below it. 315 W/m² held litter about 8 °C (14 °F) above the air. Beside the beam it is less, and birds choose their place by that.',
    symbols: 'T = T_air + 0.026·E, E = 0.85·P ÷ (Ω·h²), Ω = 2π·(1 − cos 40°)',
    sources: ['UGA_RADIANT_FLUX', 'LAMP_TRADE'],
    mark: 'second-hand',
  },
  underGas: {
    id: 'under-gas-heater',
    title: 'Temperature at the birds, under a gas heater',
    words:
      'A radiant gas brooder or a hover warms the floor below it more than the air, as a lamp does: hung as its maker says, about 315 W/m² fall straight below it while it burns, which held litter about 8 °C (14 °F) above the air; with a thermostat it burns a part of the time. A heater for the air of a room warms its floor little more than its air.',
    symbols: 'T = T_air + d·0.026·E, or T_air + d·ΔT of a heater for the room',
    sources: ['UGA_RADIANT_COVERAGE', 'UGA_RADIANT_FLUX'],
    mark: 'second-hand',
  },
  height: {
    id: 'lamp-height',
    title: 'Height of the lamps above the bedding',
    words:
      'The greatest height at which it is still warm enough under them on the coldest night of the week; never under the least distance to bedding.',
    symbols: 'h = max{h: T_air + 0.026·E(h) ≥ T_h}, h ≥ h_least',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/**
 * Radiant flux straight below a lamp, W/m²: what it radiates, spread over its beam.
 *
 * @param heightM lamp above the birds, above 0
 * @example fluxBelowLampWPerM2(table, 250, 0.61) // => 388
 */
export function fluxBelowLampWPerM2(
  { share, beamHalfAngleDeg }: Pick<HeatTable['radiant'], 'share' | 'beamHalfAngleDeg'>,
  watts: number,
  heightM: number,
): number {
  const steradians = 2 * Math.PI * (1 - Math.cos((beamHalfAngleDeg * Math.PI) / 180));
  return (share * watts) / (steradians * heightM * heightM);
}

/** How much warmer than the air it is for a bird straight below a lamp, K. */
export const riseBelowLampK = (
  radiant: Pick<HeatTable['radiant'], 'share' | 'beamHalfAngleDeg' | 'riseKPerWPerM2'>,
  watts: number,
  heightM: number,
): number => radiant.riseKPerWPerM2 * fluxBelowLampWPerM2(radiant, watts, heightM);
