import type { PlainDate } from '../calendar/plain-date.js';
import type { UnitSystem } from '../units/unit.js';

/** The place and its prices. Amounts of money per unit are decimal text, never floats. */
export interface Farm {
  readonly name: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  readonly elevationM: number;
  readonly timeZone: string;
  readonly units: UnitSystem;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly electricityPricePerKWh: string;
  /** Price of a litre of liquid propane. */
  readonly gasPricePerL: string;
  /** Mean daily minimum of each month, January first. */
  readonly monthlyMinC: readonly number[];
  readonly monthlyMaxC: readonly number[];
  /** Rain of each month, snow melted; left out when it is not known. */
  readonly monthlyRainMm?: readonly number[];
  /** Month and day, such as 05-10; the usual last spring and first autumn frost. */
  readonly lastFrost: string;
  readonly firstFrost: string;
  /** Soil of the beds and lines that are worked; left out, it is taken as loam. */
  readonly gardenSoilId?: string;
  /** Days on which no box is delivered besides Sundays: public holidays of the place. */
  readonly noDeliveryDates: readonly PlainDate[];
}

export interface Away {
  readonly from: PlainDate;
  readonly to: PlainDate;
}

export interface Person {
  readonly id: string;
  readonly name: string;
  readonly away: readonly Away[];
  /** Hours for the farm on each day of the week, Monday first. */
  readonly hoursByWeekday?: readonly number[];
  /** When those hours begin. */
  readonly startH?: StartingHours;
}

/** Hours of the clock, 0 to below 24: 7.5 is half past seven. */
export interface StartingHours {
  readonly weekday: number;
  readonly weekend: number;
}
