const whoKey = (farmId: string): string => `broodfold-who-${farmId}`;
/** Whose phone this is, as somebody said on it. */
export function whoUses(farmId: string): string | undefined {
  try {
    return localStorage.getItem(whoKey(farmId)) ?? undefined;
  } catch {
    return undefined;
  }
}
export function sayWhoUses(farmId: string, name: string | undefined): void {
  try {
    if (name === undefined) localStorage.removeItem(whoKey(farmId));
    else localStorage.setItem(whoKey(farmId), name);
  } catch {
    // A browser that keeps nothing is nobody's.
  }
}
