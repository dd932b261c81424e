import type { GrassWeather } from './grass-weather.js';
import type { OpenGrowth } from './open-growth.js';
import {
  type FallShares,
  growDay,
  type GrassGround,
  type GrassKind,
  type GrassState,
  type LeafLasts,
} from './sward-day.js';

/** One paddock over a season, all that does not depend on who grazes it. */
export interface Sward {
  readonly areaHa: number;
  readonly kind: GrassKind;
  readonly ground: GrassGround;
  readonly weather: GrassWeather;
  /** What paddocks of the same grass and ground would grow, all light caught. */
  readonly open: OpenGrowth;
  readonly residualKgPerHa: number;
  readonly turnInKgPerHa: number;
  /** What has to stand for the first pass of the year. */
  readonly firstPassKgPerHa: number;
  /** What has to stand at any other time. */
  readonly leastEntryKgPerHa: number;
  readonly rankKgPerHa: number;
  /** Days that no regrowth is shorter than; how long it really is, growth decides. */
  readonly leastRestDays: number;
  readonly isClosed: Uint8Array;
  readonly stubbleKgPerHa: number;
  /** What stands on the morning of day 0. */
  readonly start: GrassState;
  /** What is known to stand on the morning of a day: a height that was read, or left by a herd. */
  readonly readings: readonly {
    readonly day: number;
    readonly kgPerHa: number;
    readonly isGrazed: boolean;
  }[];
  /** Day after the last grazing before day 0, negative; undefined when not known. */
  readonly lastGrazedEnd: number | undefined;
}

/**
 * Leaf of a plan: winter leaves a floor of it, and in the cool no more dies than 0.7 of what grows, as
 * a Swiss implementation of the model has both. As printed, old leaf dies at 5 °C three times as
 * fast as new leaf comes, and a mild winter ends with bare ground where cattle go out in March.
 */
const LASTS: LeafLasts = { leastKg: 255, coolDyingShare: 0.7 };

const knownWarmth = new WeakMap<GrassWeather, Map<number, Float64Array>>();

/** Warmth that a kind of grass ages by, summed from day 0 to each morning, °C·d. */
export function warmthSums({ weather, kind }: Pick<Sward, 'kind' | 'weather'>): Float64Array {
  let ofBase = knownWarmth.get(weather);
  if (!ofBase) knownWarmth.set(weather, (ofBase = new Map()));
  let sums = ofBase.get(kind.ageingBaseC);
  if (!sums) {
    sums = new Float64Array(weather.days.length + 1);
    weather.days.forEach(({ meanC }, day) => {
      sums![day + 1] = sums![day]! + Math.max(0, meanC - kind.ageingBaseC);
    });
    ofBase.set(kind.ageingBaseC, sums);
  }
  return sums;
}

/** Lets a sward grow through one day of its weather; the state is changed. */
export const growOn = (
  { weather, kind, ground, open }: Pick<Sward, 'kind' | 'ground' | 'weather' | 'open'>,
  state: GrassState,
  day: number,
): void =>
  growOpen(kind, ground, weather, state, day, open.kgPerHa[day]!, {
    leaf: open.leafFallsShare[day]!,
    stem: open.stemFallsShare[day]!,
  });

/**
 * @param openKg what would grow on the day with all light caught and ample nitrogen, kg/ha
 * @param fall how fast what is dead falls
 */
export function growOpen(
  kind: GrassKind,
  ground: GrassGround,
  weather: GrassWeather,
  state: GrassState,
  day: number,
  openKg: number,
  fall: FallShares,
): void {
  const today = weather.days[day]!;
  // Only a bite after stems have begun to grow ends them.
  if (today.temperatureSum <= kind.stemsFromSum) state.isBitten = false;
  growDay(state, kind, ground, today, openKg, LASTS, fall);
}

/** All that stands, kg/ha. */
export const massOf = (state: GrassState): number =>
  state.leafKg + state.stemKg + state.deadLeafKg + state.deadStemKg;

/**
 * Takes off what is grazed or mown, from what stands above the stubble: leaf from above, while dead
 * leaf is most of what lies near the ground.
 *
 * @param stubbleKgPerHa what is to be left in the end
 */
export function takeOff(state: GrassState, kgPerHa: number, stubbleKgPerHa: number): void {
  const { leaf, stem, deadLeaf, deadStem } = aboveStubble(state, stubbleKgPerHa);
  const above = leaf + stem + deadLeaf + deadStem;
  const share = above <= 0 ? 0 : Math.min(1, kgPerHa / above);
  state.leafKg -= share * leaf;
  state.stemKg -= share * stem;
  state.deadLeafKg -= share * deadLeaf;
  state.deadStemKg -= share * deadStem;
  const over = kgPerHa - share * above;
  const mass = massOf(state);
  if (0 < over && 0 < mass) scale(state, Math.max(0, 1 - over / mass));
  state.isBitten = true;
}

/** What stands above a stubble, kg/ha. */
const aboveStubble = (
  state: GrassState,
  stubbleKgPerHa: number,
): Record<'leaf' | 'stem' | 'deadLeaf' | 'deadStem', number> => ({
  leaf: Math.max(0, state.leafKg - STUBBLE_LEAF * stubbleKgPerHa),
  stem: Math.max(0, state.stemKg - STUBBLE_STEM * stubbleKgPerHa),
  deadLeaf: Math.max(0, state.deadLeafKg - STUBBLE_DEAD_LEAF * stubbleKgPerHa),
  deadStem: Math.max(0, state.deadStemKg - STUBBLE_DEAD_STEM * stubbleKgPerHa),
});
/** Shares of a stubble, by the bulk densities of groups A and B. Jouven et al. 2006, table 2. */
const STUBBLE_LEAF = 850 / 1800;
const STUBBLE_STEM = 300 / 1800;
const STUBBLE_DEAD_LEAF = 500 / 1800;
const STUBBLE_DEAD_STEM = 150 / 1800;

