import type { Formula } from '../explain/formula.js';
import type { Brooder, BuildUp } from '../farm/facility.js';
import type { HeatTable, Material } from '../tables/heat-tables.js';
import { rowById } from '../tables/tables.js';
import { cToF } from '../units/convert.js';

export const brooderHeatFormulas = {
  need: {
    id: 'brooder-heat-need',
    title: 'Heat that the brooder needs',
    words:
      'Heat through walls, lid (or open top) and floor, plus heat carried off by fresh air, less the warmth of the birds themselves (none in their first week). The air need not be as warm as the birds under a lamp: what its rays add at the least height is taken off. While it is colder around the brooder than the birds want it, one lamp burns, and in the first two weeks as many as the common rule hangs over so many chicks in a mild room: they sleep under them. A plate warms by touch and is counted by its chicks. Drafts and sun are left out.',
    symbols: 'Q = UA·(T_in − T_out) + 0.335·ρ/ρ₀·V·(T_in − T_out) − Q_birds, T_in = T_h − rise',
    sources: ['CONDUCTION', 'BPS1981_VENT', 'CIGR2002'],
    mark: 'from-memory',
  },
  conduction: {
    id: 'brooder-conduction',
    title: 'Heat through walls, lid and floor, per degree',
    words:
      'Area of each part divided by its R-value: the layers plus a film of still air inside and, outdoors, of moving air outside; in a building both films are still. The bedded floor counts with about 1 W for each square meter and degree. A lid that is missing is an opening, reckoned by itself.',
    symbols: 'UA = Σ A ÷ (R_in + Σ d/λ + R_out) + A_floor·1',
    sources: ['CONDUCTION'],
    mark: 'computed',
  },
  ventilation: {
    id: 'brooder-ventilation',
    title: 'Fresh air the birds need',
    words:
      'Minimum rate by metabolic weight. The author of one such rule warns that any minimum can be wrong by half.',
    symbols: 'V = N·0.54·W^0.75',
    sources: ['BPS1981_VENT', 'UGA_MIN_VENT'],
    mark: 'published',
  },
  birdHeat: {
    id: 'bird-sensible-heat',
    title: 'Warmth of the birds themselves',
    words:
      'Total heat by metabolic weight, corrected for temperature, times the share given off as dry heat. Nothing is credited in the first week.',
    symbols: 'Q_birds = N·10.62·W^0.75·[0.61·(1000 + 20·(20 − T)) − 0.228·T²] ÷ 1000',
    sources: ['CIGR2002', 'BROODING_HEAT_1982'],
    mark: 'from-memory',
  },
  heatersNeeded: {
    id: 'heaters-needed',
    title: 'Lamps, plates or heaters needed',
    words:
      'Heat needed on the coldest expected night, divided by the watts of one, rounded up: as the heat balance of this brooder has it. Rules of thumb stand beside it; they count lamps hung over chicks in a room that nobody describes.',
    symbols: 'n = ⌈Q ÷ P⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  plateRule: {
    id: 'plate-rule',
    title: 'Plates by the chicks they carry',
    words:
      'A plate warms by contact and is rated in chicks: about one watt a chick (12 to 25 W for 15 to 20 chicks), in a room of 10 °C (50 °F) or warmer.',
    symbols: 'n = ⌈N·1 W ÷ P⌉',
    sources: ['REMEMBERED'],
    mark: 'from-memory',
  },
  lampRule: {
    id: 'lamp-rule',
    title: 'Lamps by the common rule',
    words:
      'One 250 W lamp for 75 chicks at 10 °C (50 °F), one chick fewer for each °F below, until it would be fewer than the 25 that anybody prints. No figure is given above 50 °F, so 75 is kept.',
    symbols: 'n = ⌈N ÷ (75 − (50 − T_F))⌉ for 0 ≤ T_F < 50',
    sources: ['LAMP_RULE'],
    mark: 'published',
  },
  thumbRule: {
    id: 'watts-a-chick',
    title: 'Heaters by what others print',
    words:
      'Watts for each chick (with gas, for each square meter of floor) times how many, divided by the watts of one, rounded up. Nobody prints the room that goes with it, and they differ fourfold.',
    symbols: 'n = ⌈N·w ÷ P⌉',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  energy: {
    id: 'heat-energy',
    title: 'Energy used in a day',
    words:
      'Half of the day with the heaters that a usual night of that date asks for, half with those of a usual day, never more than there are. With a thermostat: for the part of each half that it switches them on.',
    symbols: 'E = 12 h·(n_night + n_day)·P ÷ 1000',
    sources: ['ARITHMETIC'],
    mark: 'computed',
  },
  circuit: {
    id: 'circuit-load',
    title: 'Load that the circuit can carry all day',
    words: 'Volts times amps, times 80 % for a load that runs three hours or more.',
    symbols: 'P = 0.8·V·A',
    sources: [],
    mark: 'computed',
  },
} satisfies Record<string, Formula>;

/** W per m³/h and K at sea level: 1.2 kg/m³ × 1005 J/(kg·K) ÷ 3600. */
const AIR_HEAT_W_PER_M3_H_K = (1.2 * 1005) / 3600;

/** Thermal resistance of a build-up with its two air films, m²·K/W. Indoors both are still air. */
export function totalResistanceM2KPerW(
  buildUp: BuildUp,
  materials: readonly Material[],
  films: HeatTable['films'],
  isInWind = true,
): number {
  const own =
    buildUp.rM2KPerW ??
    (buildUp.layers ?? []).reduce(
      (sum, layer) =>
        sum + (rowById(materials, layer.materialId).rM2KPerWPerM * layer.thicknessMm) / 1000,
      0,
    );
  return films.insideM2KPerW + own + (isInWind ? films.outsideM2KPerW : films.insideM2KPerW);
}

/**
 * Heat through walls and lid for each degree of difference, W/K. Without a lid: the walls alone,
 * because an open top is no lid of no thickness (see `openTopWPerK`).
 *
 * Left out: the floor, and drafts, which can outweigh everything else.
 * Source: steady conduction, Q = Σ(A/R)·ΔT.
 */
export function conductionWPerK(
  brooder: Pick<Brooder, 'lengthM' | 'widthM' | 'heightM' | 'walls' | 'roof'> & {
    readonly standsIn?: Brooder['standsIn'];
  },
  materials: readonly Material[],
  films: HeatTable['films'],
): number {
  const wallM2 = 2 * (brooder.lengthM + brooder.widthM) * brooder.heightM;
  const lidM2 = brooder.lengthM * brooder.widthM;
  const isInWind = (brooder.standsIn ?? 'outdoors') === 'outdoors';
  const through = (m2: number, buildUp: BuildUp): number =>
    m2 / totalResistanceM2KPerW(buildUp, materials, films, isInWind);
  return through(wallM2, brooder.walls) + (brooder.roof ? through(lidM2, brooder.roof) : 0);
}

/**
 * Density of air at an elevation over that at sea level.
 * Source: FAO-56 eq. 7, P = 101.3·((293 − 0.0065 z)/293)^5.26.
 */
export function airDensityShare(elevationM: number): number {
  return ((293 - 0.0065 * elevationM) / 293) ** 5.26;
}

/** Heat carried off by fresh air, W for each degree of difference. */
export function ventilationWPerK(freshAirM3PerH: number, elevationM: number): number {
  return AIR_HEAT_W_PER_M3_H_K * airDensityShare(elevationM) * freshAirM3PerH;
}

export interface LowMidHigh {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/**
 * Fresh air for a flock by three published minimum rules, m³/h; the middle one is by metabolic
 * weight (0.54 m³/h per kg^0.75, British Poultry Science 22, 1981).
 */
export function freshAirM3PerH(
  rules: HeatTable['ventilation'],
  flock: { birds: number; weightKg: number; unventedGas: boolean },
): LowMidHigh {
  const metabolic = rules.m3PerHPerKg075 * flock.weightKg ** 0.75;
  const perKg = rules.m3PerHPerKg * flock.weightKg;
  const perChick = rules.m3PerHPerChick;
  const times = flock.birds * (flock.unventedGas ? rules.unventedGasFactor : 1);
  return {
    low: times * Math.min(metabolic, perKg),
    mid: times * metabolic,
    high: times * Math.max(metabolic, perKg, perChick),
  };
}

/**
 * Dry heat of one bird, W, as a range over the unsettled bracket of the CIGR equation.
 *
 * mid: 0.61·(1000 + 20(20 − T)) − 0.228·T² per 1000 W at 20 °C; high: the other bracket;
 * low: 17 % less than mid, as measured on straw litter.
 */
export function birdSensibleHeatW(
  birds: HeatTable['birds'],
  weightKg: number,
  airC: number,
): LowMidHigh {
  const at20W = birds.totalW * weightKg ** birds.exponent;
  const perUnit = 1000 * (1 + birds.perK * (20 - airC));
  const drop = birds.sensibleDropPerK2 * airC * airC;
  const mid = Math.max(0, (at20W * (birds.sensibleShare * perUnit - drop)) / 1000);
  const high = Math.max(0, (at20W * birds.sensibleShare * (perUnit - drop)) / 1000);
  return { low: mid * (1 - birds.litterLoss), mid, high };
}

/** Heaters of one size that a number of watts takes. */
export const heatersFor = (watts: number, wattsEach: number): number =>
  Math.ceil(watts / wattsEach - 1e-9);

/**
 * Lamps of one size by the common rule of thumb, for chicks and the air around the brooder.
 *
 * @param wattsEach of the lamps that are there; the rule's are of 250 W
 * @returns undefined where the rule ends: below 0 °F it would be fewer chicks a lamp than any print
 */
export function lampsByRule(
  rule: HeatTable['lampRule'],
  chicks: number,
  airC: number,
  wattsEach: number = rule.lampW,
): number | undefined {
  const below = Math.max(0, rule.atF - cToF(airC));
  const perLamp = rule.chicks - below;
  // A hundredth of a chick is the rounding of °C to °F.
  if (perLamp < rule.fewestChicks - 0.01) return undefined;
  return Math.ceil((chicks * rule.lampW) / (perLamp * wattsEach) - 1e-9);
}

/** Watts a circuit may carry for hours on end: 80 % of volts × amps. */
export function continuousCapacityW(
  share: number,
  circuit: { volts: number; amps: number },
): number {
  return share * circuit.volts * circuit.amps;
}
