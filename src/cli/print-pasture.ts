import type { Farm } from '../../shared/farm/farm.js';
import type { PasturePlan } from '../../shared/plan/pasture/pasture-plan.js';
import { GRASS_YEARS, type GrassYears } from '../../shared/plan/pasture/grass-years.js';
import {
  rowNotes,
  rowTitle,
  seasonRows,
  type SeasonRow,
} from '../../shared/plan/pasture/season-rows.js';
import type { Tables } from '../../shared/tables/tables.js';
import { taskHours } from '../../shared/plan/tasks/task-hours.js';
import { formatDate, formatLongDate } from '../../shared/units/dates.js';
import { formatValue, type Reader } from '../../shared/units/format.js';
import {
  cautionsText,
  issuesText,
  paragraph,
  section,
  tablesFor,
  title,
  type Cell,
} from './text.js';

/** The grass of a farm through many years of weather. */
export function printGrassYears(years: GrassYears, plan: PasturePlan, reader: Reader): string {
  const { facts } = tablesFor(reader);
  return [
    section(
      `Grass through ${years.years} years of weather`,
      facts(
        ...balesToBuy(years),
        ...[years.toBuy],
        ...balesToBuy(plan.hay),
        ...[plan.hay.toBuy, plan.hay.all],
        ...[...years.fed.map(({ kg }) => kg), years.shortDays, years.mown],
      ),
    ),
    paragraph(GRASS_YEARS),
  ].join('\n');
}

/** Of each winter, where a plan feeds in two. */
const balesToBuy = ({ balesToBuy: all, byWinter }: Pick<GrassYears, 'balesToBuy' | 'byWinter'>) =>
  byWinter ? [byWinter.balesUntilOut, byWinter.balesNextWinter] : [all];

/** A season of grass and cattle as readable tables. */
export function printPasture(plan: PasturePlan, farm: Farm, tables: Tables): string {
  const reader: Reader = { ...farm, today: plan.today };
  const { table, facts, show } = tablesFor(reader);
  const near = (iso: string): string => formatDate(iso, reader);
  const nameOf = (rows: readonly { id: string; name: string }[], id: string): string =>
    rows.find((row) => row.id === id)?.name ?? id;
  const cm = (value: number): string => formatValue(value, 'cm', reader);
  const { hay, keyDates: turning, stocking: sizing } = plan;
  return [
    title(`Grass and cattle: ${farm.name}`),
    paragraph(
      `Planned on ${formatLongDate(plan.today, reader)} for ${near(plan.from)} to ${near(plan.to)}. Weather: ${plan.weather.label.toLowerCase()}${plan.weather.hasRain ? '' : ', without rain'}.`,
    ),
    issuesText(plan),
    section(
      'Does the grass last?',
      facts(
        ...[
          hay.untilPlan,
          hay.bales,
          hay.toStore,
          hay.inSeason,
          hay.outside,
          hay.inStore,
          hay.baled,
          hay.taken,
          hay.own,
        ],
        hay.nextWinter,
        ...balesToBuy(hay),
        ...[hay.toBuy, hay.balesUnmade, hay.toBuyUnmade],
        ...[hay.runsOut, hay.saved],
      ),
    ),
    section(
      'Key dates',
      facts(
        turning.ready,
        ...turning.herds.flatMap((h) => [
          h.magnesiumFrom,
          h.turnOut,
          h.hayBesideUntil,
          ...h.calvings.flatMap((c) => [c.due, c.weaned]),
          h.lastGrazing,
        ]),
        turning.stockpile?.shutFrom,
        turning.stockpile?.forageOnHand,
      ),
    ),
    section(
      'Moves',
      table(
        ['on', 'until', 'what', 'entry', 'exit', 'rest', ''],
        seasonRows(plan).map((row) => [
          near(row.from),
          near(row.to),
          rowTitle(plan, row),
          ...(row.kind === 'graze'
            ? [
                cm(row.move.entryHeightCm),
                cm(row.move.exitHeightCm),
                row.move.restDays === undefined ? '' : `${row.move.restDays} d`,
              ]
            : ['', '', '']),
          rowAmounts(row, show) || rowNotes(row).join(', '),
        ]),
      ),
    ),
    ...(plan.surplus.length === 0
      ? []
      : [
          section(
            'Grass to mow',
            table(
              ['paddock', 'closed from', 'mow from', 'bales', 'hay'],
              plan.surplus.map((s) => [
                nameOf(plan.paddocks, s.paddockId),
                near(s.shutFrom),
                near(s.mowFrom),
                s.bales,
                s.hay,
              ]),
            ),
          ),
        ]),
    section(
      'Stocking and water',
      facts(
        ...sizing.herds.flatMap((h) => [
          h.demand,
          ...h.each,
          h.shareOfWeight,
          h.animalUnits,
          h.water,
          h.hotDay,
          h.tank,
          h.refill,
          h.lasts,
          h.troughEdge,
          h.paddocks,
          h.paddockArea,
        ]),
        sizing.stockingRate,
        sizing.capacity,
        sizing.fence,
        sizing.split,
        sizing.lane,
        sizing.allFence,
        sizing.energizer,
        sizing.shade,
      ),
    ),
    ...(plan.beds.length === 0
      ? []
      : [
          section(
            'Garden in the grass',
            facts(...plan.beds.flatMap(({ lastDay, freeFrom }) => [lastDay, freeFrom])),
          ),
        ]),
    ...(plan.pens.length === 0
      ? []
      : [section('Ground under birds', facts(...plan.pens.map(({ cattleFrom }) => cattleFrom)))]),
    section(
      'Paddocks',
      table(
        ['paddock', 'area', 'height', 'grass on hand', 'legumes', 'manure N', 'manure P'],
        plan.paddocks.map((p) => [
          p.name,
          p.area,
          p.height,
          p.mass,
          p.legumes,
          p.nitrogen,
          p.phosphorus,
        ]),
      ),
    ),
    section(
      'Work',
      table(
        ['from', 'to', 'start no later than', 'hours', 'what'],
        plan.tasks.map((t) => [
          near(t.start),
          near(t.end),
          t.alreadyLate ? 'LATE' : near(t.latestStart),
          taskHours(t, tables),
          t.name,
        ]),
      ),
    ),
    section('Cautions', cautionsText(plan.cautions, tables)),
  ].join('\n');
}

/** How much a row feeds or yields. */
function rowAmounts(row: SeasonRow, show: (cell: Cell) => string): string {
  if (row.kind === 'hay') return `${show(row.perDay)} dry matter a day`;
  return row.kind === 'mow' ? `${show(row.cut.bales)}, ${show(row.cut.hay)}` : '';
}
