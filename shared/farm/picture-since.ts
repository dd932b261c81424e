/**
 * The parts of a picture that are not as they were in an earlier one of the same farm. After an entry
 * these are few: whoever has the earlier one needs no more to have the whole.
 */
export function changedParts<Picture extends object>(
  before: Picture,
  after: Picture,
): Partial<Picture> {
  return Object.fromEntries(
    Object.entries(after).filter(([part, value]) => before[part as keyof Picture] !== value),
  ) as Partial<Picture>;
}

/** The later picture out of the earlier one and of what has changed since. */
export const withChanged = <Picture extends object>(
  before: Picture,
  changed: Partial<Picture>,
): Picture => ({ ...before, ...changed });
