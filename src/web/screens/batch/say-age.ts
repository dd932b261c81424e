/** Days of age up to which they are counted one by one. */
const IN_DAYS = 70;

/** An age as people say it: in days of chicks, in weeks of hens. */
export const sayAge = (days: number): string =>
  days <= IN_DAYS ? `${days} ${days === 1 ? 'day' : 'days'}` : `${Math.round(days / 7)} weeks`;
