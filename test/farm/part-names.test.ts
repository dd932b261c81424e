import { describe, expect, it } from '@jest/globals';
import { partNames } from '../../shared/farm/part-names.js';

describe('partNames', () => {
  it('number the parts of a whole', () => {
    expect(partNames('Meadow', [], 3)).toEqual(['Meadow 1', 'Meadow 2', 'Meadow 3']);
  });

  it('go on with the next free number where a part is cut again', () => {
    const others = ['Meadow 2', 'Meadow 3'];
    expect(partNames('Meadow 1', others, 2)).toEqual(['Meadow 1', 'Meadow 4']);
    expect(partNames('Meadow 3', ['Meadow 1', 'Meadow 2', 'Meadow 4'], 3)).toEqual([
      'Meadow 3',
      'Meadow 5',
      'Meadow 6',
    ]);
  });

  it('leave out what another paddock is called', () => {
    expect(partNames('Meadow', ['Meadow 1'], 2)).toEqual(['Meadow 2', 'Meadow 3']);
  });

  it('stay as short as a name may be', () => {
    for (const name of partNames('m'.repeat(80), [], 20))
      expect(name.length).toBeLessThanOrEqual(80);
  });
});
