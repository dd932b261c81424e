/** How many nights of the first week out are too cold, in an average year. */
export function sayNights(count: number): string {
  const whole = Math.round(count);
  if (whole === 0) return 'less than one night';
  return `about ${whole} ${whole === 1 ? 'night' : 'nights'}`;
}

/** What the rule of nights leaves out: said wherever the ways to go out stand side by side. */
export const RULE_OF_NIGHTS =
  'These rules are keepers’, and speak of the air outside. A closed shelter is warmer than that, and so are birds that lie together, but no published figure says by how much: the rule is not lowered for it. What keepers say of hardened birds in a dry shelter is a row of its own.';
