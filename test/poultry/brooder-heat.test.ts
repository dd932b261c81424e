import { describe, expect, it } from '@jest/globals';
import {
  birdSensibleHeatW,
  conductionWPerK,
  totalResistanceM2KPerW,
  ventilationWPerK,
} from '../../shared/poultry/brooder-heat.js';
import { rowById } from '../../shared/tables/tables.js';
import { L_PER_US_GAL, R_SI_PER_R_IP } from '../../shared/units/convert.js';
import { inToMm, M3_H_PER_CFM, W_PER_BTU_H } from '../support/conversions.js';
import { tables } from '../support/factories.js';

const { films, propane } = tables.heat;
const noFilms = { ...films, insideM2KPerW: 0, outsideM2KPerW: 0 };
const M_PER_FT = 0.3048;
/** BTU/(h·°F) for each W/K. */
const BTU_H_F_PER_W_K = 1 / W_PER_BTU_H / 1.8;
const ofRUnits = (r: number) => ({ rM2KPerW: r * R_SI_PER_R_IP });

describe('totalResistanceM2KPerW', () => {
  it('makes straw bale about R 1.45 an inch (from memory)', () => {
    const layers = [{ materialId: 'straw', thicknessMm: inToMm(1) }];
    const r = totalResistanceM2KPerW({ layers }, tables.materials, noFilms) / R_SI_PER_R_IP;
    expect(Math.abs(r - 1.45)).toBeLessThanOrEqual(0.01);
  });
});

describe('conductionWPerK', () => {
  // A hut of 8 × 12 × 7 ft, floor left out, 75 °F inside and 25 °F outside, 100 chicks of 40 g.
  // Not published: worked out by hand by the compiler of the reference values.
  const hut = { lengthM: 12 * M_PER_FT, widthM: 8 * M_PER_FT, heightM: 7 * M_PER_FT };
  const differenceK = 50 / 1.8;
  const hutWPerK = (r: number): number =>
    conductionWPerK({ ...hut, walls: ofRUnits(r), roof: ofRUnits(r) }, tables.materials, films);

  it('comes to the same from layers of plywood and polystyrene within 0.5 %', () => {
    const layers = [
      { materialId: 'plywood', thicknessMm: inToMm(0.5) },
      { materialId: 'xps', thicknessMm: inToMm(1.5) },
    ];
    const wPerK = conductionWPerK(
      { ...hut, walls: { layers }, roof: { layers } },
      tables.materials,
      films,
    );
    expect(Math.abs((wPerK * BTU_H_F_PER_W_K) / 41.92 - 1)).toBeLessThan(0.005);
  });

  it('needs 706.1 W in the insulated hut, 0.625 gal of propane a day (worked by hand, not published)', () => {
    const airWPerK = ventilationWPerK(7.5 * M3_H_PER_CFM, 0); // 75 cfm for 1000 chicks
    const birdsW = 100 * birdSensibleHeatW(tables.heat.birds, 0.04, 30).mid; // bracket from memory
    expect(Math.abs(airWPerK * differenceK - 118.7)).toBeLessThan(0.5); // by 1.08 BTU/h·cfm·°F
    expect(Math.abs(birdsW - 26.9)).toBeLessThan(0.1);
    const needW = (hutWPerK(8.12) + airWPerK) * differenceK - birdsW;
    expect(Math.abs(needW - 706.1)).toBeLessThan(1);
    const kWh = (needW * 24) / 1000;
    expect(Math.abs(kWh - 16.95)).toBeLessThan(0.03);
    expect(Math.abs((kWh * 3.6) / propane.MJPerL / L_PER_US_GAL - 0.625)).toBeLessThan(0.002);
  });

  it('knows every material of a wall by its id', () => {
    expect(rowById(tables.materials, 'plywood').rM2KPerWPerM).toBeGreaterThan(8);
    expect(() => rowById(tables.materials, 'gold')).toThrow('No table row "gold"');
  });
});
