import type { PlainDate } from '../../calendar/plain-date.js';
import type { GrassReading } from '../../farm/paddock.js';
import { isOddReading } from '../../pasture/odd-reading.js';
import { issue, type PlanIssue } from '../../problems/plan-issue.js';
import { pastureContext, type PastureContext } from './pasture-context.js';
import type { PastureRequest } from './pasture-request.js';
import { chooseMoves, type Chosen } from './surplus.js';

/** A height that is hard to believe, with what was expected. */
export interface OddReading {
  readonly reading: GrassReading;
  readonly paddock: string;
  readonly expectedCm: number;
}

/** A height that a plan does not go by, as whoever reads the plan can find it again. */
export interface LeftOutReading {
  readonly id: string;
  readonly paddockId: string;
  readonly date: PlainDate;
  /** What stood there on its day, by the plan. */
  readonly expectedCm: number;
}

/** A season with the readings that it does not go by. */
export interface Believed {
  readonly request: PastureRequest;
  readonly context: PastureContext;
  readonly chosen: Chosen;
  readonly leftOut: readonly OddReading[];
}

/** So often what is left is walked through again; what is odd even then goes with all of its paddock. */
const MOST_ROUNDS = 4;

/**
 * Walks through a season without heights that cannot be, such as 80 for 8: each would move all of
 * it. One that somebody said is right counts, and so do two that bear each other out.
 */
export function believed(request: PastureRequest, rounds = MOST_ROUNDS): Believed {
  const now = walked(request);
  const odd = oddReadings(now);
  if (odd.length === 0) return { ...now, leftOut: [] };
  if (rounds === 0) {
    const unsure = unsureWith(request, odd);
    return { ...walked(without(request, unsure)), leftOut: odd };
  }
  const rest = believed(without(request, odd), rounds - 1);
  if (rest.leftOut.length === 0) return { ...rest, leftOut: odd };
  // After a slip the next true height looks odd: perhaps only the earlier one is.
  const earlier = new Set(rest.leftOut.map(({ paddock }) => paddock));
  const fewer = [...rest.leftOut, ...odd.filter(({ paddock }) => !earlier.has(paddock))];
  const again = walked(without(request, fewer));
  return oddReadings(again).length === 0
    ? { ...again, leftOut: fewer }
    : { ...rest, leftOut: [...rest.leftOut, ...odd] };
}

type Walked = Omit<Believed, 'leftOut'>;

function walked(request: PastureRequest): Walked {
  const context = pastureContext(request);
  return { request, context, chosen: chooseMoves(context) };
}

const without = (request: PastureRequest, odd: readonly Pick<OddReading, 'reading'>[]) => {
  const ids = new Set(odd.map(({ reading }) => reading.id));
  return { ...request, readings: request.readings.filter(({ id }) => !ids.has(id)) };
};

const unsureWith = (
  { readings }: PastureRequest,
  odd: readonly OddReading[],
): Pick<OddReading, 'reading'>[] => {
  const paddockIds = new Set(odd.map(({ reading }) => reading.paddockId));
  return readings
    .filter(({ paddockId, isSure }) => !isSure && paddockIds.has(paddockId))
    .map((reading) => ({ reading }));
};

/** Last heights of paddocks that cannot be right and that nobody has said are. */
function oddReadings({ context: { grass, tables }, chosen: { books } }: Walked): OddReading[] {
  return grass.swards.flatMap((own, p) => {
    const { paddock, reading, leftAloneAtReading, kgPerHaCm } = own;
    const expectedAtReading = own.expectedAtReading ?? books.stoodAtReading[p];
    const kgPerHa = expectedAtReading ?? leftAloneAtReading;
    if (!reading || reading.isSure || kgPerHa === undefined) return [];
    const expectedCm = kgPerHa / kgPerHaCm;
    // Before a first reading it may have been grazed, but nothing made it taller.
    const mayBeLow = expectedAtReading === undefined && reading.heightCm < expectedCm;
    if (mayBeLow || !isOddReading(reading.heightCm, expectedCm, tables.judgements.grass)) return [];
    return [{ reading, paddock: paddock.name, expectedCm }];
  });
}

/** Heights that the plan does not go by are asked about. */
export const oddIssues = ({ context: { say }, leftOut }: Believed): PlanIssue[] =>
  leftOut.map(({ reading, paddock, expectedCm }) =>
    issue(
      'act',
      'reading-odd',
      `${paddock} was read as ${say(reading.heightCm, 'cm')} on ${say(reading.date, 'date')}, where about ${say(expectedCm, 'cm')} were expected. The plan does not go by it until it is said to be right: if it is, type it again under Pasture walk for that day and tick that it is. If it is a slip, ${reading.isOfMove ? 'it was told with a move: take that move back under The record, What was told, and tell it again' : 'delete it there and read again; if a move that was told is wrong, correct that'}.`,
    ),
  );

/** The same for whoever asks about them. */
export const leftOutOf = ({ leftOut }: Believed): LeftOutReading[] =>
  leftOut.map(({ reading: { id, paddockId, date }, expectedCm }) => ({
    ...{ id, paddockId, date, expectedCm },
  }));
