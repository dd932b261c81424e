import type { Formula } from '../explain/formula.js';

/** Parameters of a kind of grass. Jouven et al. 2006, tables 2 and 3, unless its row says otherwise. */
export interface GrassKind {
  /** Leaf area of a gram of blades, m². */
  readonly leafAreaM2PerG: number;
  /** Share of blades in the green leaf. */
  readonly bladeShare: number;
  /** Light use of full growth, g of dry matter a MJ of light that plants use. */
  readonly lightUseGPerMJ: number;
  /** No growth at or below `baseC`, all of it from `fullFromC` to `fullToC`, none at `stopC`. */
  readonly baseC: number;
  /** Soil that ends the winter's rest; the same as `baseC` where there is none. */
  readonly wakesC: number;
  readonly fullFromC: number;
  readonly fullToC: number;
  readonly stopC: number;
  /** Share of growth lost for each MJ of light over five. */
  readonly lostPerMJ: number;
  /** Warmth below which tissue does not age. */
  readonly ageingBaseC: number;
  /** Temperature sum at which reserves begin to move out in spring, °C·d. */
  readonly onsetSum: number;
  /** Temperature sums between which stems grow, °C·d. */
  readonly stemsFromSum: number;
  readonly stemsToSum: number;
  /** What reserves add to growth in spring, and what storing them leaves of it after. */
  readonly springFactor: number;
  readonly autumnFactor: number;
  /** Life of a leaf, °C·d. */
  readonly leafLifeSum: number;
  /** Organic matter digestible of new and of old tissue, share. */
  readonly leafDigestible: { readonly new: number; readonly old: number };
  readonly stemDigestible: { readonly new: number; readonly old: number };
}

/** Ground a sward stands on. */
export interface GrassGround {
  /** Nitrogen the soil gives, as the nitrogen nutrition index: 0.35 poor to 1 ample. */
  readonly nitrogenIndex: number;
  /** Water between field capacity and wilting point that roots reach, mm. */
  readonly waterHeldMm: number;
  /** The farm's own growth over the model's; 1 where nothing is known. */
  readonly growthFactor: number;
  /** Ground that plants cover, of what they cover in a good stand: between them no light is caught. */
  readonly coverShare: number;
}

/** One day of weather, as a sward meets it. */
export interface GrassDay {
  /** Mean of the air: what tissue ages and freezes by. */
  readonly meanC: number;
  /** What growth goes by: the mean of the air as printed, of the soil in a plan. */
  readonly growthC: number;
  /** What has to pass the base before anything grows: the air of the last ten days as printed. */
  readonly onsetC: number;
  /** Sum of the means above 0 °C since 1 January, in the south since 1 July. */
  readonly temperatureSum: number;
  /** Light that plants use, MJ/m². */
  readonly lightMJ: number;
  readonly rainMm: number;
  readonly referenceMm: number;
}

/** What stands: kg of dry matter a hectare, ages in °C·d. */
export interface GrassState {
  leafKg: number;
  stemKg: number;
  deadLeafKg: number;
  deadStemKg: number;
  leafAge: number;
  stemAge: number;
  deadLeafAge: number;
  deadStemAge: number;
  /** Cut or grazed since stems began to grow: no more of them this year. */
  isBitten: boolean;
  /** What the last day grew, and what of it and of all that stood was lost, kg/ha. */
  grownKg: number;
  lostKg: number;
}

