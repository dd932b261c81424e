import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { airRiseK, boxLossW, brooderBox, openTopWPerK } from '../../shared/poultry/brooder-box.js';
import { newBrooder, tables } from '../support/factories.js';

const { openTop } = tables.heat;

// The box of the reference, worked by its compiler and not published: floor 1.0 × 0.6 m, walls
// 0.45 m of 10 mm plywood, in a room of 18 °C, 5 W/K of fresh air, 6 W of 25 chicks.
const wall = { layers: [{ materialId: 'plywood', thicknessMm: 10 }] };
const small = newBrooder({ lengthM: 1, widthM: 0.6, heightM: 0.45, walls: wall, roof: wall });
const boxOf = (isOpen: boolean) => brooderBox(small, { share: 1, isOpen }, tables);
const riseK = (isOpen: boolean, lampW: number): number =>
  airRiseK(openTop, boxOf(isOpen), 5, { watts: lampW + 6, warmed: 'a-part' });

describe('an open top', () => {
  it('loses 9.5 W/m²K at 15 °C, 9.9 at 20 °C over a floor that is warm in part', () => {
    expect(openTopWPerK(openTop, 1, 15)).toBeCloseTo(9.5, 1);
    expect(openTopWPerK(openTop, 1, 20)).toBeCloseTo(9.9, 1);
  });

  it('exchanges 0.011 m³/s, 200 W, through 0.6 × 0.6 m when all air is 15 °C warmer', () => {
    const radiationW = 0.36 * openTop.radiationWPerM2K * 15;
    const watts = 15 * openTopWPerK(openTop, 0.36, 15, 'all-air') - radiationW;
    expect(Math.abs(watts / 200 - 1)).toBeLessThan(0.05); // 0.011 is printed with two digits
  });

  it('is no lid of no thickness: a brooder without a lid is open whatever is asked', () => {
    const { roof: _lid, ...without } = small;
    expect(brooderBox(without, { share: 1, isOpen: false }, tables)).toEqual(boxOf(true));
    expect(boxOf(false).openTopM2).toBe(0);
  });
});

describe('airRiseK', () => {
  it.each([
    ['an open box with 250 W', true, 250, 15.9],
    ['an open box with 100 W', true, 100, 6.6],
    ['a plywood lid with 250 W', false, 250, 20.7],
  ])('lifts %s as the worked box has it', (_, isOpen, watts, expected) => {
    // The worked box rounds its wall to U 3.3; two still films and plywood of 10 mm make 3.1.
    expect(Math.abs(riseK(isOpen, watts) / expected - 1)).toBeLessThan(0.1);
  });

  it('is what the loss was for: the way back of boxLossW', () => {
    const anyBox = fc.record({
      shellWPerK: fc.double({ min: 0.5, max: 200, noNaN: true }),
      openTopM2: fc.constantFrom(0, 0.3, 2, 12),
    });
    fc.assert(
      fc.property(anyBox, fc.double({ min: 0.5, max: 40, noNaN: true }), (box, deltaK) => {
        const watts = boxLossW(openTop, box, 3, deltaK);
        const back = airRiseK(openTop, box, 3, { watts, warmed: 'a-part' });
        expect(Math.abs(back - deltaK)).toBeLessThan(0.01);
      }),
    );
  });
});

describe('a part of a brooder', () => {
  it('has less of everything but the ends', () => {
    const half = brooderBox(small, { share: 0.5, isOpen: false }, tables).shellWPerK;
    const whole = boxOf(false).shellWPerK;
    expect(half).toBeLessThan(whole);
    expect(half).toBeGreaterThan(whole / 2);
  });
});
