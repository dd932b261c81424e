import { ripenessOf, type Field } from './field.js';
import type { GrazingProblem } from './grazing-problem.js';
import type { Entry } from './season-books.js';

/** A paddock a herd may go into, and what lets it in. */
export interface Way {
  readonly paddock: number;
  readonly entry: Entry;
  /** Place of its entry in the order in which they are taken. */
  readonly turn: number;
  readonly ripeness: number;
  /** Headed out or grown over: left for when no leafy one is ready. */
  readonly isRank: boolean;
  /** Day after its last grazing or mowing. */
  readonly leftDay: number | undefined;
}

/** What lets a herd in, in the order in which paddocks are taken. */
const ENTRIES: readonly Entry[] = ['ready', 'first-pass', 'leaf-stage', 'at-rest', 'dormant'];

/**
 * Paddocks that a herd may enter on a morning, in the order in which they are taken: at the ready
 * height and rested; in the first pass of the year lower; as tall as they get once their first leaves
 * die; while nothing grows, and in the last round what stands nearly as tall.
 *
 * Of those that are ready the one that has just become so is taken first: a round begins anew as
 * soon as its first paddock is ready again, and what grows past it is left out, to be mown. Where
 * nobody makes hay all are grazed in turn. Of those that are not ready, and by a plain rule of all,
 * the most grown.
 *
 * @param isOut it has been on grass in this plan
 */
export function waysIn(
  problem: GrazingProblem,
  fields: readonly Field[],
  herd: number,
  day: number,
  isOut: boolean,
): Way[] {
  const need = problem.herds[herd]!.demandKg[day]!;
  const isBefore = ORDERS[problem.takes];
  const ways: Way[] = [];
  for (let paddock = 0; paddock < fields.length; paddock++) {
    const field = fields[paddock]!;
    const { sward } = field;
    if (field.stay || !isOpen(field, day) || sward.weather.isSnow[day] === 1) continue;
    const { leftDay } = field;
    const isRested = leftDay === undefined || sward.leastRestDays <= day - leftDay;
    const isGrowing = problem.growsKgPerHa <= problem.usualGrowth[paddock]![day]!;
    if (!isRested && isGrowing) continue;
    // How tall it is, is asked once, where that matters: looks ahead ask for it most of their time.
    const { mass } = field;
    const isReady = isRested && sward.turnInKgPerHa <= mass;
    if (!isReady && mass < sward.firstPassKgPerHa && mass < sward.leastEntryKgPerHa) continue;
    const entry = isReady
      ? 'ready'
      : entryOf(problem, field, { paddock, day, isOut, isGrowing, mass });
    if (!entry || (!isReady && isJustGrazed(problem, field, day))) continue;
    const above = Math.max(0, mass - sward.residualKgPerHa);
    // A herd too large for its paddocks eats a ready one up in less than a day, and hay beside it.
    const least = entry === 'ready' ? problem.judged.enterDayShare : 1;
    if (above * sward.areaHa * problem.harvestShare[0]! < least * need) continue;
    const [ripeness, isRank] = [ripenessOf(sward, mass), sward.rankKgPerHa < mass];
    putIn(
      ways,
      { paddock, entry, turn: ENTRIES.indexOf(entry), ripeness, isRank, leftDay },
      isBefore,
    );
  }
  return ways;
}

/** What has not come to its ready height again is left alone for as long as slow growth takes. */
const isJustGrazed = ({ judged }: GrazingProblem, { leftDay }: Field, day: number): boolean =>
  leftDay !== undefined && day - leftDay < judged.slowRestDays;

/** Puts a way where it is taken, after its equals: a few each morning, on which a sort is slower. */
function putIn(ways: Way[], way: Way, isBefore: (a: Way, b: Way) => boolean): void {
  let k = ways.length;
  for (; 0 < k && isBefore(way, ways[k - 1]!); k--) ways[k] = ways[k - 1]!;
  ways[k] = way;
}

const isMoreGrown = (a: Way, b: Way): boolean =>
  a.isRank === b.isRank ? b.ripeness < a.ripeness : b.isRank;

function isTakenBefore(a: Way, b: Way): boolean {
  if (a.turn !== b.turn) return a.turn < b.turn;
  return a.entry === 'ready' ? a.ripeness < b.ripeness : b.ripeness < a.ripeness;
}

/** The one that was grazed or mown longest ago. */
function isInTurn(a: Way, b: Way): boolean {
  if (a.turn !== b.turn) return a.turn < b.turn;
  const [ofA, ofB] = [a.leftDay ?? -Infinity, b.leftDay ?? -Infinity];
  return ofA === ofB ? b.ripeness < a.ripeness : ofA < ofB;
}

const ORDERS = {
  'just-ready': isTakenBefore,
  'in-turn': isInTurn,
  'most-grown': isMoreGrown,
} satisfies Record<GrazingProblem['takes'], unknown>;

/** A paddock on the morning on which it is asked for, not ready. */
interface Morning {
  readonly paddock: number;
  readonly day: number;
  readonly isOut: boolean;
  readonly isGrowing: boolean;
  readonly mass: number;
}

