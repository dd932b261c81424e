import {
  addDays,
  daysBetween,
  daysOfYear,
  isPlainDate,
  weekdayOf,
  type PlainDate,
} from '../calendar/plain-date.js';
import type { Formula } from '../explain/formula.js';
import { input, quantity, type NumberQuantity } from '../explain/quantity.js';
import { MAX_FINDER_DAYS } from '../farm/bounds.js';
import type { FarmPicture } from '../farm/picture.js';
import { FieldError } from '../problems/field-problem.js';
import type { MoveOutRule } from '../tables/bird-tables.js';
import type { Tables } from '../tables/tables.js';
import { formatDate, type DateReader } from '../units/dates.js';
import { expectedWeather } from '../weather/climate.js';
import { reasonsOf } from './arrival-reasons.js';
import { dateText, type ArrivalReason, type CandidateWeek } from './candidate-week.js';
import { valuesOf } from '../tables/judgements.js';
import { batchRequest } from './batch-request.js';
import { checkBatch } from './check-batch.js';
import { lifeOf, type Life } from './life.js';
import type { YearOfLows } from '../weather/by-frost-dates.js';
import { expectedNights, nightsOfPlace } from './expected-nights.js';
import { chanceOfColdFirstNights, coldFirstNights, goesBy, type FirstNights } from './move-out.js';
import { frostDays } from './place-frost.js';
import type { PlanRequest } from './request.js';
import { arrivalsFor, rightAges } from './slot-weight.js';
import { gradeOf, weekInWords } from './week-in-words.js';

