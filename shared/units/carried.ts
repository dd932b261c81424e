/** Whether one lasts so long that its days are counted. */
export const lastsForDays = (aDay: number): boolean => aDay <= 2 / 3;

/**
 * Bags or bales as they are carried: to the half where it takes one or more a day, else how long one
 * lasts: “3½ bales”, “a bag every 5 days”.
 *
 * @param aDay of them, above 0
 */
export function carriedSaid(aDay: number, thing: 'bag' | 'bale'): string {
  if (lastsForDays(aDay)) return `a ${thing} every ${Math.round(1 / aDay)} days`;
  const halves = Math.max(2, Math.round(2 * aDay));
  if (halves === 2) return `1 ${thing}`;
  return `${Math.floor(halves / 2)}${halves % 2 === 1 ? '½' : ''} ${thing}s`;
}
