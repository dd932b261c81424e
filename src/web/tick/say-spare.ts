/** Nobody plans by a count of more days than these. */
const MANY_DAYS = 31;

/** How many days work can wait, 1 or more, as far as that helps anybody. */
export const saySpare = (days: number): string =>
  MANY_DAYS < days ? 'more than a month' : `${days} ${days === 1 ? 'day' : 'days'}`;
