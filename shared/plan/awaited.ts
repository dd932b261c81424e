/** So many days after the planned one it is still asked whether they came. */
export const AWAITED_DAYS = 3;
