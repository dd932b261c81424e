/**
 * An amount in whole coins shared out by weights: whole coins that add up to it. The coins that
 * rounding down leaves go to those who lose most by it.
 *
 * @param weights 0 or more; all of them 0 shares nothing
 */
export function sharedOut(minor: number, weights: readonly number[]): number[] {
  const all = weights.reduce((sum, each) => sum + each, 0);
  if (all <= 0) return weights.map(() => 0);
  const exact = weights.map((each) => (minor * each) / all);
  const shares = exact.map(Math.floor);
  let left = minor - shares.reduce((sum, each) => sum + each, 0);
  const byLoss = exact
    .map((each, k) => ({ k, lost: each - shares[k]! }))
    .sort((a, b) => b.lost - a.lost || a.k - b.k);
  for (const { k } of byLoss) {
    if (left <= 0) break;
    shares[k]! += 1;
    left--;
  }
  return shares;
}
