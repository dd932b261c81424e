/** Longest name of a whole whose parts' numbers still fit behind it. */
const LONGEST = 76;

/**
 * Names of the parts of a paddock: its own with numbers, from 1 or from its own number on, those that
 * are taken left out. “Meadow 1” of three becomes “Meadow 1” and “Meadow 4”.
 */
export function partNames(whole: string, taken: readonly string[], parts: number): string[] {
  const numbered = /^(.*\S) ([1-9]\d{0,2})$/.exec(whole);
  const base = (numbered?.[1] ?? whole).slice(0, LONGEST);
  const isTaken = new Set(taken);
  const names: string[] = [];
  for (let k = Number(numbered?.[2] ?? 1); names.length < parts; k++)
    if (!isTaken.has(`${base} ${k}`)) names.push(`${base} ${k}`);
  return names;
}
