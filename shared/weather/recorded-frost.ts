/** A night colder than all that follow it in spring, or than all before it in fall; by day of its half-year. */
export type ColdNight = readonly [day: number, lowC: number];

/** Nights of each half-year of a record from which the last and the first frost follow, at any threshold. */
export interface RecordedFrost {
  readonly springs: readonly (readonly ColdNight[])[];
  readonly autumns: readonly (readonly ColdNight[])[];
}
