import { dateIn } from '../calendar/month-day.js';
import { dayLengthH } from '../calendar/day-length.js';
import { addDays, daysBetween, daysOfYear, weekdayOf, yearOf } from '../calendar/plain-date.js';
import { facilityOf } from '../farm/facility.js';
import type { Away, Person } from '../farm/farm.js';
import { straightLines } from '../maths/straight-lines.js';
import { spaceRowAt } from '../poultry/space.js';
import { formatValue } from '../units/format.js';
import { brooderNoon, heaterReason, hotBox, hotCrates, lastHeat } from './arrival-heat.js';
import {
  dateText,
  daysText,
  type ArrivalReason,
  type CandidateWeek,
  type MaybeReason,
} from './candidate-week.js';
import { homeSpaceOf } from './home-space.js';
import { noPostOn } from './no-post.js';
import { coopShareOf } from './coop-room.js';
import { meetingOf } from './occupancy.js';
import { sayNights } from './say-ways-out.js';
import { spaceStandardOf } from './space-standard.js';

/** Everything that speaks for or against a week, in words. */
export function reasonsOf(week: CandidateWeek): ArrivalReason[] {
  return [
    week.life.isStarted ? firstNights(week) : nights(week),
    places(week),
    room(week),
    heaterReason(week),
    brooderNoon(week),
    pens(week),
    lastHeat(week),
    ...people(week),
    cold(week),
    laterNights(week),
    firstLight(week),
    ...shipping(week),
    leadTime(week),
  ].filter((reason) => reason !== undefined);
}

function nights({
  points,
  request,
  moveDay,
  tooFewDaysOut,
  earliest,
  moveOutDate,
  coldNights,
  arrivalDate,
  leavingDate,
  life,
}: CandidateWeek): ArrivalReason {
  if (moveDay === undefined) {
    const why =
      tooFewDaysOut === undefined
        ? 'No nights are warm enough to move out before the end'
        : `Nights are warm enough only ${daysText(tooFewDaysOut)} before they leave, too late to be worth a move`;
    return {
      code: 'nights',
      points: points.neverWarm,
      text: `${why}; the birds stay indoors, all ${daysText(daysBetween(arrivalDate, leavingDate))}.`,
    };
  }
  const held = moveDay - earliest;
  const { moveOutNights } = request.tables.judgements.birds;
  const chance =
    coldNights === undefined
      ? ''
      : `; ${sayNights(coldNights)} of the first ${moveOutNights.value} too cold for them`;
  const unsure = ((coldNights ?? 0) / moveOutNights.value) * points.unsureNights;
  const when = `out on ${dateText(moveOutDate!, request)} at ${life.arrivalAgeDays + moveDay} days${chance}`;
  return {
    code: 'nights',
    points: Math.min(points.heldMost, held * points.perDayHeld) + unsure,
    text:
      held === 0
        ? `Nothing keeps the birds in the brooder longer than their age asks: ${when}.`
        : `Nights keep the birds in the brooder ${daysText(held)} longer than their age asks: ${when}.`,
  };
}

/** Grown birds come in any week; what a cold one asks is a closed coop. */
function firstNights({ points, request, coldNights = 0 }: CandidateWeek): ArrivalReason {
  const { moveOutNights } = request.tables.judgements.birds;
  return {
    code: 'nights',
    points: (coldNights / moveOutNights.value) * points.unsureNights,
    text: `In the coop ${sayNights(coldNights)} of the first ${moveOutNights.value} ${Math.round(coldNights) < 2 ? 'is' : 'are'} too cold for birds of their age.`,
  };
}

/** Fall birds meet nights that get colder while they are out. */
function laterNights({ points, laterColdNights = 0 }: CandidateWeek): MaybeReason {
  if (Math.round(laterColdNights) === 0) return undefined;
  return {
    code: 'later-nights',
    points: Math.min(points.laterNightsMost, laterColdNights * points.perLaterNight),
    text: `After those ${sayNights(laterColdNights)} ${Math.round(laterColdNights) === 1 ? 'is' : 'are'} too cold for birds of their age without heat or a closed shelter.`,
  };
}

/** Share of the lay below which short days are worth a word; a choice of words, no source. */
const SHORT_DAY = 0.9;

/** Pullets that are grown in the short days wait with their eggs. */
function firstLight({ points, request, life, arrivalDate }: CandidateWeek): MaybeReason {
  if (life.firstEggAgeDays === undefined) return undefined;
  const { farm, tables, batch, facilities } = request;
  const date = addDays(arrivalDate, life.firstEggAgeDays - life.arrivalAgeDays);
  const [dayOfYear] = daysOfYear(date, 1);
  const sunH = dayLengthH({ latitudeDeg: farm.latitudeDeg, dayOfYear: dayOfYear! });
  const coop = facilityOf(facilities, 'coop', batch.coopId);
  const { points: lay } = tables.light.response;
  const left = straightLines(
    lay.map(({ dayH }) => dayH),
    lay.map(({ share }) => share),
  )(Math.max(sunH, coop?.lightH ?? 0));
  const when = `The first eggs come on ${dateText(date, request)}, with ${formatValue(sunH, 'h', farm)} of daylight`;
  return {
    code: 'light',
    points: (1 - left) * points.darkFirstEggs,
    text: left < SHORT_DAY ? `${when}: short days hold eggs back.` : `${when}.`,
  };
}

