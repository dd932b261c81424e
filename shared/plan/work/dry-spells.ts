import type { DaysOfWork } from './days-of-work.js';

type Weather = Pick<DaysOfWork, 'rainMm' | 'isForecast' | 'isUsual'>;

/** Dry days in a row that work asks for, and the rain from which a day is wet. */
export interface DrySpell {
  readonly runDays: number;
  readonly wetFromMm: number;
}

/** Days before and after one that are of its season. */
const SEASON_DAYS = 21;

/**
 * Days on which work can begin that needs several dry ones, out of those that suit it otherwise.
 *
 * In known weather, and as far as the forecast reaches, all of its days are dry. Beyond it nobody
 * knows which spell will be long: it begins with the longest of the season, even where the usual
 * weather has none as long as that. What its odds are is told by `chanceOfDryRun`.
 *
 * @param fit 1 for every day that suits it as its first, whatever comes after
 */
export function spellStarts(fit: Uint8Array, days: Weather, spell: DrySpell): Uint8Array {
  const dry = dryDaysFrom(days, spell);
  const isOpen = (day: number): boolean => days.isUsual === true && !isForeseen(days, day, spell);
  const hopes = Uint8Array.from(fit, (is, day) =>
    is === 1 && isOpen(day) && !isWetAhead(days, day, spell) ? dry[day]! : 0,
  );
  return fit.map((is, day) => {
    if (is === 0) return 0;
    if (!isOpen(day)) return spell.runDays <= dry[day]! ? 1 : 0;
    if (hopes[day] === 0) return 0;
    const season = hopes.subarray(Math.max(0, day - SEASON_DAYS), day + SEASON_DAYS + 1);
    return Math.max(...season) <= hopes[day]! ? 1 : 0;
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
