import { plainFormulas } from '../explain/plain-formulas.js';
import { fromRow, fromTable, input, quantity, type NumberQuantity } from '../explain/quantity.js';
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

/** Whether the brooder's circuit carries the heaters there are beside what else is on it. */
export function circuitPart(
  context: PlanContext,
  brooder: Brooder,
  toAdd: number,
): Found<CircuitPart | undefined> {
  const { facilities, tables } = context;
  const circuit = facilityOf(facilities, 'circuit', brooder.circuitId);
  if (brooder.heat.kind === 'gas') return found(undefined);
  const { count, wattsEach } = brooder.heat;
  if (!circuit) return unnamedCircuit(context, count * wattsEach);
  const loadW = count * wattsEach + circuit.otherLoadW;
  const capacityW = continuousCapacityW(tables.heat.circuit.share, circuit);
  const carries = loadW <= capacityW;
  const issues: PlanIssue[] = [];
  const may = `${circuit.name} may carry ${context.say(capacityW, 'W')} for hours on end`;
  const split = 'Split them over two circuits or use fewer watts.';
  if (!carries) {
    const text = `${may}, but ${count} heaters and what else is on it draw ${context.say(loadW, 'W')}. ${split}`;
    issues.push(issue('stop', 'circuit-overloaded', text, [tables.heat.circuit]));
  } else if (capacityW < loadW + toAdd * wattsEach) {
    const text = `${may}: with ${toAdd} more heaters it would be ${context.say(loadW + toAdd * wattsEach, 'W')}. ${split}`;
    issues.push(issue('act', 'circuit-if-added', text, [tables.heat.circuit]));
  }
  const part: CircuitPart = {
    name: circuit.name,
    carries,
    capacity: quantity('Circuit carries all day', capacityW, 'W', brooderHeatFormulas.circuit, [
      fromRow(circuit, 'volts', 'Volts', circuit.volts, 'V', 'V'),
      fromRow(circuit, 'amps', 'Amps', circuit.amps, 'A', 'A'),
      fromTable(tables.heat.circuit, 'Share for hours on end', tables.heat.circuit.share, 'share'),
    ]),
    load: quantity('Load on the circuit', loadW, 'W', plainFormulas.circuitLoad, [
      input('Heaters', count * wattsEach, 'W'),
      input('What else is on it', circuit.otherLoadW, 'W'),
    ]),
  };
  return found(part, { issues, cautions: ['circuit'] });
}

/** What is to be asked of a circuit that nobody named, where the heaters are more than common ones carry. */
function unnamedCircuit({ farm, tables, say }: PlanContext, loadW: number): Found<undefined> {
  const { circuit: rule, usualCircuit: usual } = tables.heat;
  const isFirst =
    farm.country === undefined ? farm.units === 'us' : usual.countries.includes(farm.country);
  const common = isFirst ? usual : { volts: usual.otherVolts, amps: usual.otherAmps };
  const capacityW = continuousCapacityW(rule.share, common);
  if (loadW <= capacityW) return found(undefined);
  const text = `The heaters draw ${say(loadW, 'W')}. A circuit of ${common.amps} A at ${common.volts} V, as houses commonly have them, may carry ${say(capacityW, 'W')} for hours on end: share them between ${Math.ceil(loadW / capacityW)}, and name the circuit where the brooder is described.`;
  return found(undefined, {
    issues: [issue('act', 'circuit-not-named', text, [rule, usual])],
    cautions: ['circuit'],
  });
}