/** Makes what stands a given mass, its make-up kept: a height that was read. */
export function setMass(state: GrassState, kgPerHa: number): void {
  const mass = massOf(state);
  if (0 < mass) scale(state, kgPerHa / mass);
  else state.leafKg = kgPerHa;
}

function scale(state: GrassState, share: number): void {
  state.leafKg *= share;
  state.stemKg *= share;
  state.deadLeafKg *= share;
  state.deadStemKg *= share;
}

/** A stand as it comes out of winter, by the mass of it, kg/ha. */
export const winterStand = (kgPerHa: number): GrassState => ({
  leafKg: WINTER_LEAF_SHARE * kgPerHa,
  stemKg: 0,
  deadLeafKg: (1 - WINTER_LEAF_SHARE) * kgPerHa,
  deadStemKg: 0,
  leafAge: WINTER_AGE,
  stemAge: 0,
  deadLeafAge: WINTER_AGE,
  deadStemAge: 0,
  isBitten: false,
  grownKg: 0,
  lostKg: 0,
});
/** The same, bitten since its stems began to grow. */
export function bittenStand(kgPerHa: number): GrassState {
  const state = winterStand(kgPerHa);
  state.isBitten = true;
  return state;
}

/**
 * Another stand like it. Written out as all stands are: spread, it would be an object of another
 * shape to the engine, and a day of growth, of which a plan has thousands, cost nearly twice as much.
 */
export const copyOf = (state: GrassState): GrassState => ({
  leafKg: state.leafKg,
  stemKg: state.stemKg,
  deadLeafKg: state.deadLeafKg,
  deadStemKg: state.deadStemKg,
  leafAge: state.leafAge,
  stemAge: state.stemAge,
  deadLeafAge: state.deadLeafAge,
  deadStemAge: state.deadStemAge,
  isBitten: state.isBitten,
  grownKg: state.grownKg,
  lostKg: state.lostKg,
});

/** Planning guesses; by spring the model's own ageing outweighs them. */
const WINTER_LEAF_SHARE = 0.5;
const WINTER_AGE = 200;

/**
 * Share of organic matter that can be digested, of what a herd takes: all that stands above the
 * stubble it leaves. Jouven et al. 2006, equations 9 and 10.
 */
export function digestibleShare(
  { leafDigestible, stemDigestible, leafLifeSum, stemsFromSum, stemsToSum }: GrassKind,
  state: GrassState,
  stubbleKgPerHa: number,
): number {
  // Asked for on every day of every plot: nothing is packed into objects.
  const leafKg = Math.max(0, state.leafKg - STUBBLE_LEAF * stubbleKgPerHa);
  const stemKg = Math.max(0, state.stemKg - STUBBLE_STEM * stubbleKgPerHa);
  const deadLeafKg = Math.max(0, state.deadLeafKg - STUBBLE_DEAD_LEAF * stubbleKgPerHa);
  const deadStemKg = Math.max(0, state.deadStemKg - STUBBLE_DEAD_STEM * stubbleKgPerHa);
  const mass = leafKg + stemKg + deadLeafKg + deadStemKg;
  if (mass <= 0) return leafDigestible.new;
  const leaf = digestibleAt(leafDigestible, state.leafAge, leafLifeSum);
  const stem = digestibleAt(stemDigestible, state.stemAge, stemsToSum - stemsFromSum);
  return (
    (leaf * leafKg +
      stem * stemKg +
      DEAD_LEAF_DIGESTIBLE * deadLeafKg +
      DEAD_STEM_DIGESTIBLE * deadStemKg) /
    mass
  );
}

/**
 * The same of what cattle eat of it, who leave what is hardest to digest and tread it down: the best
 * parts first, until they make up the share that is eaten.
 *
 * @param eatenShare share eaten of what stands above the stubble, over 0 to 1
 */
export function digestibleEaten(
  kind: GrassKind,
  state: GrassState,
  stubbleKgPerHa: number,
  eatenShare: number,
): number {
  const { leafDigestible, stemDigestible, leafLifeSum, stemsFromSum, stemsToSum } = kind;
  const { leaf, stem, deadLeaf, deadStem } = aboveStubble(state, stubbleKgPerHa);
  const kgs = [leaf, stem, deadLeaf, deadStem];
  const digestibles = [
    digestibleAt(leafDigestible, state.leafAge, leafLifeSum),
    digestibleAt(stemDigestible, state.stemAge, stemsToSum - stemsFromSum),
    DEAD_LEAF_DIGESTIBLE,
    DEAD_STEM_DIGESTIBLE,
  ];
  const eatenKg = eatenShare * (leaf + stem + deadLeaf + deadStem);
  if (eatenKg <= 0) return leafDigestible.new;
  let left = eatenKg;
  let digested = 0;
  while (0 < left) {
    let best = 0;
    for (let k = 1; k < kgs.length; k++) if (digestibles[best]! < digestibles[k]!) best = k;
    if (digestibles[best] === EATEN_UP) break;
    const taken = Math.min(left, kgs[best]!);
    digested += digestibles[best]! * taken;
    left -= taken;
    digestibles[best] = EATEN_UP;
  }
  return digested / eatenKg;
}

const digestibleAt = (range: { new: number; old: number }, age: number, life: number): number =>
  life === 0 ? range.new : range.new - Math.min(1, age / life) * (range.new - range.old);
/** Below any share. */
const EATEN_UP = -1;
const DEAD_LEAF_DIGESTIBLE = 0.45;
const DEAD_STEM_DIGESTIBLE = 0.4;
