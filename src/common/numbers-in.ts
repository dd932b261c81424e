const NUMBER = /^-?\d{1,9}(\.\d{1,15})?$/;

/** A query with some of its fields read as numbers: it comes as text. What is no number is left for the rules. */
export const numbersIn = (
  query: Readonly<Record<string, unknown>>,
  names: readonly string[],
): Record<string, unknown> =>
  Object.fromEntries(
    Object.entries(query).map(([name, text]) => [
      name,
      names.includes(name) && typeof text === 'string' && NUMBER.test(text) ? Number(text) : text,
    ]),
  );
