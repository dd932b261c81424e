import {
  addDays,
  daysBetween,
  dayOfYear,
  daysOfYear,
  isPlainDate,
  weekdayOf,
  yearOf,
  type PlainDate,
} from '../calendar/plain-date.js';
import { MAX_FINDER_DAYS } from '../farm/bounds.js';
import { facilityOf } from '../farm/facility.js';
import type { Away, Person } from '../farm/farm.js';
import { spaceRowAt } from '../poultry/space.js';
import { FieldError } from '../problems/field-problem.js';
import { defaultRow, rowById } from '../tables/tables.js';
import { expectedWeather, shareOfYearsAtLeast } from '../weather/climate.js';
import { formatShortDate, formatValue } from '../units/format.js';
import { checkBatch } from './check-batch.js';
import { lifeOf, type Life } from './life.js';
import { moveOutIndex, moveOutRuleOf } from './move-out.js';
import { BROODER_DAYS_AFTER, BROODER_DAYS_BEFORE, overlaps } from './occupancy.js';
import type { PlanRequest } from './request.js';

/** One thing that speaks for or against a week. Points are taken off a hundred. */
export interface ArrivalReason {
  readonly code:
    'nights' | 'places' | 'room' | 'heat' | 'people' | 'cold' | 'shipping' | 'lead-time';
  readonly points: number;
  readonly text: string;
}

export interface ArrivalWeek {
  readonly arrivalDate: PlainDate;
  readonly score: number;
  readonly rank: number;
  readonly moveOutDate?: PlainDate;
  readonly moveOutChance?: number;
  readonly leavingDate: PlainDate;
  readonly reasons: readonly ArrivalReason[];
}

export interface ArrivalSearch {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** ISO weekday on which the box comes, 1 Monday to 7 Sunday. Wednesday when left out. */
  readonly weekday?: number;
}

/** Points a week loses at most for each kind of reason: judgements, open to change. */
const POINTS = {
  neverWarm: 40,
  perDayHeld: 1,
  heldMost: 20,
  unsureNights: 12,
  placeTaken: 30,
  brooderTooSmall: 15,
  heatBegins: 8,
  heatSerious: 20,
  everybodyAway: 40,
  somebodyAway: 8,
  processedAfterFrost: 8,
  processedInCold: 15,
  notDelivered: 30,
  frozenBox: 12,
  past: 100,
  shortNotice: 15,
} as const;

/** Days that are usual between ordering and arrival; sooner is hard to get. */
const USUAL_LEAD_DAYS = 28;
/** A box travelling on a day with a mean low under this is at risk, °C. */
const COLD_BOX_C = -5;
/** Working outdoors at processing is called cold when the day's high stays under this, °C. */
const COLD_WORK_C = 5;

/**
 * Every candidate arrival week of a span, scored and ranked, with each reason in words.
 *
 * The birds' lives are worked out once; only what depends on the calendar is done for each week.
 * @throws FieldError when the span is not two dates in order, or longer than two years
 */
export function findArrivals(request: PlanRequest, search: ArrivalSearch): ArrivalWeek[] {
  checkSearch(search);
  const first = nextWeekday(search.from, search.weekday ?? 3);
  checkBatch({ ...request, batch: { ...withoutFixedDates(request).batch, arrivalDate: first } });
  const life = lifeOf(request.batch, request.tables);
  const weeks: Omit<ArrivalWeek, 'rank'>[] = [];
  for (let date = first; date <= search.to; date = addDays(date, 7)) {
    weeks.push(scoreWeek(withoutFixedDates(request), life, date));
  }
  const ranked = [...weeks].sort(
    (a, b) => b.score - a.score || (a.arrivalDate < b.arrivalDate ? -1 : 1),
  );
  const rank = new Map(ranked.map((week, k) => [week.arrivalDate, k + 1]));
  return weeks.map((week) => ({ ...week, rank: rank.get(week.arrivalDate)! }));
}

