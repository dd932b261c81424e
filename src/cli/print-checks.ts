import { countStandings, type Check } from '../../shared/checks/compare.js';
import { sayCheck } from '../../shared/checks/say-check.js';
import type { Tables } from '../../shared/tables/tables.js';
import { drawTable, paragraph, section } from './text.js';

/**
 * What the program computes beside values from outside, by topic, in the units that are stored; what
 * disagrees is explained under its table.
 *
 * @param leftOut what to say of comparisons that could not be made
 */
export function checksText(
  checks: readonly Check[],
  { sources }: Pick<Tables, 'sources'>,
  leftOut?: string,
): string {
  const topics = [...new Set(checks.map(({ topic }) => topic))];
  return [
    ...topics.map((name) =>
      section(
        name,
        topicText(
          checks.filter(({ topic }) => topic === name),
          sources,
        ),
      ),
    ),
    ...(leftOut === undefined ? [] : [`\n${leftOut}`]),
    `\n${countsText(checks)}`,
  ].join('\n');
}

function topicText(rows: readonly Check[], sources: Tables['sources']): string {
  const lines = rows.map((row) => {
    const { theirs, ours, off, allowed, standing } = sayCheck(row, 'metric');
    const { publisher, year } = sources[row.source]!;
    // Whole in the list of sources on the page; here the first words find it again.
    const from = `${publisher.split(/[,(]/)[0]!.trim()}${year && ` ${year}`}, ${row.where} [${row.mark}]`;
    return [`${row.what}\n${from}`, theirs, ours, off, `${allowed}`, standing];
  });
  const notes = rows
    .filter(({ standing }) => standing !== 'holds')
    .map(({ what, disagreement, why }) => paragraph(`  ${what}: ${disagreement ?? why}`, '  '));
  return [drawTable(['what', 'theirs', 'ours', 'off by', 'allowed', ''], lines), ...notes].join(
    '\n',
  );
}

/** The last line: how many rows stand how. */
function countsText(checks: readonly Check[]): string {
  const { held, beyond, disagreeing } = countStandings(checks);
  return `${checks.length} checks: ${held} agree, ${beyond} too far off, ${disagreeing} disagree as explained.`;
}
