import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import ts from 'typescript';
import { PROJECT_ROOT } from '../../src/reference/load-tables.js';

/** A file of the house and what it imports: files of the project, and packages by name. */
export interface HouseFile {
  readonly path: string;
  readonly imports: readonly string[];
  readonly packages: readonly string[];
}

/** Every source file of `shared/` and `src/`, by its path from the project's folder. */
export function readHouse(): HouseFile[] {
  return ['shared', 'src'].flatMap((root) =>
    readdirSync(join(PROJECT_ROOT, root), { recursive: true, encoding: 'utf8' })
      .filter((file) => /(?<!\.d)\.tsx?$/.test(file))
      .map((file) => houseFile(posix.join(root, file))),
  );
}

function houseFile(path: string): HouseFile {
  const targets = targetsIn(readFileSync(join(PROJECT_ROOT, path), 'utf8'));
  return {
    path,
    imports: [...new Set(targets.filter(isRelative).map((target) => fileOf(path, target)))],
    packages: [...new Set(targets.filter((target) => !isRelative(target)))],
  };
}

const isRelative = (target: string): boolean => target.startsWith('.');

/** What a file imports, statically or not, and the files of workers that it names as a URL. */
export const targetsIn = (text: string): string[] => [
  ...ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName),
  ...[...text.matchAll(/\bnew URL\(\s*(?:\w+ \? )?'(\.[^'\n]+)'/g)].map((m) => m[1]!),
];

/** An import as a path from the project's folder; the compiled name stands for the source. */
function fileOf(from: string, target: string): string {
  const path = posix.join(dirname(from), target);
  const source = [path.replace(/\.js$/, '.ts'), path.replace(/\.js$/, '.tsx')].find(
    (each) => existsSync(join(PROJECT_ROOT, each)) && statSync(join(PROJECT_ROOT, each)).isFile(),
  );
  return source ?? path;
}

/**
 * The first circle that is found, from a node round to itself, or none.
 *
 * @param next what each node points to
 */
export function circleIn(next: ReadonlyMap<string, readonly string[]>): string[] | undefined {
  const done = new Set<string>();
  const visit = (node: string, path: readonly string[]): string[] | undefined => {
    const at = path.indexOf(node);
    if (0 <= at) return [...path.slice(at), node];
    if (done.has(node)) return undefined;
    for (const target of next.get(node) ?? []) {
      const found = visit(target, [...path, node]);
      if (found) return found;
    }
    done.add(node);
    return undefined;
  };
  for (const node of next.keys()) {
    const found = visit(node, []);
    if (found) return found;
  }
  return undefined;
}