/** Answers "why not that week?" against the best one. */
export function whyNot(weeks: readonly ArrivalWeek[], arrivalDate: PlainDate): string {
  const week = weeks.find(
    (w) => w.arrivalDate <= arrivalDate && arrivalDate < addDays(w.arrivalDate, 7),
  );
  const best = weeks.find((w) => w.rank === 1);
  if (!week || !best) return 'That week is not in the span that was searched.';
  if (week === best)
    return `${formatShortDate(week.arrivalDate)} is the best week of the span, with ${week.score} points.`;
  const against = week.reasons.filter((r) => 0 < r.points).sort((a, b) => b.points - a.points);
  const because =
    against.length === 0
      ? 'Nothing speaks against it; it only comes later.'
      : against.map((r) => r.text).join(' ');
  return `${formatShortDate(week.arrivalDate)} has ${week.score} points, ${formatShortDate(best.arrivalDate)} has ${best.score}. ${because}`;
}

function withoutFixedDates(request: PlanRequest): PlanRequest {
  const { moveOutDate: _move, orderDate: _order, ...batch } = request.batch;
  return { ...request, batch };
}

function scoreWeek(
  request: PlanRequest,
  life: Life,
  arrivalDate: PlainDate,
): Omit<ArrivalWeek, 'rank'> {
  const { climate, tables, batch } = request;
  // The end of a laying year does not bear on when chicks should come.
  const days =
    life.firstEggAgeDays === undefined
      ? life.days
      : Math.min(life.days, life.firstEggAgeDays - life.arrivalAgeDays + 1);
  const weather = expectedWeather(climate, { dayOfYear: daysOfYear(arrivalDate, days) });
  const rule = moveOutRuleOf(batch, life, tables);
  const moveDay = moveOutIndex({ ...batch, arrivalDate }, { ...life, days }, rule, weather.minC);
  const leavingDate = addDays(arrivalDate, days - 1);
  const moveOutDate = moveDay === undefined ? undefined : addDays(arrivalDate, moveDay);
  const moveOutChance =
    moveOutDate === undefined
      ? undefined
      : shareOfYearsAtLeast(climate, dayOfYear(moveOutDate), rule.nightLowC);
  const at = {
    request,
    life,
    arrivalDate,
    leavingDate,
    moveDay,
    moveOutDate,
    moveOutChance,
    weather,
    earliest: Math.max(0, rule.fromDay - life.arrivalAgeDays),
  };
  const reasons = [
    nights(at),
    places(at),
    room(at),
    heat(at),
    ...people(at),
    cold(at),
    ...shipping(at),
    leadTime(at),
  ].filter((r) => r !== undefined);
  const lost = reasons.reduce((sum, r) => sum + r.points, 0);
  return {
    arrivalDate,
    score: Math.max(0, Math.round(100 - lost)),
    ...(moveOutDate === undefined ? {} : { moveOutDate }),
    ...(moveOutChance === undefined
      ? {}
      : { moveOutChance: Math.round(moveOutChance * 100) / 100 }),
    leavingDate,
    reasons,
  };
}

interface At {
  readonly request: PlanRequest;
  readonly life: Life;
  readonly arrivalDate: PlainDate;
  readonly leavingDate: PlainDate;
  readonly moveDay: number | undefined;
  readonly moveOutDate: PlainDate | undefined;
  readonly moveOutChance: number | undefined;
  readonly weather: ReturnType<typeof expectedWeather>;
  readonly earliest: number;
}
type MaybeReason = ArrivalReason | undefined;

function nights({ moveDay, earliest, moveOutDate, moveOutChance, life }: At): ArrivalReason {
  if (moveDay === undefined) {
    return {
      code: 'nights',
      points: POINTS.neverWarm,
      text: 'No nights are warm enough to move out before the end; the birds stay indoors.',
    };
  }
  const held = moveDay - earliest;
  const unsure = moveOutChance === undefined ? 0 : (1 - moveOutChance) * POINTS.unsureNights;
  const chance =
    moveOutChance === undefined
      ? ''
      : `; warm enough in ${Math.round(moveOutChance * 100)} % of years`;
  const when = `out on ${formatShortDate(moveOutDate!)} at ${life.arrivalAgeDays + moveDay} days${chance}`;
  return {
    code: 'nights',
    points: Math.min(POINTS.heldMost, held * POINTS.perDayHeld) + unsure,
    text:
      held === 0
        ? `Nights are warm as soon as the birds are old enough: ${when}.`
        : `Nights keep the birds in the brooder ${held} days longer than their age asks: ${when}.`,
  };
}

