import { addDays } from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import { plainFormulas } from '../explain/plain-formulas.js';
import {
  datedFact,
  fromFarm,
  fromTable,
  input,
  quantity,
  type NumberQuantity,
  type Quantity,
} from '../explain/quantity.js';
import { growthFormulas } from '../poultry/growth.js';
import { rowById } from '../tables/tables.js';
import { issue, type PlanIssue } from '../problems/plan-issue.js';
import type { PlanContext } from './context.js';
import { endOfFirstYear } from './laying-years.js';
import type { Life } from './life.js';
import type { FeedPart } from './feed.js';
import { found, type Found } from './found.js';
import type { LayDays } from './lay-days.js';

export const raisingFormulas = {
  cockerelFeed: {
    id: 'cockerel-feed',
    title: 'Feed of the cockerels',
    words:
      'Feed of the cockerels of a straight run, summed from their arrival to the day they leave.',
    symbols: 'F = Σ N_male(t)·F_day(t)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  lastMedicated: {
    id: 'last-medicated-feed',
    title: 'Last day of medicated feed',
    words:
      'The earliest age at which hens of the strain lay, less the withdrawal days of your label, so that the first egg is free of it.',
    symbols: 'D = hatch + 7·d_early − days − 1',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  shell: {
    id: 'oyster-shell',
    title: 'Oyster shell beside the feed',
    words:
      'Calcium that hens in lay want in their feed, less what this feed holds, divided by what the shell holds more. Hens take what they need: keep it in a dish of its own.',
    symbols: 'S = F·(c_hens − c_feed) ÷ (c_shell − c_hens)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

export interface RaisingPart {
  /** Of the pullets alone. */
  readonly feedToFirstEgg: NumberQuantity;
  /** What the cockerels of a straight run eat until they leave. */
  readonly cockerelFeed?: NumberQuantity;
  readonly cockerelLive?: NumberQuantity;
  readonly lastMedicatedDay?: Quantity;
  /** Over the first laying year, where the feed holds less calcium than hens want. */
  readonly oysterShell?: NumberQuantity;
}

/** What raising the hens takes, and what must stop or begin before their first egg. */
export function raisingPullets(
  context: PlanContext,
  lay: LayDays,
  feed: FeedPart,
): Found<RaisingPart> {
  const { life } = context;
  const { firstDay } = lay;
  const options = { rows: [...life.feedRows, life.losses] };
  const flockKg = sum(feed.flockFeedKg, 0, firstDay);
  const cockerelKg = sum(life.cockerelFeedKg, 0, life.days);
  const pullets = life.alive.female[firstDay]!;
  const pulletKg = flockKg - sum(life.cockerelFeedKg, 0, firstDay);
  const medicated = lastMedicated(context, lay);
  const shell = oysterShell(context, lay, feed);
  const part: RaisingPart = {
    feedToFirstEgg: quantity(
      'Feed per pullet to the first egg',
      pullets === 0 ? 0 : pulletKg / pullets,
      'kg',
      plainFormulas.perBird,
      [input('Feed of the pullets', pulletKg, 'kg'), input('Pullets', pullets, 'count')],
      options,
    ),
    ...(0 < cockerelKg
      ? {
          cockerelFeed: quantity(
            'Feed of the cockerels until they leave',
            cockerelKg,
            'kg',
            raisingFormulas.cockerelFeed,
            [
              input('Cockerels when they leave', cockerelsLeaving(context), 'count'),
              input('Age at leaving', life.cockerelsLeaveAgeDays ?? 0, 'day'),
            ],
            options,
          ),
          cockerelLive: liveWeight(context),
        }
      : {}),
    ...(medicated ? { lastMedicatedDay: medicated } : {}),
    ...(shell ? { oysterShell: shell } : {}),
  };
  return found(part, {
    issues: [...cockerelsToProcess(context, part), ...stopMedicated(context, medicated)],
    cautions: part.cockerelFeed ? ['slaughter', 'chilling'] : [],
  });
}

const lastCockerelDay = ({ life }: PlanContext): number =>
  life.cockerelsLeaveAgeDays! - life.arrivalAgeDays - 1;

const cockerelsLeaving = (context: PlanContext): number =>
  Math.floor(context.life.alive.male[lastCockerelDay(context)]! + 1e-9);

function liveWeight(context: PlanContext): NumberQuantity {
  const { life } = context;
  return quantity(
    'A cockerel when he leaves, live',
    life.weightKg.male[lastCockerelDay(context)]!,
    'kg',
    growthFormulas.weight,
    [
      input('Growth table', life.growthTable.name, 'text'),
      fromTable(life.strain.leave, 'Age at leaving', life.cockerelsLeaveAgeDays!, 'day', 't'),
      input('Small-flock factor', life.weightFactor, 'ratio', 'f'),
    ],
    { rows: life.weightRows },
  );
}

/** A straight run is half cockerels, who eat, leave on a day and want room. */
function cockerelsToProcess(context: PlanContext, part: RaisingPart): PlanIssue[] {
  const { cockerelFeed, cockerelLive } = part;
  if (!cockerelFeed || !cockerelLive) return [];
  const { say, dateOf, life, tables } = context;
  const birds = cockerelsLeaving(context);
  const on = say(dateOf(lastCockerelDay(context) + 1), 'date');
  const { dressing } = life.strain;
  const share = dressing && rowById(tables.processing.dressing, dressing);
  const meat = share
    ? `, about ${say(birds * cockerelLive.value * share.share, 'kg')} of meat`
    : '; hybrids bred for eggs carry little meat';
  return [
    issue(
      'act',
      'cockerels-leave',
      `About ${birds} cockerels of ${say(cockerelLive.value, 'kg')} live leave by ${on}, having eaten ${say(cockerelFeed.value, 'kg')} of feed. Sell them, or plan a day to process them and room in the freezer${meat}.`,
      [life.strain.leave, ...life.weightRows, life.losses],
    ),
  ];
}

/** Before the earliest first egg, not the usual one: a hen that lays early lays residues too. */
function lastMedicated({ batch, life, dateOf }: PlanContext, lay: LayDays): Quantity | undefined {
  const days = batch.medicatedWithdrawalDays;
  if (days === undefined) return undefined;
  const earliest = Math.round(7 * lay.curve.firstEggWeekLow) - life.arrivalAgeDays;
  return datedFact(
    'Last day of medicated feed',
    dateOf(Math.max(0, earliest - days - 1)),
    raisingFormulas.lastMedicated,
    [
      input('Hatch', addDays(batch.arrivalDate, -life.arrivalAgeDays), 'date'),
      fromTable(
        lay.curve,
        'Earliest first egg, weeks',
        lay.curve.firstEggWeekLow,
        'ratio',
        'd_early',
      ),
      fromFarm('Withdrawal days on the label', days, 'day'),
    ],
  );
}

function stopMedicated({ say, batch }: PlanContext, last: Quantity | undefined): PlanIssue[] {
  return last === undefined
    ? []
    : [
        issue(
          'act',
          'medicated-before-eggs',
          `Medicated feed ends on ${say(last.value, 'date')} at the latest: hens may lay early, and the label asks for ${batch.medicatedWithdrawalDays} days without it before an egg is eaten. The label decides.`,
        ),
      ];
}

/** Calcium of the feed that hens lay on, percent; 0 where it says nothing. */
const calciumOf = ({ program }: Life): number => program.phases.at(-1)!.calciumPercent ?? 0;

/** Whether hens need oyster shell beside their feed. */
export const needsShell = ({ life, tables }: PlanContext): boolean =>
  calciumOf(life) < tables.laying.shell.hensNeedPercent;

function oysterShell(
  context: PlanContext,
  lay: LayDays,
  feed: FeedPart,
): NumberQuantity | undefined {
  if (!needsShell(context)) return undefined;
  const { life, tables } = context;
  const { shell } = tables.laying;
  const holds = calciumOf(life);
  const feedKg = sum(feed.flockFeedKg, lay.firstDay, endOfFirstYear(life));
  const share = (shell.hensNeedPercent - holds) / (shell.shellHoldsPercent - shell.hensNeedPercent);
  return quantity(
    'Oyster shell, first laying year',
    feedKg * share,
    'kg',
    raisingFormulas.shell,
    [
      input('Feed of the laying year', feedKg, 'kg', 'F'),
      fromTable(shell, 'Calcium that hens want, %', shell.hensNeedPercent, 'ratio', 'c_hens'),
      fromTable(life.program, 'Calcium of the feed, %', holds, 'ratio', 'c_feed'),
      fromTable(shell, 'Calcium of the shell, %', shell.shellHoldsPercent, 'ratio', 'c_shell'),
    ],
    { rows: [...life.feedRows, ...lay.rows, life.losses] },
  );
}

function sum(values: ArrayLike<number>, from: number, to: number): number {
  let total = 0;
  for (let i = from; i < to; i++) total += values[i]!;
  return total;
}
