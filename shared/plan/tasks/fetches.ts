/** Tasks of a batch that fetch its feed. */
export const FETCHES: ReadonlySet<string> = new Set([
  'meat.fetch-starter-feed',
  'meat.fetch-feed',
  'layers.fetch-feed',
]);

/** Whether a piece of work, by its key, fetches feed: what is bought on it is told with it. */
export const isFetch = (key: string): boolean =>
  [...FETCHES].some((id) => key.endsWith(`/${id}`) || key.includes(`/${id}.`));
