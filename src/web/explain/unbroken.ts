const NO_BREAK = '\u00a0';

/** A date or number of things as it is said in running text: its day stays with its month, its count with what it counts. */
export const unbroken = (text: string): string =>
  text
    .replace(/(\d) (?=[A-Z])/g, `$1${NO_BREAK}`)
    .replace(/([A-Z][a-z]{2}) (?=\d{1,2}(?:,|$))/g, `$1${NO_BREAK}`)
    .replaceAll(' × ', `${NO_BREAK}×${NO_BREAK}`);
