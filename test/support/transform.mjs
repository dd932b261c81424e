import swc from '@swc/jest';
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** What the language brings along, and no test puts anything in its place (as one does with `Date`). */
const NAMES = [
  ...['Array', 'Boolean', 'Error', 'Infinity', 'JSON', 'Map', 'Math', 'NaN', 'Number', 'Object'],
  ...['Promise', 'RegExp', 'Set', 'String', 'Symbol', 'TypeError', 'WeakMap', 'WeakSet'],
  ...['Float64Array', 'Int16Array', 'Int32Array', 'Uint8Array', 'Uint32Array'],
];
const root = fileURLToPath(new URL('../..', import.meta.url));
const compiler = swc.createTransformer();

/** Of each file of the core what it exports, as `compile-program.mjs` found. */
let coreNames;

/**
 * Compiles a file of tests as SWC does, and has it look these names up once. A test's globals are those
 * of a context of Node's, where each use of one is asked for anew: arithmetic took three times as long.
 * A file of the core is handed on from outside, where it is loaded once for all tests of a process.
 */
export default {
  ...compiler,
  process: (...given) => ofCore(given[1]) ?? knowingGlobals(compiler.process(...given)),
  processAsync: async (...given) =>
    ofCore(given[1]) ?? knowingGlobals(await compiler.processAsync(...given)),
  getCacheKey: (...given) => `${compiler.getCacheKey(...given)}-core-${NAMES.length}`,
};

function ofCore(file) {
  const path = relative(root, file).replaceAll('\\', '/');
  if (!path.startsWith('shared/')) return undefined;
  coreNames ??= JSON.parse(readFileSync(`${root}/test-output/program/core-names.json`, 'utf8'));
  const names = coreNames[path].join(', ');
  return { code: `export const { ${names} } = globalThis.outside.core[${JSON.stringify(path)}];` };
}

/** On the line that is first, so that every line keeps its number. */
function knowingGlobals(result) {
  const { code } = result;
  const used = NAMES.filter((name) => new RegExp(`(?<![.\\w$])${name}\\b`).test(code));
  if (used.length === 0) return result;
  return { ...result, code: `const { ${used.join(', ')} } = globalThis; ${code}` };
}
