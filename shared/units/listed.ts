/** Things one after the other in words: “hens, cows and bees”, or with another last word. */
export const listed = (things: readonly string[], last: 'and' | 'or' = 'and'): string =>
  things.length < 2
    ? things.join('')
    : `${things.slice(0, -1).join(', ')} ${last} ${things.at(-1)}`;