export const swardFormulas = {
  growth: {
    id: 'sward-growth',
    title: 'Growth of the sward',
    words:
      'Light that the green leaf catches, none of it on the bare ground of a thin stand, times what a plant makes of it, less what cold, heat, strong light, dry soil and a hungry soil take; more in spring when reserves move out, less after. Leaf and stem age and die by the warmth they have had, and dead tissue falls: stems that stand a small part as fast where little rain has come for weeks, leaf near the ground no slower than the soil feeds growth. The soil’s warmth stands for that of the growing points.',
    symbols:
      'G = PAR·RUE·c·(1 − e^(−0.6·LAI÷c))·10·N·f(PAR)·f(T)·f(W)·S, dying K·B·T·f(age), falling K·B·T·f(age)·r, of stem r = 1 ÷ (1 + 30·e^(−8.5·P÷ET₀)), of leaf max(r, f(W))',
    sources: ['JOUVEN_2006', 'LINGRA_1998', 'FAO56', 'CENTURY_MOISTURE'],
    mark: 'computed',
  },
  digestible: {
    id: 'grass-digestible',
    title: 'Digestible share of the grass',
    words:
      'Of the organic matter of what a herd takes, above the height it leaves, averaged over leaf, stem and what is dead of both: new leaf about 90 %, falling with its age; dead leaf 45, dead stem 40 %. Milk and growth want about 70 % and more; a dry cow does on 55.',
    symbols: 'd = Σ d(age)·W ÷ ΣW',
    sources: ['JOUVEN_2006'],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** How leaf lasts, beyond what is printed. */
export interface LeafLasts {
  /** Green leaf that neither frost nor age takes, kg/ha. */
  readonly leastKg: number;
  /** While it is too cool for full growth, leaf that age takes of what grows, share at most. */
  readonly coolDyingShare: number;
}

const AS_PRINTED: LeafLasts = { leastKg: 0, coolDyingShare: Infinity };

/** How fast what is dead falls, as shares of the printed rates, which are those where it is wet. */
export interface FallShares {
  readonly leaf: number;
  readonly stem: number;
}

export const FALLS_WET: FallShares = { leaf: 1, stem: 1 };

/** Mean of the day below which leaf lasts longer: from there on cool-season grass grows fully, °C. */
const COOL_C = 10;

const K_LEAF = 0.002;
const K_STEM = 0.001;
const FALL_LEAF = 0.001;
const FALL_STEM = 0.0005;
/** Lost as respiration while tissue dies. */
const RESPIRED_LEAF = 0.4;
const RESPIRED_STEM = 0.2;
const EXTINCTION = 0.6;

/**
 * One day of a sward: growth, dying and falling of leaf and stem. The state is changed.
 *
 * Jouven, Carrère and Baumont 2006, Grass and Forage Science 61:112–124, equations 1 to 18, in the
 * order: leaf area of the morning, growth, dying from the masses and ages of the morning. Dead tissue
 * falls by warmth alone there, on mountain pasture where it rains all summer.
 *
 * @param openKg what would grow with all light caught and ample nitrogen, as wet as the soil is, kg/ha
 * @param lasts how leaf lasts; left out, as printed
 * @param fall how fast what is dead falls; left out, as printed
 */
export function growDay(
  state: GrassState,
  kind: GrassKind,
  ground: GrassGround,
  { meanC, temperatureSum }: Pick<GrassDay, 'meanC' | 'temperatureSum'>,
  openKg: number,
  lasts = AS_PRINTED,
  fall = FALLS_WET,
): void {
  const warmth = Math.max(0, meanC - kind.ageingBaseC);
  const { coverShare } = ground;
  const caught =
    openKg === 0
      ? 0
      : coverShare * (1 - Math.exp((-EXTINCTION * leafAreaOf(kind, state)) / coverShare));
  const grownKg = openKg * caught * ground.nitrogenIndex * ground.growthFactor;
  const makesStems =
    kind.stemsFromSum < temperatureSum && temperatureSum < kind.stemsToSum && !state.isBitten;
  const toStems = makesStems ? 0.25 + (0.75 * (ground.nitrogenIndex - 0.35)) / 0.65 : 0;
  const newLeaf = grownKg * (1 - toStems);
  const isCool = 0 <= meanC && meanC < COOL_C;
  const leafDies = Math.min(
    dying(kind, meanC, K_LEAF * state.leafKg, state.leafAge / kind.leafLifeSum),
    Math.max(0, state.leafKg + newLeaf - lasts.leastKg),
    isCool && lasts !== AS_PRINTED ? lasts.coolDyingShare * newLeaf : Infinity,
  );
  const leafFalls =
    FALL_LEAF * state.deadLeafKg * warmth * fall.leaf * falls(state.deadLeafAge / kind.leafLifeSum);
  const newDeadLeaf = (1 - RESPIRED_LEAF) * leafDies;
  state.leafAge = aged(state.leafAge, state.leafKg, newLeaf, leafDies, warmth);
  state.deadLeafAge = aged(state.deadLeafAge, state.deadLeafKg, newDeadLeaf, leafFalls, warmth);
  state.leafKg += newLeaf - leafDies;
  state.deadLeafKg += newDeadLeaf - leafFalls;
  state.grownKg = grownKg;
  state.lostKg = leafDies - newDeadLeaf + leafFalls;
  const newStem = grownKg * toStems;
  if (0 < newStem || 0 < state.stemKg || 0 < state.deadStemKg)
    state.lostKg += stemsAfter(state, kind, meanC, warmth * fall.stem, newStem);
}

/** Leaf area, m² on a m² of ground. */
const leafAreaOf = (kind: GrassKind, { leafKg }: GrassState): number =>
  (kind.leafAreaM2PerG * leafKg * kind.bladeShare) / 10;

/** Of the reference evapotranspiration, the share that leaves draw. Jouven et al. 2006, equation 14. */
export const drawsShareOf = (kind: GrassKind, state: GrassState): number =>
  Math.min(1, leafAreaOf(kind, state) / 3);

/**
 * The same of stem, where there is any.
 *
 * @returns what is lost of it, kg/ha
 */
function stemsAfter(
  state: GrassState,
  kind: GrassKind,
  meanC: number,
  fallingWarmth: number,
  newStem: number,
): number {
  const warmth = Math.max(0, meanC - kind.ageingBaseC);
  const life = kind.stemsToSum - kind.stemsFromSum;
  const dies = dying(kind, meanC, K_STEM * state.stemKg, state.stemAge / life);
  const fallen = FALL_STEM * state.deadStemKg * fallingWarmth * falls(state.deadStemAge / life);
  const newDead = (1 - RESPIRED_STEM) * dies;
  state.stemAge = aged(state.stemAge, state.stemKg, newStem, dies, warmth);
  state.deadStemAge = aged(state.deadStemAge, state.deadStemKg, newDead, fallen, warmth);
  state.stemKg += newStem - dies;
  state.deadStemKg += newDead - fallen;
  return dies - newDead + fallen;
}

/**
 * Growth of a day with all light caught, ample nitrogen and water, kg/ha: what the weather and the
 * kind of grass make of it. Jouven et al. 2006, equations 1 to 3.
 */
export const fullGrowthKg = (
  kind: GrassKind,
  lightMJ: number,
  growthC: number,
  onsetC: number,
  temperatureSum: number,
): number =>
  lightMJ *
  kind.lightUseGPerMJ *
  10 *
  Math.min(1, Math.max(0, 1 - kind.lostPerMJ * (lightMJ - 5))) *
  warmthShare(kind, growthC, onsetC) *
  reserveFactor(kind, temperatureSum);

/** Jouven et al. 2006, figure 2b. */
function warmthShare(kind: GrassKind, growthC: number, onsetC: number): number {
  const { baseC, fullFromC, fullToC, stopC } = kind;
  if (onsetC <= baseC || growthC <= baseC || stopC <= growthC) return 0;
  if (growthC < fullFromC) return (growthC - baseC) / (fullFromC - baseC);
  return growthC <= fullToC ? 1 : (stopC - growthC) / (stopC - fullToC);
}

/** Reserves that move out in spring and are stored after. Jouven et al. 2006, figure 3. */
function reserveFactor(kind: GrassKind, sum: number): number {
  const { onsetSum, stemsFromSum, stemsToSum, springFactor: high, autumnFactor: low } = kind;
  const peakFrom = stemsFromSum - 200;
  const peakTo = stemsFromSum - 100;
  if (sum < onsetSum || stemsToSum <= sum) return low;
  if (sum < peakFrom) return low + ((high - low) * (sum - onsetSum)) / (peakFrom - onsetSum);
  if (sum <= peakTo) return high;
  return high - ((high - low) * (sum - peakTo)) / (stemsToSum - peakTo);
}

/** Tissue that dies in a day: by age while it is warm, by frost, not in between. Equations 16, 17. */
function dying(kind: GrassKind, meanC: number, rateKg: number, agePart: number): number {
  if (meanC < 0) return rateKg * -meanC;
  return meanC <= kind.baseC ? 0 : rateKg * (meanC - kind.ageingBaseC) * ageing(agePart);
}

const ageing = (part: number): number => (part < 1 / 3 ? 1 : part < 1 ? 1 + 3 * (part - 1 / 3) : 3);

const falls = (part: number): number => (part < 1 / 3 ? 1 : part < 2 / 3 ? 2 : 3);

/** Mean age after a day: new tissue enters at none. Jouven et al. 2006, equations 5 to 8. */
function aged(age: number, kg: number, into: number, out: number, warmth: number): number {
  const kept = kg - out;
  return kept + into <= 0 ? 0 : (kept / (kept + into)) * (age + warmth);
}