function entryOf(
  problem: GrazingProblem,
  field: Field,
  { paddock, day, isOut, isGrowing, mass }: Morning,
): Entry | undefined {
  const { growsKgPerHa, growthEnds, takes } = problem;
  const { sward, isPassed } = field;
  const isTall = sward.leastEntryKgPerHa <= mass;
  if (!isGrowing) {
    if (!isOut) return undefined;
    // Grass that a dry summer has put to rest is eaten off as low as in spring: it grows no taller.
    if (day < growthEnds) return sward.firstPassKgPerHa <= mass ? 'at-rest' : undefined;
    return isTall ? 'dormant' : undefined;
  }
  if (mass < sward.firstPassKgPerHa) return undefined;
  if (!isPassed && !isHeaded(field, day))
    return growsKgPerHa <= field.gain ? 'first-pass' : undefined;
  if (takes === 'most-grown' || !isTall) return undefined;
  if (hasAllLeaves(field, day)) return 'leaf-stage';
  return isOut && !growsUp(problem, field, paddock, day) ? 'dormant' : undefined;
}

/**
 * Whether a paddock is worth waiting for before winter: it still reaches its ready height, and gains
 * more than a little by then. So it is said where no winter comes.
 */
function growsUp(
  { usualGrowth, growthEnds, to, judged }: GrazingProblem,
  { mass, sward }: Field,
  paddock: number,
  day: number,
): boolean {
  if (to - 1 <= growthEnds) return true;
  let grown = mass;
  for (let i = day; i <= growthEnds; i++) grown += usualGrowth[paddock]![i]!;
  const { residualKgPerHa, turnInKgPerHa } = sward;
  const little = judged.littleGainShare * (mass - residualKgPerHa);
  // Grazed now, it would not be ready once more: all that waiting brings is what it lacks.
  const isLast = residualKgPerHa + grown - mass < turnInKgPerHa;
  return turnInKgPerHa <= grown && little < (isLast ? turnInKgPerHa : grown) - mass;
}

/**
 * Grown for as long as a leaf lives: with the third leaf the first one dies, and waiting for height
 * adds no more. New leaves come by warmth, and in dry soil the slower, so that a dry summer's round is
 * a long one.
 */
function hasAllLeaves({ sward, leftDay, warmth }: Field, day: number): boolean {
  if (leftDay === undefined) return false;
  const { kind, open } = sward;
  const from = Math.max(0, leftDay);
  let wanted = kind.leafLifeSum - (warmth[day]! - warmth[from]!);
  if (0 < wanted) return false;
  for (let i = from; i < day && wanted <= 0; i++)
    wanted += (warmth[i + 1]! - warmth[i]!) * (1 - open.wetShare[i]!);
  return wanted <= 0;
}

/** Neither closed by the household nor for hay. */
export const isOpen = (field: Field, day: number): boolean =>
  field.sward.isClosed[day] === 0 && field.shutFrom === undefined && field.openFrom <= day;

/**
 * Strips of a paddock after which a herd goes on where another is ready. Where nobody mows what is left
 * over, the round is as fast as the grass: of paddocks that outgrow the herds as many strips fewer are
 * grazed, so that all are come to before they are old.
 */
export function mostStripsOn(
  { takes, judged, usualGrowth, herds, harvestShare }: GrazingProblem,
  fields: readonly Field[],
  day: number,
): number {
  const { mostStrips } = judged;
  if (takes !== 'in-turn') return mostStrips;
  const grownKg = fields.reduce(
    (sum, { sward }, p) => sum + (1 - sward.isClosed[day]!) * usualGrowth[p]![day]! * sward.areaHa,
    0,
  );
  const needKg = herds.reduce((sum, { demandKg }) => sum + demandKg[day]!, 0);
  return Math.min(mostStrips, Math.ceil((mostStrips * needKg) / (grownKg * harvestShare[0]!)));
}

/** Days that what stands above the residual feeds a herd. */
export const daysOf = (field: Field, needKg: number, harvestShare: number): number =>
  needKg <= 0 ? 0 : (field.aboveResidual * field.sward.areaHa * harvestShare) / needKg;

/**
 * The paddock that would be dropped from the round for hay on a morning: the tallest that is ready
 * and free, when it would still grow a cut worth mowing before growth ends.
 */
export function tallestToSpare(
  problem: GrazingProblem,
  fields: readonly Field[],
  day: number,
): number | undefined {
  const { judged, growthEnds } = problem;
  const until = day + judged.hayGrowsDays;
  if (growthEnds < until + judged.hayGrowsDays || !driesHay(problem, until)) return undefined;
  if (isNeededOpen(problem, fields, day)) return undefined;
  let tallest: number | undefined;
  fields.forEach((field, p) => {
    if (field.stay || !isOpen(field, day) || field.ripeness < 1) return;
    // Of equals the last, which herds come to last.
    if (tallest !== undefined && field.ripeness < fields[tallest]!.ripeness) return;
    for (let i = day; i < until; i++) if (field.sward.isClosed[i] === 1) return;
    if (judged.leastCutKgPerHa <= cutOf(problem, field, p, day)) tallest = p;
  });
  return tallest;
}

