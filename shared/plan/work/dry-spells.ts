/** Rain of days, and what is known of it. */
interface Weather {
  readonly rainMm: Float64Array;
  readonly isForecast: Uint8Array;
  /** Beyond the forecast it is no more than usual; else it is all known. */
  readonly isUsual?: true;
}

/** Dry days in a row that work asks for, and the rain from which a day is wet. */
export interface DrySpell {
  readonly runDays: number;
  readonly wetFromMm: number;
}

/** Days by what they are like themselves: what suits work as its first, whatever comes after. */
export interface FirstDays {
  /** 1 for every day that suits it. */
  readonly fit: Uint8Array;
  /** The same whatever the rain, of work done in one go: it waits for its spell, whichever comes. */
  readonly inAnyRain?: Uint8Array;
}

/**
 * Days on which work can begin that needs several dry ones, out of those that suit it otherwise.
 *
 * In known weather, and as far as the forecast reaches, all of its days are dry. Beyond it nobody
 * knows which spell will be long: it begins on any day that is fit by its odds, as if the spell came.
 * What is done in one go is begun once
 * in it, on whichever day it comes; what is spread takes as many days as there usually are. What the
 * odds of the spell are is told by `chanceOfDryRun`.
 */
export function spellStarts(
  { fit, inAnyRain }: FirstDays,
  days: Weather,
  spell: DrySpell,
): Uint8Array {
  const dry = dryDaysFrom(days, spell);
  return fit.map((is, day) => {
    if (days.isUsual === true && days.isForecast[day] === 0 && inAnyRain?.[day] === 1)
      return isWetAhead(days, day, spell) ? 0 : 1;
    if (is === 0) return 0;
    if (days.isUsual !== true) return spell.runDays <= dry[day]! ? 1 : 0;
    return isWetAhead(days, day, spell) ? 0 : 1;
  });
}

/**
 * Days beyond the forecast that lie in a dry spell which work was begun in: what follows in it is
 * planned as if the spell came, since without it that work would not have been begun either.
 */
export function daysOfSpells(starts: Uint8Array, days: Weather, { runDays }: DrySpell): Uint8Array {
  const isIn = new Uint8Array(starts.length);
  starts.forEach((is, start) => {
    if (is === 1) isIn.fill(1, start, start + runDays);
  });
  return isIn.map((is, day) => (is === 1 && days.isForecast[day] === 0 ? 1 : 0));
}

/** Whether a day of the run after its first is forecast to be wet; in known weather, is wet. */
export function isWetAhead(
  { rainMm, isForecast, isUsual }: Weather,
  first: number,
  { runDays, wetFromMm }: DrySpell,
): boolean {
  for (let day = first + 1; day < Math.min(first + runDays, rainMm.length); day++)
    if (wetFromMm <= rainMm[day]! && (isUsual !== true || isForecast[day] === 1)) return true;
  return false;
}

/** Whether all days of a run are forecast. */
export const isForeseen = (
  { isForecast }: Pick<Weather, 'isForecast'>,
  first: number,
  { runDays }: Pick<DrySpell, 'runDays'>,
): boolean =>
  first + runDays <= isForecast.length &&
  isForecast.subarray(first, first + runDays).every((is) => is === 1);

/** Dry days in a row from each day on, no more counted than are asked for; after the last all are. */
function dryDaysFrom({ rainMm }: Weather, { runDays, wetFromMm }: DrySpell): Uint8Array {
  const dry = new Uint8Array(rainMm.length);
  for (let day = rainMm.length - 1, run = runDays; 0 <= day; day--) {
    run = rainMm[day]! < wetFromMm ? Math.min(runDays, run + 1) : 0;
    dry[day] = run;
  }
  return dry;
}
