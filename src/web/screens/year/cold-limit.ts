import type { HalfMonth } from '../../../../shared/plan/year/year-weather.js';
import { formatValue, type Reader } from '../../../../shared/units/format.js';

/** The low below which nights are counted as cold: what birds just out of the brooder stand. */
export function sayColdLimit(halves: readonly HalfMonth[], reader: Reader): string {
  const limit = halves[0]?.of.inputs.find(({ symbol }) => symbol === 'T_rule');
  return limit ? `below ${formatValue(limit.value, limit.unit, reader)}` : 'too cold';
}
