import { describe, expect, it } from '@jest/globals';
import type { HeatSourceKind } from '../../shared/farm/facility.js';
import { newBrooder, newRequest } from '../support/factories.js';
import { plannedBatch } from '../support/pictures.js';

function textsOf(kind: HeatSourceKind): string {
  const { heat } = newBrooder();
  const facilities = [newBrooder({ heat: { ...heat, kind } })];
  const batch = { brooderId: 'brooder' };
  const { tasks } = plannedBatch(newRequest({ facilities, batch })).tasks;
  return tasks
    .flatMap(({ name, ifLate, needs = '', waitsFor }) => [name, ifLate, needs, ...waitsFor])
    .join('\n');
}

describe('tasks of the brooder', () => {
  it('speak of lamps where lamps hang', () => {
    expect(textsOf('lamp')).toMatch(/hang the lamps by chain/);
    expect(textsOf('lamp')).toMatch(/restore lamp clearance/);
    expect(textsOf('lamp')).not.toMatch(/gas heater|heat plate/);
  });

  it('speak of plates where plates stand', () => {
    expect(textsOf('plate')).toMatch(/set up the heat plates/);
    expect(textsOf('plate')).toMatch(/power on/);
    expect(textsOf('plate')).not.toMatch(/\blamps?\b/i);
  });

  it('speak of gas heaters and their bottle where gas heats', () => {
    expect(textsOf('gas')).toMatch(/hang the gas heaters by chain/);
    expect(textsOf('gas')).toMatch(/gas on, a full bottle/);
    expect(textsOf('gas')).not.toMatch(/\blamps?\b|power on/i);
  });
});
