import type { Tables } from '../../../../shared/tables/tables.js';
import type { SavedPicture } from '../../api/queries.js';

type NameOf = (id: string) => string | undefined;
interface Named {
  readonly id: string;
  readonly name: string;
}

/**
 * What things of a farm are called, by their id, and work of their own kind by that of its template.
 *
 * @param jobs with those that are done and rest: the picture holds what is still planned
 */
export function namesOf(
  { batches, herds, paddocks, cows }: SavedPicture,
  jobs: readonly Named[],
  { taskTemplates, herdTaskTemplates }: Pick<Tables, 'taskTemplates' | 'herdTaskTemplates'>,
): NameOf {
  const all: readonly Named[] = [
    ...[...batches, ...herds, ...paddocks, ...cows, ...jobs].map(({ id, name }) => ({
      id: id!,
      name,
    })),
    ...taskTemplates,
    ...herdTaskTemplates,
  ];
  const names = new Map(all.map(({ id, name }) => [id, name]));
  return (id) => names.get(id);
}

/** What a fact is of: an animal or paddock by its name, or a piece of work. */
export function sayAbout(about: string, nameOf: NameOf): string {
  const [whose, id, ...task] = about.split('/');
  if (id === undefined) return nameOf(about) ?? (PLACE.has(about) ? 'The place' : 'No longer here');
  if (whose === 'own') return nameOf(id) ?? 'A job that is no longer here';
  // The key of a task: `layers.fetch-feed.7` is the seventh trip for feed.
  const key = task.join('/').replace(/(\.\d+)+$/, '');
  const work = nameOf(key) ?? key.replace(/^[a-z]+\./, '').replace(/[-./]/g, ' ');
  return `${nameOf(id) ?? 'No longer here'}: ${work.charAt(0).toLowerCase()}${work.slice(1)}`;
}

const PLACE: ReadonlySet<string> = new Set(['farm', 'ground']);
