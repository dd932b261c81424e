/** Letters that do not come apart into a plain one and an accent. */
const PLAIN: Readonly<Record<string, string>> = {
  ...{ ß: 'ss', æ: 'ae', œ: 'oe', ø: 'o', ł: 'l', đ: 'd', ð: 'd', þ: 'th', ı: 'i' },
};

/**
 * A name by its bare letters: without accents, capitals, points and apostrophes, with hyphens as
 * spaces, so that Sankt Pölten is "sankt polten" and N.Y. is "ny".
 */
export const fold = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Mn}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøłđðþı]/g, (letter) => PLAIN[letter]!)
    .replace(/[.'’ʻ`]/g, '')
    .replace(/[\s\-–]+/g, ' ')
    .trim();