function places({
  request,
  arrivalDate,
  moveDay,
  moveOutDate,
  leavingDate,
  life,
}: At): MaybeReason {
  const { batch, occupied, facilities } = request;
  const lastInBrooder = addDays(arrivalDate, moveDay ?? life.days - 1);
  const home = batch.purpose === 'meat' ? (batch.penId ?? batch.coopId) : batch.coopId;
  const wanted = [
    ...(batch.brooderId
      ? [
          {
            facilityId: batch.brooderId,
            from: addDays(arrivalDate, -BROODER_DAYS_BEFORE),
            to: addDays(lastInBrooder, BROODER_DAYS_AFTER),
          },
        ]
      : []),
    ...(home && moveOutDate ? [{ facilityId: home, from: moveOutDate, to: leavingDate }] : []),
  ];
  for (const want of wanted) {
    const other = occupied.find((o) => overlaps({ batchName: '', ...want }, o));
    if (!other) continue;
    const name = facilities.find((f) => f.id === want.facilityId)?.name ?? 'A place';
    return {
      code: 'places',
      points: POINTS.placeTaken,
      text: `${name} is held by ${other.batchName} until ${formatShortDate(other.to)}.`,
    };
  }
  return wanted.length === 0
    ? undefined
    : { code: 'places', points: 0, text: 'Brooder and pens are free.' };
}

function room({ request, life, moveDay, arrivalDate }: At): MaybeReason {
  const brooder = facilityOf(request.facilities, 'brooder', request.batch.brooderId);
  if (!brooder) return undefined;
  const { brooder: standards } = request.tables.space;
  const standard = request.batch.spaceStandardId
    ? rowById(standards, request.batch.spaceStandardId)
    : defaultRow(standards);
  const floorM2 = brooder.lengthM * brooder.widthM;
  const until = moveDay ?? life.days - 1;
  for (let i = 0; i < until; i++) {
    if (
      floorM2 + 1e-9 <
      life.aliveAll[i]! * spaceRowAt(standard.rows, life.arrivalAgeDays + i).floorM2
    ) {
      return {
        code: 'room',
        points: POINTS.brooderTooSmall,
        text: `${brooder.name} is outgrown on ${formatShortDate(addDays(arrivalDate, i))}, ${until - i} days before the move.`,
      };
    }
  }
  return { code: 'room', points: 0, text: `${brooder.name} is large enough until the move.` };
}

function heat({ request, life, weather }: At): MaybeReason {
  if (life.firstEggAgeDays !== undefined) return undefined;
  const { beginsC, seriousC } = request.tables.heatStress;
  const hottest = Math.max(...weather.hotMaxC.subarray(Math.max(0, weather.hotMaxC.length - 14)));
  const shown = formatValue(hottest, 'degC', request.farm);
  if (seriousC <= hottest)
    return {
      code: 'heat',
      points: POINTS.heatSerious,
      text: `Hot days of ${shown} fall in the last two weeks: serious for heavy birds.`,
    };
  if (beginsC <= hottest)
    return {
      code: 'heat',
      points: POINTS.heatBegins,
      text: `Hot days of ${shown} fall in the last two weeks: heat stress begins at ${formatValue(beginsC, 'degC', request.farm)}.`,
    };
  return {
    code: 'heat',
    points: 0,
    text: `The last two weeks stay below heat stress (hot day ${shown}).`,
  };
}

function people({ request, arrivalDate, leavingDate, life }: At): ArrivalReason[] {
  if (request.people.length === 0) return [];
  const spans = [
    { from: addDays(arrivalDate, -1), to: addDays(arrivalDate, 13), what: 'the first two weeks' },
    ...(life.firstEggAgeDays === undefined
      ? [{ from: addDays(leavingDate, -1), to: leavingDate, what: 'processing' }]
      : []),
  ];
  const reasons = spans.flatMap((span) => awayReason(request.people, span));
  return reasons.length === 0
    ? [
        {
          code: 'people',
          points: 0,
          text: 'Everybody is at home for the first two weeks and at processing.',
        },
      ]
    : reasons;
}

function awayReason(people: readonly Person[], span: Away & { what: string }): ArrivalReason[] {
  const gone = people.filter((p) => p.away.some((a) => a.from <= span.to && span.from <= a.to));
  if (gone.length === 0) return [];
  const names = gone.map((p) => p.name).join(' and ');
  return hasUnattendedDay(people, span)
    ? [
        {
          code: 'people',
          points: POINTS.everybodyAway,
          text: `Nobody is at home on some day of ${span.what}: ${names} away.`,
        },
      ]
    : [
        {
          code: 'people',
          points: POINTS.somebodyAway,
          text: `${names} ${gone.length === 1 ? 'is' : 'are'} away in ${span.what}.`,
        },
      ];
}

