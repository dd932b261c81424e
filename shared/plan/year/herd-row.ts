import { addDays, type PlainDate } from '../../calendar/plain-date.js';
import type { Herd } from '../../farm/herd.js';
import type { PasturePlan } from '../pasture/pasture-plan.js';
import { seasonRows, type SeasonRow } from '../pasture/season-rows.js';
import { inOrder, type YearBar, type YearDate, type YearRow } from './year-row.js';
import type { YearSpan } from './year-span.js';

/**
 * A herd on the strip: days on grass, calvings, and days on hay, those of winter too, which lie
 * outside the days of the pasture's plan. It ends where there is grass again that is not planned yet.
 */
export function herdRow(herd: Herd, plan: PasturePlan, span: YearSpan): YearRow {
  return {
    kind: 'herd',
    id: herd.id,
    name: herd.name,
    bars: [
      ...joined([...seasonBars(herd, plan), ...winters(herd, plan, span)]),
      ...calvingsOf(herd, plan).map(({ early, late }): YearBar => ({
        kind: 'calving',
        from: early,
        until: addDays(late, 1),
      })),
    ],
    dates: inOrder(datesOf(herd, plan)),
  };
}

/** Stays in paddocks, and days on hay of the season. */
const seasonBars = (herd: Herd, plan: PasturePlan): YearBar[] =>
  seasonRows(plan).flatMap((row) => {
    const kind = kindOf(row, herd.id);
    return kind === undefined ? [] : [{ kind, from: row.from, until: addDays(row.to, 1) }];
  });

/** Bars of a kind that follow each other as one: a winter is one stretch of hay, however it is planned. */
function joined(all: readonly YearBar[]): YearBar[] {
  const bars: YearBar[] = [];
  for (const bar of all.toSorted((a, b) => (a.from < b.from ? -1 : 1))) {
    const k = bars.findLastIndex(({ kind }) => kind === bar.kind);
    const last = bars[k];
    if (last && bar.from <= last.until) bars[k] = { ...last, until: latest(last.until, bar.until) };
    else bars.push(bar);
  }
  return bars;
}

function kindOf(row: SeasonRow, herdId: string): 'grass' | 'hay' | undefined {
  if (row.kind === 'graze') return row.move.herdId === herdId ? 'grass' : undefined;
  return row.kind === 'hay' && row.herdId === herdId ? 'hay' : undefined;
}

/**
 * Days on hay before and after those the pasture is planned for, while there are cattle. What they graze
 * of the next year's grass nobody knows yet.
 */
function winters(herd: Herd, plan: PasturePlan, span: YearSpan): YearBar[] {
  const { from, to, today } = plan;
  const first = latest(today, earliestOf(herd.groups.map(({ arrivesOn }) => arrivesOn)));
  const last = earliest(span.until, latestOf(herd.groups.map(({ leavesOn }) => leavesOn)));
  return [
    winter(first, earliest(from, last)),
    winter(latest(addDays(to, 1), first), earliest(last, grassAgainOf(herd, plan))),
  ].filter((bar) => bar.from < bar.until);
}

const winter = (from: PlainDate, until: PlainDate): YearBar => ({ kind: 'hay', from, until });

const earliest = (a: PlainDate, b: PlainDate | undefined): PlainDate =>
  b !== undefined && b < a ? b : a;
const latest = (a: PlainDate, b: PlainDate | undefined): PlainDate =>
  b !== undefined && a < b ? b : a;

/** The first of the dates; none when one of the groups has no date: it is there already. */
const earliestOf = (dates: readonly (PlainDate | undefined)[]): PlainDate | undefined =>
  dates.includes(undefined) ? undefined : [...dates].sort()[0];
/** The last of them; none when one of the groups stays. */
const latestOf = (dates: readonly (PlainDate | undefined)[]): PlainDate | undefined =>
  dates.includes(undefined) ? undefined : [...dates].sort().at(-1);

const grassAgainOf = (herd: Herd, { herds }: PasturePlan): PlainDate | undefined =>
  herds.find(({ id }) => id === herd.id)?.grassAgain;

const keyDatesOf = (herd: Herd, { keyDates }: PasturePlan) =>
  keyDates.herds.find(({ herdId }) => herdId === herd.id);

const calvingsOf = (herd: Herd, plan: PasturePlan) => keyDatesOf(herd, plan)?.calvings ?? [];

/** Where the line ends though there are cattle, and why. */
function againOf(herd: Herd, plan: PasturePlan): YearDate[] {
  const on = grassAgainOf(herd, plan);
  const last = latestOf(herd.groups.map(({ leavesOn }) => leavesOn));
  if (on === undefined || on <= plan.to || (last !== undefined && last <= on)) return [];
  return [{ on, words: 'grass again about, as this year: not planned yet' }];
}

function datesOf(herd: Herd, plan: PasturePlan): YearDate[] {
  const dates = keyDatesOf(herd, plan);
  if (!dates) return [];
  const { arrivals, calvings, magnesiumFrom, turnOut, lastGrazing } = dates;
  const dated = (quantity: { value: number | string } | undefined, words: string): YearDate[] =>
    quantity ? [{ on: String(quantity.value), words }] : [];
  return [
    ...arrivals.map(({ on }) => ({ on, words: 'arrive' })),
    ...dated(magnesiumFrom, 'start magnesium mineral by'),
    ...dated(turnOut, 'turn-out'),
    ...calvings.flatMap(({ due, cow }) =>
      dated(due, cow ? `${cow.name}: calving due` : 'calving due'),
    ),
    ...dated(lastGrazing, 'last day on grass'),
    ...againOf(herd, plan),
    ...herd.groups.flatMap(({ leavesOn }) =>
      leavesOn === undefined ? [] : [{ on: leavesOn, words: 'leave' }],
    ),
  ];
}