function places({
  points,
  request,
  arrivalDate,
  moveDay,
  moveOutDate,
  leavingDate,
  life,
}: CandidateWeek): MaybeReason {
  const { batch, occupied, facilities } = request;
  const { daysBefore, daysAfter } = request.tables.judgements.birds;
  const lastInBrooder = addDays(arrivalDate, moveDay ?? life.days - 1);
  const home = batch.purpose === 'meat' ? (batch.penId ?? batch.coopId) : batch.coopId;
  const wanted = [
    ...(batch.brooderId
      ? [
          {
            facilityId: batch.brooderId,
            from: addDays(arrivalDate, -daysBefore.value),
            to: addDays(lastInBrooder, daysAfter.value),
          },
        ]
      : []),
    ...(home && moveOutDate
      ? [
          {
            ...{ facilityId: home, from: moveOutDate, to: leavingDate },
            ...coopShareOf({ ...request, life }, moveDay ?? 0),
          },
        ]
      : []),
  ];
  for (const want of wanted) {
    const [other] = meetingOf({ batchName: '', ...want }, occupied).inTheWay;
    if (!other) continue;
    const name = facilities.find((f) => f.id === want.facilityId)?.name ?? 'A place';
    return {
      code: 'places',
      points: points.placeTaken,
      text: `${name} is held by ${other.batchName} until ${dateText(other.to, request)}.`,
    };
  }
  return wanted.length === 0
    ? undefined
    : {
        code: 'places',
        points: 0,
        text: life.hasBrooder ? 'Brooder and pens are free.' : 'Their place is free.',
      };
}

function room({ points, request, life, moveDay, arrivalDate }: CandidateWeek): MaybeReason {
  const brooder = facilityOf(request.facilities, 'brooder', request.batch.brooderId);
  if (!brooder) return undefined;
  const standard = spaceStandardOf(request);
  const floorM2 = brooder.lengthM * brooder.widthM;
  const until = moveDay ?? life.days - 1;
  for (let i = 0; i < until; i++) {
    if (
      floorM2 + 1e-9 <
      life.aliveAll[i]! * spaceRowAt(standard.rows, life.arrivalAgeDays + i).floorM2
    ) {
      return {
        code: 'room',
        points: points.brooderTooSmall,
        text: `${brooder.name} is outgrown on ${dateText(addDays(arrivalDate, i), request)}, ${daysText(until - i)} before the move.`,
      };
    }
  }
  return { code: 'room', points: 0, text: `${brooder.name} is large enough until the move.` };
}

function pens({ points, request, life, moveDay }: CandidateWeek): MaybeReason {
  const pen = facilityOf(request.facilities, 'field-pen', request.batch.penId);
  if (!pen || moveDay === undefined || life.firstEggAgeDays !== undefined) return undefined;
  const needM2 = life.aliveAll[moveDay]! * homeSpaceOf({ ...request, life }).floorM2;
  const haveM2 = pen.count * pen.floorM2;
  const shown = (m2: number) => formatValue(m2, 'm2', request.farm);
  return needM2 <= haveM2 + 1e-9
    ? { code: 'pens', points: 0, text: `${pen.name}: room enough outdoors.` }
    : {
        code: 'pens',
        points: points.pensShort,
        text: `${pen.name} gives ${shown(haveM2)} of the ${shown(needM2)} the birds need outdoors.`,
      };
}

function people({
  points,
  request,
  arrivalDate,
  leavingDate,
  moveOutDate,
  life,
}: CandidateWeek): ArrivalReason[] {
  if (request.people.length === 0) return [];
  const { eggs } = life;
  const mindedBefore = eggs ? eggs.species.incubationDays - eggs.species.lockdownDay : 1;
  const spans = [
    {
      from: addDays(arrivalDate, -mindedBefore),
      to: addDays(arrivalDate, points.mindedFirstDays),
      what: life.eggs ? 'the hatch and the first two weeks' : 'the first two weeks',
    },
    ...(moveOutDate === undefined
      ? []
      : [{ from: moveOutDate, to: moveOutDate, what: 'the move outdoors' }]),
    ...(life.firstEggAgeDays === undefined
      ? [{ from: addDays(leavingDate, -1), to: leavingDate, what: 'processing' }]
      : []),
  ];
  const reasons = spans.flatMap((span) => awayReason(request.people, span, points));
  return reasons.length === 0
    ? [
        {
          code: 'people',
          points: 0,
          text: 'Everybody is at home for the first two weeks, the move outdoors and processing.',
        },
      ]
    : reasons;
}

