/** Paths of all numbers in a value that are not finite, and of all that is an invalid text. */
export function notFiniteIn(part: unknown, path = 'plan'): string[] {
  if (typeof part === 'number') return Number.isFinite(part) ? [] : [`${path} = ${part}`];
  if (typeof part === 'string')
    return /NaN|Invalid|undefined|Infinity/.test(part) ? [`${path} = ${part}`] : [];
  if (typeof part !== 'object' || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) => notFiniteIn(value, `${path}.${key}`));
}
