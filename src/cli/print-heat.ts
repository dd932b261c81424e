import type { Quantity } from '../../shared/explain/quantity.js';
import { SPOT_AND_AIR, type HeatInstruction } from '../../shared/plan/heat-instructions.js';
import type { HeatPart } from '../../shared/plan/heat.js';
import { formatDate } from '../../shared/units/dates.js';
import type { Reader } from '../../shared/units/format.js';
import { paragraph, section, tablesFor, type Cell } from './text.js';

/** The heat of a brooder: what it takes, how it is set week by week, and what others print. */
export function heatText(heat: HeatPart, reader: Reader): string {
  const { table, facts } = tablesFor(reader);
  return [
    section(
      `Heat: ${heat.brooderName}`,
      facts(
        heat.coldestNight,
        heat.coldestNightLow,
        heat.need,
        heat.installed,
        heat.heatersNeeded,
        heat.rules.lampRule,
        heat.lastHeatDay,
        heat.energyPerDay,
        heat.energyTotal,
        heat.gasPerDay,
        heat.gasLiters,
        heat.cost,
        heat.circuit?.capacity,
        heat.circuit?.load,
        heat.openTop,
        heat.clearance?.least,
        heat.clearance?.tooCloseOn,
        ...savedBy(heat.closeOff),
      ),
    ),
    ...(heat.gasNeeds === undefined ? [] : [paragraph(heat.gasNeeds)]),
    table(
      ['from', 'when', 'around it', 'do', 'lamps at', 'air of it all', 'spot under heat'],
      heat.weeks.flatMap((w) => [
        hourRow(formatDate(w.from, reader), 'cold night', w.night, w.lampHeight),
        hourRow('', 'usual day', w.day, w.day.raisedTo),
        hourRow('', 'hot noon', w.noon, w.noon.raisedTo),
        ...(w.ifLeft ? [['', '', '', 'if left as at night', undefined, w.ifLeft, '']] : []),
      ]),
    ),
    paragraph(SPOT_AND_AIR),
    table(
      ['others print', 'heaters'],
      heat.rules.others.map(({ name, needed }) => [name, needed]),
    ),
  ].join('\n');
}

const hourRow = (
  from: string,
  when: string,
  { around, words, air, underHeat }: HeatInstruction,
  lampsAt: Quantity | undefined,
): Cell[] => [from, when, around, words, lampsAt, air, underHeat];

/** Where as many heaters burn either way, a part that is closed off saves nothing to print. */
const savedBy = (closeOff: HeatPart['closeOff']): readonly Quantity[] =>
  closeOff && 1 <= closeOff.energySaved.value ? [closeOff.energySaved, closeOff.moneySaved] : [];