/**
 * Whether all that are in the round stay in it whatever could be mown, where few cattle have much land: one
 * for each herd, and as many as let one rest its least days while a herd is in each as long as it may be.
 * With fewer they would be in one paddock for months, as its grass alone feeds them. One that feeds a herd
 * for less counts as a part of one, a closed one as none; where such are most of the land the rule is none.
 */
function isNeededOpen(
  { herds, harvestShare, judged }: GrazingProblem,
  fields: readonly Field[],
  day: number,
): boolean {
  const there = herds.filter(({ demandKg }) => 0 < demandKg[day]!);
  if (there.length === 0) return false;
  const stayDays = judged.mostStrips * Math.max(...there.map((herd) => herd.longestStayDays));
  const needKg = there.reduce((sum, { demandKg }) => sum + demandKg[day]!, 0) / there.length;
  const stayOf = ({ sward }: Field): number => {
    const readyKg = (sward.turnInKgPerHa - sward.residualKgPerHa) * sward.areaHa;
    return Math.min(1, (readyKg * harvestShare[0]!) / (stayDays * needKg));
  };
  const usable = fields.filter(({ sward }) => sward.isClosed[day] === 0);
  const large = usable.filter((field) => 1 <= stayOf(field));
  if (haOf(large) < haOf(fields) / 2) return false;
  const staysOf = (of: readonly Field[]): number => of.reduce((sum, f) => sum + stayOf(f), 0);
  const inRound = usable.filter(
    (field) => isOpen(field, day) && (field.stay || judged.inRoundShare <= field.ripeness),
  );
  const restDays = Math.max(...usable.map(({ sward }) => sward.leastRestDays));
  const fewest = Math.min(staysOf(usable) - 1, there.length + Math.ceil(restDays / stayDays));
  return staysOf(inRound) - 1 < fewest;
}

const haOf = (fields: readonly Field[]): number =>
  fields.reduce((sum, { sward }) => sum + sward.areaHa, 0);

/** What a paddock that is shut for hay on a morning would give when it is mown, kg/ha. */
export function cutOf(
  { judged, usualGrowth }: GrazingProblem,
  { mass, sward }: Field,
  paddock: number,
  day: number,
): number {
  let grown = mass;
  for (let i = day; i < day + judged.hayGrowsDays; i++) grown += usualGrowth[paddock]![i]!;
  return grown - sward.stubbleKgPerHa;
}

/**
 * The paddock that would be topped on a morning, of those that stand rank with nobody in them and
 * would be ready again before growth ends: the one that the herds were in last, as they come back to
 * it last; of those that nobody was in, the most grown.
 */
export function lastLeftToTop(
  { usualGrowth, growthEnds }: GrazingProblem,
  fields: readonly Field[],
  day: number,
): number | undefined {
  let first: { p: number; leftDay: number; ripeness: number } | undefined;
  fields.forEach((field, p) => {
    const { rankKgPerHa, residualKgPerHa, turnInKgPerHa } = field.sward;
    if (field.stay || !isOpen(field, day) || field.mass < rankKgPerHa) return;
    const { leftDay = -Infinity, ripeness } = field;
    if (first && (first.leftDay === leftDay ? ripeness <= first.ripeness : leftDay < first.leftDay))
      return;
    let grown = residualKgPerHa;
    for (let i = day; i < growthEnds && grown < turnInKgPerHa; i++) grown += usualGrowth[p]![i]!;
    if (turnInKgPerHa <= grown) first = { p, leftDay, ripeness };
  });
  return first?.p;
}

/** Whether hay dries on a day of the usual weather: in late fall it does not. */
export const driesHay = ({ usualWeather, judged }: GrazingProblem, day: number): boolean =>
  judged.leastDryingMm <= usualWeather.days[day]!.referenceMm;

/**
 * Half way through the time of stems: what grows first in the year has headed out. Grass without such
 * a time never does.
 */
function isHeaded({ sward }: Field, day: number): boolean {
  const { stemsFromSum, stemsToSum } = sward.kind;
  if (stemsFromSum === stemsToSum) return false;
  return (stemsFromSum + stemsToSum) / 2 <= sward.weather.days[day]!.temperatureSum;
}

/** Whether a paddock that is shut for hay is mown on a day: headed out, or grown long enough. */
export function isForMowing(problem: GrazingProblem, field: Field, day: number): boolean {
  const { judged } = problem;
  const { sward, shutFrom } = field;
  // What stands is asked last: it costs most.
  if (!driesHay(problem, day)) return false;
  const isFirst = !field.isPassed && isHeaded(field, day);
  if (!isFirst && day - shutFrom! < judged.hayGrowsDays) return false;
  return sward.stubbleKgPerHa + judged.leastCutKgPerHa <= field.mass;
}