export const arrivalFormulas = {
  score: {
    id: 'arrival-score',
    title: 'Points of an arrival week',
    words:
      'A hundred, less points for everything that speaks against the week. How many each is worth is a judgment.',
    symbols: 'S = max(0, 100 − Σ p)',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

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

/**
 * Every candidate arrival week of a span, scored and ranked, with each reason in words.
 *
 * The birds' lives are worked out once; only what depends on the calendar is done for each week.
 * @throws FieldError when the span is not two dates in order, or longer than two years
 */
export function findArrivals(
  picture: FarmPicture,
  tables: Tables,
  batchId: string,
  search: ArrivalSearch,
): ArrivalWeek[] {
  checkSearch(search);
  const request = batchRequest(picture, tables, batchId);
  const first = nextWeekday(search.from, search.weekday ?? 3);
  checkBatch({ ...request, batch: { ...withoutFixedDates(request).batch, arrivalDate: first } });
  const free = withoutFixedDates(request);
  const life = lifeOf({ ...free.batch, arrivalDate: first }, request.tables);
  const points = valuesOf(request.tables.judgements.arrival);
  const place = nightsOfPlace(request.climate, request.farm, request.tables);
  const frost = frostDays(request, request.tables);
  const slotted = againstSlot(request, points.slotMissed);
  const weeks: Scored[] = [];
  for (let date = first; date <= search.to; date = addDays(date, 7)) {
    weeks.push(slotted(scoreWeek({ request: free, points, place, frost }, life, date)));
  }
  const ranked = [...weeks].sort(
    (a, b) => b.score - a.score || (a.arrivalDate < b.arrivalDate ? -1 : 1),
  );
  const rank = new Map(ranked.map((week, k) => [week.arrivalDate, k + 1]));
  return weeks.map((week) => ({ ...week, rank: rank.get(week.arrivalDate)! }));
}

type Scored = Omit<ArrivalWeek, 'rank'>;

/** Takes points off weeks whose birds are not right for the slot that is booked. */
function againstSlot(request: PlanRequest, points: number): (week: Scored) => Scored {
  const { batch, tables } = request;
  if (batch.slotDate === undefined) return (week) => week;
  const span = arrivalsFor(batch.slotDate, rightAges(batch, tables), tables);
  const [from, to] = [String(span.from.value), String(span.to.value)];
  const say = (date: PlainDate): string => dateText(date, request);
  const reason: ArrivalReason = {
    code: 'slot',
    points,
    text: `They would not be right for the slot on ${say(batch.slotDate)}: for that they come between ${say(from)} and ${say(to)}.`,
  };
  return (week) =>
    from <= week.arrivalDate && week.arrivalDate <= to
      ? week
      : {
          ...week,
          score: Math.max(0, Math.round(week.score - points)),
          reasons: [...week.reasons, reason],
        };
}

/** Points of a week, opened to what took them off and to the judgments behind it. */
export const scoreOf = (
  { score, reasons }: ArrivalWeek,
  { judgements }: Pick<Tables, 'judgements'>,
): NumberQuantity =>
  quantity(
    'Points of the week',
    score,
    'count',
    arrivalFormulas.score,
    reasons.filter(({ points }) => 0 < points).map((r) => input(r.text, r.points, 'count', 'p')),
    { rows: Object.values(judgements.arrival) },
  );

/** Answers "why not that week?" against the best one. */
export function whyNot(
  weeks: readonly ArrivalWeek[],
  arrivalDate: PlainDate,
  reader: DateReader,
): string {
  const week = weeks.find(
    (w) => w.arrivalDate <= arrivalDate && arrivalDate < addDays(w.arrivalDate, 7),
  );
  const best = weeks.find((w) => w.rank === 1);
  if (!week || !best) return 'That week is not in the span that was searched.';
  if (week === best) return `${formatDate(week.arrivalDate, reader)} is the best week of the span.`;
  const against = week.reasons.filter((r) => 0 < r.points).sort((a, b) => b.points - a.points);
  const because =
    against.length === 0
      ? 'Nothing speaks against it; it only comes later.'
      : against.map((r) => r.text).join(' ');
  const [here, there] = [week, best].map(({ arrivalDate }) => formatDate(arrivalDate, reader));
  return `${here} is ${weekInWords(week.score)}; ${there} is the best${gradeOf(best.score) === gradeOf(week.score) ? ', by little' : ''}. ${because}`;
}

/** A batch whose dates follow from its arrival. */
export function withoutFixedDates(request: PlanRequest): PlanRequest {
  const {
    moveOutDate: _move,
    orderDate: _order,
    slotDate: _slot,
    slotBirds: _b,
    ...batch
  } = request.batch;
  return { ...request, batch };
}

/** One week of arrival, with what its points hang on. */
export function scoreWeek(
  {
    request,
    points,
    place,
    frost,
  }: Pick<CandidateWeek, 'request' | 'points' | 'frost'> & { readonly place: YearOfLows },
  life: Life,
  arrivalDate: PlainDate,
): Omit<ArrivalWeek, 'rank'> {
  const { climate, tables, batch } = request;
  // The end of a laying year does not bear on when chicks should come.
  const days =
    life.firstEggAgeDays === undefined
      ? life.days
      : Math.min(life.days, life.firstEggAgeDays - life.arrivalAgeDays + 1);
  const dayOfYear = daysOfYear(arrivalDate, days);
  const weather = expectedWeather(climate, { dayOfYear });
  const count = tables.judgements.birds.moveOutNights.value;
  const first = { nights: expectedNights(place, dayOfYear), count };
  const bounded = { ...life, days };
  const {
    rule,
    day: moveDay,
    tooFewDaysOut,
  } = goesBy({ ...batch, arrivalDate }, bounded, tables, first);
  const leavingDate = addDays(arrivalDate, days - 1);
  const moveOutDate = moveDay === undefined ? undefined : addDays(arrivalDate, moveDay);
  const moveOutChance =
    moveDay === undefined
      ? undefined
      : 1 - chanceOfColdFirstNights(bounded, rule, first, moveDay, tables);
  const at: CandidateWeek = {
    request,
    points,
    life,
    arrivalDate,
    leavingDate,
    moveDay,
    tooFewDaysOut,
    moveOutDate,
    moveOutChance,
    ...coldNightsOf(bounded, rule, first, moveDay),
    weather,
    frost,
    earliest: Math.max(0, rule.fromDay - life.arrivalAgeDays),
  };
  const reasons = reasonsOf(at);
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

function coldNightsOf(
  life: Life,
  rule: MoveOutRule,
  first: FirstNights,
  moveDay: number | undefined,
): Pick<CandidateWeek, 'coldNights' | 'laterColdNights'> {
  if (moveDay === undefined) return { coldNights: undefined, laterColdNights: undefined };
  const coldNights = coldFirstNights(life, rule, first, moveDay);
  const all = coldFirstNights(life, rule, { ...first, count: life.days }, moveDay);
  return { coldNights, laterColdNights: all - coldNights };
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
