import { plainFormulas } from '../explain/plain-formulas.js';
import { fromFarm, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { facilityOf, type Brooder } from '../farm/facility.js';
import { brooderHeatFormulas, continuousCapacityW } from '../poultry/brooder-heat.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { found, type Found } from './found.js';

export interface CircuitPart {
  readonly name: string;
  readonly capacity: NumberQuantity;
  readonly load: NumberQuantity;
  readonly carries: boolean;
}

/** Whether the brooder's circuit carries the heat it has or needs, beside what else is on it. */
export function circuitPart(
  context: PlanContext,
  brooder: Brooder,
  needed: NumberQuantity,
): Found<CircuitPart | undefined> {
  const { facilities, tables } = context;
  const circuit = facilityOf(facilities, 'circuit', brooder.circuitId);
  if (!circuit || brooder.heat.kind === 'gas') return found(undefined);
  const count = Math.max(brooder.heat.count, needed.value);
  const loadW = count * brooder.heat.wattsEach + circuit.otherLoadW;
  const capacityW = continuousCapacityW(tables.heat.circuit.share, circuit);
  const carries = loadW <= capacityW;
  const issues: PlanIssue[] = [];
  if (!carries) {
    issues.push(
      issue(
        'stop',
        'circuit-overloaded',
        `${circuit.name} may carry ${context.say(capacityW, 'W')} for hours on end, but ${count} heaters and what else is on it draw ${context.say(loadW, 'W')}. Split them over two circuits or use fewer watts.`,
        [tables.heat.circuit],
      ),
    );
  }
  const part: CircuitPart = {
    name: circuit.name,
    carries,
    capacity: quantity('Circuit carries all day', capacityW, 'W', brooderHeatFormulas.circuit, [
      fromFarm('Volts', circuit.volts, 'V', 'V'),
      fromFarm('Amps', circuit.amps, 'A', 'A'),
      fromTable(tables.heat.circuit, 'Share for hours on end', tables.heat.circuit.share, 'share'),
    ]),
    load: quantity('Load on the circuit', loadW, 'W', plainFormulas.circuitLoad, [
      {
        ...input('Heaters', count * brooder.heat.wattsEach, 'W'),
        ...(brooder.heat.count < needed.value ? { mark: needed.mark } : {}),
      },
      input('What else is on it', circuit.otherLoadW, 'W'),
    ]),
  };
  return found(part, { issues, cautions: ['circuit'] });
}
