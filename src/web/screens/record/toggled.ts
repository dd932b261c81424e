/** Ids with one of them put in or taken out. */
export const toggled = (ids: readonly string[], id: string, isIn: boolean): string[] =>
  isIn ? [...ids, id] : ids.filter((each) => each !== id);
