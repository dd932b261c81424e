/** Days from which on an age is said in weeks: a hen's, of which nobody counts the days. */
const IN_WEEKS_FROM = 140;

/** An age as one says it of birds: chicks in days, hens in weeks, rounded as on the page of a batch. */
export const ageSaid = (days: number): string =>
  days < IN_WEEKS_FROM ? `day ${days}` : `${Math.round(days / 7)} weeks`;

/** The same before "old". */
export const oldSaid = (days: number): string =>
  days < IN_WEEKS_FROM ? `${days} ${days === 1 ? 'day' : 'days'}` : ageSaid(days);
