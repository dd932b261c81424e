/** Two multipliers that spread the bits of a character over a word of 32. */
const FIRST = 2654435761;
const SECOND = 1597334677;

/**
 * A short text that stands for a long one: the same for the same, and as good as never the same for
 * two that differ by chance. No protection against anybody who wants them to be the same.
 *
 * Source: two hashes by multiplication, Knuth, The Art of Computer Programming 3, section 6.4.
 *
 * @returns 16 characters
 */
export function digestOf(text: string): string {
  let [one, other] = [FIRST, SECOND];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    one = Math.imul(one ^ code, FIRST);
    other = Math.imul(other ^ code, SECOND);
    // What stands high is brought down, where the next multiplication spreads it.
    one ^= one >>> 15;
    other ^= other >>> 13;
  }
  return [one, other].map((word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}
