import type { Quantity } from '../../shared/explain/quantity.js';
import type { Farm } from '../../shared/farm/farm.js';
import { sayPrice } from '../../shared/money/unit-price.js';
import type { ArrivalWeek } from '../../shared/plan/arrival-finder.js';
import type { BatchPlan } from '../../shared/plan/batch-plan.js';
import { lightFrom } from '../../shared/plan/lay-lamp.js';
import type { Tables } from '../../shared/tables/tables.js';
import {
  formatDate,
  formatHour,
  formatLongDate,
  formatMonth,
  type DateReader,
} from '../../shared/units/dates.js';
import { gradeOf } from '../../shared/plan/week-in-words.js';
import { formatHours, formatValue, type Reader } from '../../shared/units/format.js';
import { unitLabel } from '../../shared/units/unit.js';
import {
  cautionsText,
  drawTable,
  issuesText,
  paragraph,
  rangeText,
  section,
  tablesFor,
  title,
} from './text.js';
import { heatText } from './print-heat.js';
import { waysOutText } from './print-ways-out.js';

/** The whole plan as readable tables. */
export function printPlan(plan: BatchPlan, farm: Farm, tables: Tables): string {
  const reader: Reader = { ...farm, today: plan.today };
  const { table, facts } = tablesFor(reader);
  const near = (iso: string): string => formatDate(iso, reader);
  const { hatching, birds, brooding, feed, heat, outdoors, leaving, laying, bill } = plan;

  return [
    title(`${plan.name}: ${plan.strain}, ${plan.sex.replace('-', ' ')}`),
    paragraph(
      `Planned on ${formatLongDate(plan.today, reader)}. Weather: ${plan.weather.label.toLowerCase()}. Growth table: ${birds.growthTable}.`,
    ),
    issuesText(plan),
    section(
      'Dates and birds',
      facts(
        ...(hatching ? [hatching.eggsToSet] : [birds.toOrder, ...birds.orderSizes]),
        birds.enough,
        birds.chicksPlaced,
        birds.atEnd,
        outdoors.moveOut,
        outdoors.ageAtMove,
        outdoors.nightLow,
        outdoors.coldNights,
        outdoors.hardenFrom,
        leaving?.on,
        laying?.firstEgg,
        birds.cockerelsLeave?.on,
        birds.cockerelsLeave?.birds,
        birds.cockerelsLeave?.freezerNeed,
      ),
    ),
    hatching &&
      section(
        `Eggs set: ${hatching.incubator ? hatching.incubator.kind.toLowerCase() : 'under a hen, no brooder'}`,
        facts(
          ...hatching.eggSizes,
          hatching.eggs,
          hatching.share,
          hatching.chicksExpected,
          hatching.hens,
          hatching.withHen,
          hatching.keepFrom,
          hatching.keepAt,
          hatching.setOn,
          ...hatching.candleOn,
          hatching.incubator?.lockdownOn,
          hatching.hatchOn,
          hatching.incubator?.airC,
          hatching.incubator?.humidity,
          hatching.incubator?.hatchHumidity,
          hatching.incubator?.turning,
          hatching.incubator?.weightLoss,
        ),
      ),
    brooding &&
      section(
        `Brooder temperature: ${brooding.scheduleName}, measured at ${brooding.measuredAt}`,
        table(
          ['from', 'to', 'age', 'under the heat', 'sources', 'cool end', 'room, if all is heated'],
          brooding.steps.map((s) => [
            near(s.from),
            near(s.to),
            s.fromAgeDays === s.toAgeDays
              ? `${s.toAgeDays} d`
              : `${s.fromAgeDays}–${s.toAgeDays} d`,
            s.underHeater,
            rangeText(s.underHeater, reader),
            s.coolEnd,
            s.room,
          ]),
        ),
      ),
    heat && heatText(heat, reader),
    section(
      'Feed',
      table(
        ['phase', '', 'from', 'to', 'bags', 'feed', 'buy by'],
        feed.phases.map((p) => [
          p.name,
          p.protein,
          near(String(p.starts.value)),
          near(p.lastDay),
          p.bags,
          p.totalKg,
          p.deliveries
            .slice(0, 3)
            .map((d) => `${near(String(d.buyBy.value))} (${d.bags.value})`)
            .join('; ') + (p.deliveries.length > 3 ? ' …' : ''),
        ]),
      ),
    ),
    facts(
      feed.total,
      feed.perBird,
      leaving?.conversion && [leaving.conversion, conversionText(leaving.conversion, reader)],
      feed.peakWater,
    ),
    plan.space.needs[0] &&
      section(
        `Space: ${plan.space.standard}`,
        table(
          ['', 'peak need', 'have', 'outgrown on'],
          plan.space.needs.map((n) => [n.name, n.most, n.have, n.runsOut]),
        ),
      ),
    section(
      'Birds that fit',
      table(
        ['', '', 'on', 'fit', 'birds then', 'floor a bird', 'floor they need'],
        plan.space.stocking.map(({ place, when, on, fits, birds, limit, needed }) => [
          ...[place, when, formatDate(on, reader)],
          ...[fits, birds, limit, needed],
        ]),
      ),
    ),
    plan.space.litter &&
      facts(
        plan.space.litter.topUp,
        plan.space.litter.total,
        plan.space.litter.bags,
        plan.space.litter.cleanOut,
      ),
    outdoors.waysOut[0] && waysOutText(outdoors.waysOut, tablesFor(reader)),
    section(
      `Outdoors: ${outdoors.home ?? 'no pen or coop chosen'}`,
      facts(
        outdoors.floorNeeded,
        outdoors.floorHave,
        outdoors.pensNeeded,
        outdoors.movesPerDay,
        outdoors.ground,
        outdoors.nitrogen,
        outdoors.density,
        outdoors.nests,
        outdoors.roost,
        plan.space.spare,
        outdoors.oneColdNight?.low,
        outdoors.oneColdNight?.feed,
        outdoors.oneColdNight?.money,
        outdoors.oneColdNight?.heat,
        outdoors.wetDay,
      ),
    ),
    leaving &&
      section(
        'Leaving',
        facts(
          leaving.age,
          leaving.liveEach,
          leaving.liveMale,
          leaving.liveFemale,
          leaving.liveAll,
          leaving.dressedEach,
          leaving.dressedAll,
          leaving.packedAll,
          leaving.freezerNeed,
          leaving.freezerFree,
          leaving.eatenUp,
          leaving.feedOff,
          leaving.birdsADay,
          leaving.birdsAnHour,
          leaving.dayHours,
          ...(0 < leaving.iceDays.length ? [leaving.ice, leaving.iceBags] : []),
          leaving.chillTime,
          leaving.chillLimit,
          leaving.slot?.wanted,
          leaving.slot?.over,
          leaving.slot?.arrivals.best,
          leaving.slot?.slots.best,
        ),
      ),
    leaving && processingText(leaving, near, (h) => formatHour(h, farm.units)),
    leaving && leaving.processingWays.map(({ words }) => paragraph(`- ${words}.`, '  ')).join('\n'),
    laying &&
      section(
        'Laying',
        facts(
          laying.firstEgg,
          laying.ageAtFirstEgg,
          laying.peak,
          laying.eggsInYear,
          laying.eggsPerHen,
          laying.own,
          laying.feedPerDozen,
          laying.paysUntil,
          laying.molts[0],
          laying.feedToFirstEgg,
          laying.cockerelFeed,
          laying.cockerelLive,
          laying.lastMedicatedDay,
          laying.oysterShell,
        ),
      ),
    laying &&
      table(
        [
          'month',
          'daylight',
          'eggs a week, no lamp',
          'lamp',
          ...(laying.shortOf ? ['hens you need', 'with a lamp'] : []),
        ],
        laying.months.map((m) => [
          formatMonth(m.from),
          m.sun,
          m.unlit,
          m.lit,
          ...(laying.shortOf ? [m.hensUnlit ?? '–', m.hensLit ?? '–'] : []),
        ]),
      ),
    laying &&
      table(
        ['laying year from', 'eggs', 'of a hen that lives', 'feed a dozen', 'its cost'],
        laying.years.map((y) => [
          near(y.from),
          y.eggs,
          y.eggsPerHen,
          y.feedPerDozen,
          y.feedCostPerDozen ?? '',
        ]),
      ),
    laying &&
      table(
        ['week from', 'age', 'eggs'],
        laying.weeks
          .filter((_, i) => i < 8 || i % 4 === 0)
          .map((w) => [near(w.from), `${w.ageWeeks} wk`, w.eggs]),
      ),
    laying &&
      table(
        ['light from', 'wanted', 'natural', 'lamp'],
        lightFrom(laying.light, plan.today)
          .slice(0, 20)
          .map((l) => [near(l.from), l.wanted, l.natural, l.add]),
      ),
    section(
      'Bill',
      table(
        ['', 'amount', 'price', 'cost'],
        bill.lines.map(({ label, amount, price, cost }) => [
          label,
          amount,
          price === undefined ? 'no price given' : sayPrice(price, amount.unit, farm),
          cost,
        ]),
      ),
    ),
    facts(bill.total, bill.perBird, bill.perKgLive, bill.perKgDressed, bill.perDozen),
    ...(bill.perBird ? [] : [`What one costs is not known yet: ${bill.leftOut.join(', ')}.`]),
    section(
      `Tasks, ${formatHours(plan.tasks.hoursInAll.value)} in all`,
      table(
        ['start', 'end', 'start no later than', 'hours', '', 'waits for'],
        plan.tasks.tasks.map((t) => [
          near(t.start),
          near(t.end),
          t.alreadyLate ? 'LATE' : near(t.latestStart),
          formatHours(t.hours),
          t.name,
          t.waitsFor.join('; '),
        ]),
      ),
    ),
    section('Cautions', cautionsText(plan.cautions, tables)),
    'Every number opens with --explain, to its formula, inputs and source.',
  ]
    .filter((part) => part !== undefined && part !== '')
    .join('\n');
}

