import type { Ration } from '../../shared/ration/ration.js';
import { formatMoney, formatValue, type Reader } from '../../shared/units/format.js';
import { sayOnScale } from '../../shared/units/scale.js';
import { paragraph, tablesFor, title } from './text.js';

/** A mixing sheet, with what it holds and why it is as it is. */
export function printRation({ title: name, mix, issues }: Ration, reader: Reader): string {
  const { table } = tablesFor(reader);
  const said = issues.map(({ text }) => paragraph(text));
  if (!mix) return [title(name), ...said].join('\n');
  const money = (minor: number): string => formatMoney(minor, reader.currency);
  return [
    title(`${name}, ${formatValue(mix.totalKg, 'kg', reader)}`),
    table(
      ['weigh in', '', 'costs', ''],
      mix.lines.map((line) => [
        sayOnScale(line.amount.value, reader.units),
        line.name,
        money(line.costMinor),
        line.isStirredFirst ? 'stir first' : '',
      ]),
    ),
    paragraph(
      `In all ${money(mix.totalMinor)}, ${formatValue(mix.perKg.value, 'moneyPerKg', reader)}. ${mix.against?.words ?? ''}`,
    ),
    ...said,
    table(
      ['holds', 'mix', 'need', 'at most', ''],
      mix.nutrients.map(({ name: nutrient, has, need, most, holdsMix, isMissed }) => [
        nutrient,
        has,
        need,
        most,
        isMissed ? 'missed' : holdsMix ? 'just met' : '',
      ]),
    ),
    ...[...mix.prices, ...mix.limits].map((words) => paragraph(words)),
    paragraph(
      'What feeds hold is from a table that is remembered, not read again: take your bag’s.',
    ),
  ].join('\n');
}
