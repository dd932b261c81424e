/**
 * The time zone of a farm: the device's own where its clock shows the same all year, since it was
 * set by somebody, else that of the place.
 */
export function zoneOf({ timeZone }: { readonly timeZone: string }): { readonly timeZone: string } {
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const isSame = [0, 6].every((month) => {
    const at = Date.UTC(new Date().getUTCFullYear(), month, 15, 12);
    return clockIn(own, at) === clockIn(timeZone, at);
  });
  return { timeZone: isSame ? own : timeZone };
}

const clockIn = (timeZone: string, at: number): string =>
  new Intl.DateTimeFormat('en', { timeZone, dateStyle: 'short', timeStyle: 'short' }).format(at);
