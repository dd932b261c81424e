import type { Person } from '../../farm/farm.js';
import type { Paddock } from '../../farm/paddock.js';
import type { ChildAge, FreeTime } from '../../farm/start.js';

/** Sizes as they are bought and built in one system of units. */
export interface StartSizes {
  readonly brooderHeightM: number;
  readonly plywoodMm: number;
  readonly roomHeightM: number;
  /** Two at least: when one fails the night is cold. */
  readonly lamp: {
    readonly wattsEach: number;
    readonly smallerWatts: number;
    /** Where more of the smaller ones would be needed, the usual ones are hung. */
    readonly smallerMost: number;
    readonly least: number;
    /** A larger flock is kept warm with gas. */
    readonly most: number;
  };
  readonly gas: { readonly wattsEach: number };
  readonly pen: { readonly floorM2: number };
  readonly coop: {
    readonly floorStepM2: number;
    readonly roostStepM: number;
    readonly runStepM2: number;
  };
  readonly edgeStepCm: number;
  readonly freezersL: readonly number[];
  readonly feedStoreKg: number;
  readonly paddockStepM2: number;
}

/** Local prices, as decimal text. */
interface StartPrices {
  readonly electricityPricePerKWh: string;
  readonly gasPricePerL: string;
}

/** What a farm is taken to have until the household says otherwise; a file of seeds/ holds it. */
export interface StartDefaults {
  readonly elevationM: number;
  readonly freeTimes: Readonly<
    Record<FreeTime, Required<Pick<Person, 'hoursByWeekday' | 'startH' | 'byDay'>>>
  >;
  readonly childHoursByWeekday: Readonly<Record<ChildAge, readonly number[]>>;
  /** How near the nearest town must be to say in which country a farm lies. */
  readonly nearestTown: {
    readonly farthestKm: number;
    /** A town of another country within so many times its distance leaves it open. */
    readonly otherTimesAsFar: number;
  };
  /** Sets of jobs, by what a household says that it has. */
  readonly jobSets: Readonly<Record<'garden' | 'hives', readonly string[]>>;
  /** By currency. */
  readonly prices: Readonly<Record<string, StartPrices>>;
  /** Hens that are here at a start: how long ago they came, at what age. */
  readonly hensHere: { readonly daysAgo: number; readonly ageWeeks: number };
  /** A box of chicks is ordered at least so long before it comes. */
  readonly leadDays: number;
  readonly metric: StartSizes;
  readonly us: StartSizes;
  /** Lengths of the sides of a brooder, the smallest first. */
  readonly brooderSidesM: { readonly metric: readonly number[]; readonly us: readonly number[] };
  /** A warmer place for a brooder that would take too many lamps, and the largest one it holds. */
  readonly warmPlace: { readonly airC: number; readonly mostFloorM2: number };
  /** Least floor, whatever the plan asks for: cold nights keep birds in longer than planned. */
  readonly brooderM2PerChick: number;
  readonly runM2PerHen: number;
  /** Grass for each kilogram of cattle. */
  readonly grassM2PerKg: number;
  readonly paddocks: number;
  readonly paddock: Pick<
    Paddock,
    'forageId' | 'stand' | 'productivity' | 'soilId' | 'hasWater' | 'hasShade'
  >;
}
