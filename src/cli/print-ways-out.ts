import { RULE_OF_NIGHTS, sayNights } from '../../shared/plan/say-ways-out.js';
import type { WayOut, WayOutDay } from '../../shared/plan/ways-out.js';
import { paragraph, section, type tablesFor } from './text.js';

/** The ways to go out, side by side, and what of the batch chooses each. */
export function waysOutText(
  ways: readonly WayOut[],
  { table, show }: Pick<ReturnType<typeof tablesFor>, 'table' | 'show'>,
): string {
  const costs = ({ oneColdNight: { money, heat } }: WayOutDay): string =>
    [money && `${show(money)} feed`, heat && `${show(heat)} heat`].filter(Boolean).join(', ');
  return [
    section(
      'Going out: the ways to choose from',
      table(
        ['', 'out', 'age', 'they stand', 'colder nights that week', 'costs', 'floor', 'choose'],
        ways.map(({ name, out, isChosen, chosenBy }) => [
          name,
          out?.on ?? 'not before the end',
          out?.age,
          out?.stand,
          out && sayNights(out.coldNights.value),
          out && costs(out),
          out?.floor,
          isChosen ? 'chosen' : Object.values(chosenBy).join(' + '),
        ]),
      ),
    ),
    ...ways.map(({ name, takes, out }) =>
      paragraph(`${name}: ${takes}${out?.because ? ` ${out.because}` : ''}`, '  '),
    ),
    paragraph(
      `A colder night costs so much in feed, or in heat where there is some; floor is what the brooder needs until then. ${RULE_OF_NIGHTS}`,
    ),
    'To choose: "moveOutRuleId" and "nightSuretyId" of the batch, in that order.',
  ].join('\n');
}