function awayReason(
  people: readonly Person[],
  span: Away & { what: string },
  points: CandidateWeek['points'],
): ArrivalReason[] {
  const gone = people.filter((p) => p.away.some((a) => a.from <= span.to && span.from <= a.to));
  if (gone.length === 0) return [];
  const names = gone.map((p) => p.name).join(' and ');
  return hasUnattendedDay(people, span)
    ? [
        {
          code: 'people',
          points: points.everybodyAway,
          text: `Nobody is at home on some day of ${span.what}: ${names} away.`,
        },
      ]
    : [
        {
          code: 'people',
          points: points.somebodyAway,
          text: `${names} ${gone.length === 1 ? 'is' : 'are'} away during ${span.what}.`,
        },
      ];
}

function hasUnattendedDay(people: readonly Person[], span: Away): boolean {
  for (let date = span.from; date <= span.to; date = addDays(date, 1)) {
    if (people.every((p) => p.away.some((a) => a.from <= date && date <= a.to))) return true;
  }
  return false;
}

function cold({ points, request, leavingDate, life, weather, frost }: CandidateWeek): MaybeReason {
  if (life.firstEggAgeDays !== undefined) return undefined;
  const high = weather.maxC[weather.maxC.length - 1]!;
  const on = `${dateText(leavingDate, request)}${holidayThere(leavingDate, request)}`;
  const expected = `an expected high of ${formatValue(high, 'degC', request.farm)}`;
  if (high < points.coldWorkC)
    return {
      code: 'cold',
      points: points.processedInCold,
      text: `Processing on ${on} is cold work: ${expected}.`,
    };
  const first = dateIn(yearOf(leavingDate), frost.first);
  const hasFrost = frost.last < frost.first;
  if (hasFrost && first < leavingDate)
    return {
      code: 'cold',
      points: points.processedAfterFrost,
      text: `Processing on ${on} comes after the usual first frost.`,
    };
  const isNear = hasFrost && daysBetween(leavingDate, first) <= FROST_NEAR_DAYS;
  return {
    code: 'cold',
    points: 0,
    text: isNear
      ? `Processing on ${on}, before cold weather.`
      : `Processing on ${on} is not cold work: ${expected}.`,
  };
}

/** Cold weather is worth naming as near within as many weeks; a choice of words, no source. */
const FROST_NEAR_DAYS = 42;

/** Said of a day on which a hired processor may not work. */
function holidayThere(date: string, { batch, publicHolidays }: CandidateWeek['request']): string {
  if (batch.processing !== 'hired') return '';
  const holiday = publicHolidays?.find((each) => each.date === date);
  return holiday === undefined ? '' : ` (${holiday.name}: ask whether the processor works)`;
}

function shipping(week: CandidateWeek): ArrivalReason[] {
  const { points, request, arrivalDate, weather, life } = week;
  if (life.eggs) return [];
  // Grown birds are fetched in crates and come by no post.
  if (life.isStarted) return [hotCrates(week) ?? MILD_CRATES];
  const reasons: ArrivalReason[] = [];
  const none = noPostOn(arrivalDate, request);
  const next = noPostOn(addDays(arrivalDate, 1), request);
  if (none) {
    reasons.push({
      code: 'shipping',
      points: points.notDelivered,
      text: `No post on ${dateText(arrivalDate, request)} (${none.because}); the box would wait, and 72 hours from hatch is the limit.`,
    });
  } else if (next !== undefined && weekdayOf(arrivalDate) !== SATURDAY) {
    reasons.push({
      code: 'shipping',
      points: points.notDelivered / 2,
      text: `The next day has no post (${next.because}): a late box would wait over it.`,
    });
  }
  const hot = hotBox(week);
  if (hot) reasons.push(hot);
  if (weather.minC[0]! < points.coldBoxC) {
    reasons.push({
      code: 'shipping',
      points: points.frozenBox,
      text: `The box travels in nights of ${formatValue(weather.minC[0]!, 'degC', request.farm)}.`,
    });
  }
  return reasons.length === 0
    ? [{ code: 'shipping', points: 0, text: 'The box travels on a mild working day.' }]
    : reasons;
}

const MILD_CRATES: ArrivalReason = {
  code: 'shipping',
  points: 0,
  text: 'They travel in crates on a mild day.',
};

/** The day before every Sunday without post: no reason against one week more than another. */
const SATURDAY = 6;

function leadTime({ points, request, arrivalDate, life }: CandidateWeek): MaybeReason {
  const lead = daysBetween(request.today, arrivalDate);
  if (lead < 1) return { code: 'lead-time', points: points.past, text: 'That date has passed.' };
  if (life.eggs) {
    const needs = life.eggs.species.incubationDays + life.eggs.oldestDays;
    return needs <= lead
      ? undefined
      : {
          code: 'lead-time',
          points: points.shortNotice,
          text: `Only ${lead} days from today: gathering the eggs and hatching them takes ${needs}.`,
        };
  }
  if (lead < points.usualLeadDays)
    return {
      code: 'lead-time',
      points: points.shortNotice,
      text: `Only ${lead} days from today: the birds may be sold out and ${life.hasBrooder ? 'the brooder' : 'the coop'} not ready.`,
    };
  return undefined;
}
