import type { Mix } from '../../shared/ration/mix.js';
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
      `In all ${money(mix.totalMinor)}, ${formatValue(mix.perKg.value, 'moneyPerKg', reader)}. To begin with, whole bags cost ${money(mix.toBegin.value)}.${sayAgainst(mix, reader)}`,
    ),
    ...said,
    table(
      ['holds', 'mix', 'need', 'at most', ''],
      mix.nutrients.map(({ name: nutrient, has, need, most, holdsMix, isMissed }) => [
        nutrient,
        has,
        need,
        most,
        isMissed ? 'missed' : holdsMix ? 'sets the mix' : '',
      ]),
    ),
    ...[...mix.prices, ...mix.limits].map((words) => paragraph(words)),
    paragraph(
      'What feeds hold is from a table that is remembered, not read again: take your bag’s.',
    ),
  ].join('\n');
}

function sayAgainst({ against }: Mix, { currency }: Reader): string {
  if (!against) return '';
  const { product, bought, likeBag, words } = against;
  return ` For what a bag of ${product} does (${formatMoney(bought.value, currency)}) your mix costs ${formatMoney(Math.round(likeBag.value), currency)}. ${words}`;
}