/** Each day of processing at home: how many, from when until when, and who. */
const processingText = (
  { processingDays, slowest }: NonNullable<BatchPlan['leaving']>,
  near: (iso: string) => string,
  hour: (h: number) => string,
): string =>
  [
    ...processingDays.flatMap(({ on, birds, fromH, untilH, who }) =>
      fromH === undefined || untilH === undefined
        ? []
        : [`${near(on)}: ${birds} birds, ${hour(fromH)} to ${hour(untilH)}, ${who}.`],
    ),
    ...(slowest === undefined ? [] : [`What holds it up is ${slowest}.`]),
  ]
    .map((line) => paragraph(line, '  '))
    .join('\n');

/** Candidate weeks, best first. */
export function printArrivals(weeks: readonly ArrivalWeek[], reader: DateReader): string {
  const ranked = [...weeks].sort((a, b) => a.rank - b.rank);
  return drawTable(
    ['rank', 'arrival', 'week', 'out', 'leaves', 'why'],
    ranked.map((w) => [
      String(w.rank),
      formatDate(w.arrivalDate, reader),
      gradeOf(w.score),
      w.moveOutDate ? formatDate(w.moveOutDate, reader) : '–',
      formatDate(w.leavingDate, reader),
      w.reasons
        .filter((r) => 0 < r.points)
        .map((r) => r.text)
        .join('\n') || 'Nothing against it.',
    ]),
  );
}

/** 2.1 → 2.1 lb feed per lb live weight. */
function conversionText(conversion: Quantity, reader: Reader): string {
  const kg = unitLabel('kg', reader.units);
  return `${formatValue(conversion.value, conversion.unit, reader)} ${kg} feed per ${kg} live weight`;
}
