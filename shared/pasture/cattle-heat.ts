import type { Formula } from '../explain/formula.js';

export const cattleHeatFormulas = {
  thi: {
    id: 'temperature-humidity-index',
    title: 'Heat stress (temperature-humidity index)',
    words: 'Air temperature in °C and relative humidity as a share. From 72 cattle feel the heat.',
    symbols: 'THI = 0.8·T + RH·(T − 14.4) + 46.4',
    sources: ['GRAZING_123'],
    mark: 'published',
  },
} satisfies Record<string, Formula>;

/** Temperature-humidity index of cattle. Air from 15 to 45 °C, humidity as a share from 0 to 1. */
export const temperatureHumidityIndex = (airC: number, humidityShare: number): number =>
  0.8 * airC + humidityShare * (airC - 14.4) + 46.4;
