import type { SavedPicture } from '../../api/queries.js';

/** What things of a farm are called, by their id. */
export function namesOf(picture: SavedPicture): (id: string) => string | undefined {
  const { batches, herds, paddocks, cows, jobs } = picture;
  const names = new Map(
    [...batches, ...herds, ...paddocks, ...cows, ...jobs].map(({ id, name }) => [id, name]),
  );
  return (id) => names.get(id);
}

/** What a fact is of: an animal or paddock by its name, or a piece of work. */
export function sayAbout(about: string, nameOf: (id: string) => string | undefined): string {
  const [whose, id, ...task] = about.split('/');
  if (id === undefined) return nameOf(about) ?? (PLACE.has(about) ? 'The place' : 'No longer here');
  // The key of a task: `layers.fetch-feed.7` is the seventh trip for feed.
  const work = task
    .join(' ')
    .replace(/^[a-z]+\.|\.\d+$/g, '')
    .replace(/[-.]/g, ' ');
  const name = nameOf(id) ?? (whose === 'own' ? 'A job' : 'No longer here');
  return whose === 'own' ? name : `${name}: ${work}`;
}

const PLACE: ReadonlySet<string> = new Set(['farm', 'ground']);