function hasUnattendedDay(people: readonly Person[], span: Away): boolean {
  for (let date = span.from; date <= span.to; date = addDays(date, 1)) {
    if (people.every((p) => p.away.some((a) => a.from <= date && date <= a.to))) return true;
  }
  return false;
}

function cold({ request, leavingDate, life, weather }: At): MaybeReason {
  if (life.firstEggAgeDays !== undefined) return undefined;
  const high = weather.maxC[weather.maxC.length - 1]!;
  const on = formatShortDate(leavingDate);
  if (high < COLD_WORK_C)
    return {
      code: 'cold',
      points: POINTS.processedInCold,
      text: `Processing on ${on} is cold work: an expected high of ${formatValue(high, 'degC', request.farm)}.`,
    };
  const frost = `${yearOf(leavingDate)}-${request.farm.firstFrost}`;
  const isAfter =
    isPlainDate(frost) && frost < leavingDate && request.farm.lastFrost < request.farm.firstFrost;
  return isAfter
    ? {
        code: 'cold',
        points: POINTS.processedAfterFrost,
        text: `Processing on ${on} comes after the usual first frost.`,
      }
    : { code: 'cold', points: 0, text: `Processing on ${on}, before cold weather.` };
}

function shipping({ request, arrivalDate, weather }: At): ArrivalReason[] {
  const reasons: ArrivalReason[] = [];
  if (weekdayOf(arrivalDate) === 7 || request.farm.noDeliveryDates.includes(arrivalDate)) {
    reasons.push({
      code: 'shipping',
      points: POINTS.notDelivered,
      text: `No post on ${formatShortDate(arrivalDate)}; the box would wait, and 72 hours from hatch is the limit.`,
    });
  } else if (request.farm.noDeliveryDates.includes(addDays(arrivalDate, 1))) {
    reasons.push({
      code: 'shipping',
      points: POINTS.notDelivered / 2,
      text: 'The next day is a holiday: a late box would wait over it.',
    });
  }
  if (weather.minC[0]! < COLD_BOX_C) {
    reasons.push({
      code: 'shipping',
      points: POINTS.frozenBox,
      text: `The box travels in nights of ${formatValue(weather.minC[0]!, 'degC', request.farm)}.`,
    });
  }
  return reasons.length === 0
    ? [{ code: 'shipping', points: 0, text: 'The box travels on a mild working day.' }]
    : reasons;
}

function leadTime({ request, arrivalDate }: At): MaybeReason {
  const lead = daysBetween(request.today, arrivalDate);
  if (lead < 1) return { code: 'lead-time', points: POINTS.past, text: 'That date has passed.' };
  if (lead < USUAL_LEAD_DAYS)
    return {
      code: 'lead-time',
      points: POINTS.shortNotice,
      text: `Only ${lead} days from today: the birds may be sold out and the brooder not ready.`,
    };
  return undefined;
}

function checkSearch({ from, to, weekday }: ArrivalSearch): void {
  const date = (field: string, given: string) =>
    isPlainDate(given)
      ? []
      : [
          {
            field,
            code: 'not-a-date' as const,
            given,
            fix: 'Write year-month-day, such as 2027-04-21.',
          },
        ];
  const problems = [...date('from', from), ...date('to', to)];
  if (0 < problems.length) throw new FieldError(problems);
  const span = daysBetween(from, to);
  if (span < 0 || MAX_FINDER_DAYS < span) {
    throw new FieldError([
      {
        field: 'to',
        code: 'out-of-bounds',
        given: to,
        min: from,
        max: addDays(from, MAX_FINDER_DAYS),
        fix: 'Search a span of up to two years.',
      },
    ]);
  }
  if (weekday !== undefined && !(Number.isInteger(weekday) && 1 <= weekday && weekday <= 7)) {
    throw new FieldError([
      {
        field: 'weekday',
        code: 'out-of-bounds',
        given: weekday,
        min: 1,
        max: 7,
        fix: 'Give 1 for Monday to 7 for Sunday.',
      },
    ]);
  }
}

function nextWeekday(from: PlainDate, weekday: number): PlainDate {
  return addDays(from, (weekday - weekdayOf(from) + 7) % 7);
}
