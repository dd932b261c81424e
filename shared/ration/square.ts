/**
 * Two feeds mixed to a percentage between theirs, by the square: the parts of each are the difference
 * of the other from what is wanted.
 *
 * @returns the share of the first, 0 to 1; nothing when what is wanted does not lie between the two
 */
export function squareShare(first: number, second: number, wanted: number): number | undefined {
  const [ofFirst, ofSecond] = [Math.abs(wanted - second), Math.abs(wanted - first)];
  const isBetween = (first - wanted) * (second - wanted) <= 0 && first !== second;
  return isBetween ? ofFirst / (ofFirst + ofSecond) : undefined;
}

/**
 * The same where a part of the mix is set before: what the two must hold between them.
 *
 * @param wanted percent of the whole mix
 * @param set the share of the mix that is set, below 1, and the percentage it holds
 */
export const wantedBeside = (
  wanted: number,
  set: { readonly share: number; readonly percent: number },
): number => (wanted - set.share * set.percent) / (1 - set.share);
