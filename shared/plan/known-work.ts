import type { Tables } from '../tables/tables.js';

/** Daily work that is of no template: by the last part of its key. */
const WITHOUT_TEMPLATE: ReadonlySet<string> = new Set([
  'drinkers-noon',
  'hay',
  'milking',
  'moves',
  'round',
  'winter-round',
]);

/** What a key of work belongs to, and the work itself: left out of a job of one's own. */
export interface WorkOf {
  readonly of: 'own' | 'batch' | 'herd';
  readonly id: string;
  readonly work?: string;
}

/** @param key a key by its shape (`isWorkKey`) */
export function workOfKey(key: string): WorkOf {
  const [of, id, ...rest] = key.split('/') as [WorkOf['of'], string, ...string[]];
  return of === 'own' ? { of, id } : { of, id, work: rest.join('/') };
}

/**
 * Whether some plan of a batch or herd can have such work, whatever it plans now: its template is
 * known, with the event it hangs on before it and its number behind it.
 */
export function isKnownWork(
  { of, work }: WorkOf,
  { taskTemplates, herdTaskTemplates }: Pick<Tables, 'taskTemplates' | 'herdTaskTemplates'>,
): boolean {
  if (work === undefined || WITHOUT_TEMPLATE.has(work)) return true;
  const templates = of === 'batch' ? taskTemplates : herdTaskTemplates;
  const parted = `.${work}.`;
  return templates.some(({ id }) => parted.includes(`.${id}.`));
}
