/** Two multipliers that spread the bits of a character over a word of 32. */
const FIRST = 2654435761;
const SECOND = 1597334677;

/**
 * A short text that stands for much: the same for the same, and as good as never the same for two
 * that differ by chance. No protection against anybody who wants them to be the same.
 *
 * Source: two hashes by multiplication, Knuth, The Art of Computer Programming 3, section 6.4.
 */
export class Digest {
  private one = FIRST;
  private other = SECOND;

  /** Takes in whole numbers of 32 bits. */
  addNumbers(numbers: ArrayLike<number>): void {
    let { one, other } = this;
    for (let at = 0; at < numbers.length; at++) {
      const code = numbers[at]!;
      one = Math.imul(one ^ code, FIRST);
      other = Math.imul(other ^ code, SECOND);
      // What stands high is brought down, where the next multiplication spreads it.
      one ^= one >>> 15;
      other ^= other >>> 13;
    }
    this.one = one;
    this.other = other;
  }

  addText(text: string): void {
    const codes = new Uint16Array(text.length);
    for (let at = 0; at < codes.length; at++) codes[at] = text.charCodeAt(at);
    this.addNumbers(codes);
  }

  /** 16 characters for all that was taken in. */
  text(): string {
    return [this.one, this.other]
      .map((word) => (word >>> 0).toString(16).padStart(8, '0'))
      .join('');
  }
}

/** The digest of one text. */
export function digestOf(text: string): string {
  const digest = new Digest();
  digest.addText(text);
  return digest.text();
}
