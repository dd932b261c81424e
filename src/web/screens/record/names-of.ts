import type { ToldFact } from '../../../../shared/farm/told-fact.js';
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
  { batches, herds, paddocks, cows, facilities, people, suppliers = [] }: SavedPicture,
  jobs: readonly Named[],
  tables: Tables,
): NameOf {
  const all: readonly Named[] = [
    ...[...batches, ...herds, ...paddocks, ...cows, ...jobs].map(({ id, name }) => ({
      id: id!,
      name,
    })),
    ...[...facilities, ...people, ...suppliers].map(({ id, name }) => ({ id: id!, name })),
    ...tables.taskTemplates,
    ...tables.herdTaskTemplates,
    ...namedInTables(tables),
  ];
  const names = new Map(all.map(({ id, name }) => [id, name]));
  return (id) => names.get(id);
}

/** Rows of tables that a row of the farm names. */
const namedInTables = (tables: Tables): readonly Named[] => [
  ...tables.strains,
  ...tables.feedPrograms,
  ...tables.growthTables,
  ...tables.layCurves,
  ...tables.broodingSchedules,
  ...tables.moveOut.flatMap(({ rules }) => rules),
  ...tables.nights.surety.choices,
  ...tables.forages,
  ...tables.soils,
  ...tables.materials,
  ...tables.cattle.classes,
  ...tables.gestation.breeds,
];

/** What a fact is of; a row that was changed as it was called then. */
export const sayWhose = (fact: ToldFact, nameOf: NameOf): string =>
  fact.kind === 'row-changed' ? fact.details.name : sayAbout(fact.about, nameOf);

/** What it is of: an animal or paddock by its name, or a piece of work. */
function sayAbout(about: string, nameOf: NameOf): string {
  const [whose, id, ...task] = about.split('/');
  if (id === undefined) return nameOf(about) ?? (PLACE.has(about) ? 'The place' : 'No longer here');
  if (whose === 'own') return nameOf(id) ?? 'A job that is no longer here';
  const work = workOf(task.join('/'), nameOf);
  return `${nameOf(id) ?? 'No longer here'}: ${work.charAt(0).toLowerCase()}${work.slice(1)}`;
}

/**
 * Work by the name of its template. `layers.fetch-feed.7` is the seventh trip for feed; before work
 * of cattle stands whose it is, a herd, one of its calvings or a cow of its own.
 */
function workOf(key: string, nameOf: NameOf): string {
  const parts = key.replace(/(\.\d+)+$/, '').split('.');
  const named = parts.map((_, k) => nameOf(parts.slice(k).join('.'))).find(Boolean);
  const what = named ?? parts.at(-1)!.replace(/[-/]/g, ' ');
  const cow = nameOf(parts[0]!.replace(/^cow-/, ''));
  return parts[0]!.startsWith('cow-') && cow ? `${cow}, ${what.toLowerCase()}` : what;
}

const PLACE: ReadonlySet<string> = new Set(['farm', 'ground']);
