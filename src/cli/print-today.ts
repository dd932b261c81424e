import { choreHoursSaid } from '../../shared/plan/work/rounds-said.js';
import { ageSaid } from '../../shared/plan/age-said.js';
import type { AnimalLine } from '../../shared/plan/today/animal-lines.js';
import type { BatchLine } from '../../shared/plan/today/batch-line.js';
import type { HerdLine } from '../../shared/plan/today/herd-line.js';
import type { Today } from '../../shared/plan/today/today.js';
import type { TodayJob } from '../../shared/plan/today/today-work.js';
import { formatDate, formatLongDate } from '../../shared/units/dates.js';
import { formatHours, formatValue, type Reader } from '../../shared/units/format.js';
import type { Quantity } from '../../shared/explain/quantity.js';

/** The day as text: weather and ground, a line for each batch and herd, work, what is ahead. */
export function printToday(day: Today, reader: Reader): string {
  const say = (date: string): string => formatDate(date, reader);
  const { hours, jobs, chores, attention, keyDates } = day;
  const part = (title: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
  return [
    [formatLongDate(day.date, reader), ...skyWords(day, reader)].join(' · '),
    ...part(
      'Animals',
      day.animals.map((line) => animalText(line, day, reader)),
    ),
    ...part(
      `Do today: ${formatHours(hours.used.value)} of ${formatHours(hours.had.value)}`,
      jobs.map((job) => jobText(job, say)),
    ),
    ...part(
      'The round',
      chores.map((chore) =>
        [chore.name, chore.of, choreHoursSaid(chore), chore.person ?? chore.anyOf ?? '']
          .filter(Boolean)
          .join(' · '),
      ),
    ),
    ...part(
      'Look at',
      attention.map(({ of, words, by }) =>
        [of === undefined ? words : `${of}: ${words}`, by && `by ${say(by)}`]
          .filter(Boolean)
          .join(', '),
      ),
    ),
    ...part(
      'Coming up',
      keyDates.map(({ on, text }) => `${say(on)}  ${text}`),
    ),
  ].join('\n');
}

const skyWords = ({ weather, ground }: Today, reader: Reader): string[] => [
  `${said(weather.tonight, reader)} tonight`,
  `${said(weather.high, reader)} today`,
  ...(weather.rain
    ? [`rain ${formatDate(weather.rain.on, reader)}, ${said(weather.rain.amount, reader)}`]
    : []),
  ...(weather.isForecast ? [] : ['no forecast']),
  `ground ${String(ground.now.value)}`,
];

const said = ({ value, unit }: Quantity, reader: Reader): string =>
  formatValue(value, unit, reader);

function jobText(job: TodayJob, say: (date: string) => string): string {
  const { name, of, people, hours, dueWords, state, restOn } = job;
  const became =
    state === 'done'
      ? 'done'
      : state === 'later'
        ? `later${restOn ? `, ${say(restOn)}` : ''}`
        : dueWords;
  return [name, of, people.join(' + '), formatHours(hours), became].filter(Boolean).join(' · ');
}

/** One batch or herd in one line. */
export function animalText(line: AnimalLine, day: Today, reader: Reader): string {
  const parts = line.kind === 'herd' ? herdParts(line, reader) : batchParts(line, day, reader);
  const { next } = line;
  const days = next?.days.value;
  const when = days === 0 ? 'today' : days === 1 ? 'tomorrow' : `in ${days} days`;
  return [
    line.name,
    ...parts,
    ...(line.kind === 'batch' && line.wasToLeave !== undefined
      ? [`were to leave ${formatDate(line.wasToLeave, reader)}, nothing told`]
      : []),
    ...(next ? [`${next.words} ${when}, ${formatDate(next.on, reader)}`] : []),
  ].join(' · ');
}

function batchParts(line: BatchLine, { weather }: Today, reader: Reader): string[] {
  const { stage, age, head, where, heat, feed, water, eggs, lamp } = line;
  if (stage === 'eggs') return [`${said(head, reader)} set`];
  if (stage === 'coming')
    return [
      line.wasToCome === undefined
        ? `${said(head, reader)} to come`
        : `${said(head, reader)} were to come ${formatDate(line.wasToCome, reader)}, nothing told`,
    ];
  const { awaited, awaitedSaid } = line;
  return [
    ...(awaited && awaitedSaid !== undefined
      ? [`${said(awaited, reader)} ${awaitedSaid}`]
      : [...(age ? [ageSaid(age.value)] : []), `${said(head, reader)} alive`]),
    ...(line.beforeBox === undefined ? [] : [lower(line.beforeBox).replace(/\.$/, '')]),
    ...(where === undefined ? [] : [where]),
    ...(heat
      ? [
          `${said(heat.wanted, reader)} under the heat${heat.tooCold ? ` wanted, ${said(heat.tooCold, reader)} is all they have` : ''}, ${said(weather.tonight, reader)} tonight`,
        ]
      : []),
    ...(heat?.day
      ? [
          `by day ${lower(heat.day.words)}${heat.day.raisedTo ? `, raised to ${said(heat.day.raisedTo, reader)}` : ''}`,
        ]
      : []),
    ...(heat?.night ? [`tonight ${lower(heat.night.words)}`] : []),
    ...(feed ? [`${said(feed.amount, reader)} ${feed.phase.toLowerCase()}`] : []),
    ...(water ? [`${said(water, reader)} water`] : []),
    ...(eggs ? [`expect ${said(eggs, reader)}`] : []),
    ...(lamp
      ? [
          `light ${0 < lamp.hours.value ? said(lamp.hours, reader) : 'off'}${lamp.changesOn ? ` till ${formatDate(lamp.changesOn, reader)}` : ''}`,
        ]
      : []),
  ];
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

const whereTo = (
  { paddock, since, isToCome }: NonNullable<HerdLine['on']>,
  reader: Reader,
): string =>
  isToCome ? `into ${paddock} today` : `in ${paddock} since ${formatDate(since, reader)}`;

const herdParts = ({ head, on, hay, water }: HerdLine, reader: Reader): string[] => [
  `${said(head, reader)} head`,
  on ? `${whereTo(on, reader)}, until ${formatDate(on.until, reader)}` : 'on hay',
  ...(hay ? [`hay ${hay.said} (${said(hay.weight, reader)})`] : []),
  `${said(water, reader)} water`,
];
