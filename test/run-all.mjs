/**
 * The one test command: types, lint, formatting, build, then every test.
 *
 *   npm test                 everything
 *   npm test -- brooder      only tests whose path holds a word
 *
 * REQUIRE_POSTGRES=1 and REQUIRE_BROWSER=1 make a missing database or browser a failure; without
 * them its tests are left out, and that is said plainly.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, statfsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { delimiter, join } from 'node:path';

const words = process.argv.slice(2);
const required = (name) => process.env[name] === '1';
const chromium =
  process.env.CHROMIUM_PATH ??
  // Without windows it takes a fifth less of the processors.
  onPath(['chromium-headless-shell', 'chromium', 'chromium-browser', 'google-chrome']);
const hasPostgres = Boolean(process.env.TEST_DATABASE_URL);

if (!chromium && required('REQUIRE_BROWSER'))
  fail('No Chromium was found. Install it, or set CHROMIUM_PATH.');
if (!hasPostgres && required('REQUIRE_POSTGRES'))
  fail('TEST_DATABASE_URL is not set, but PostgreSQL is required.');

const hasSqlite = existsSync('node_modules/better-sqlite3/build/Release/better_sqlite3.node');
if (words.length === 0) {
  // Two at a time, as each keeps one processor busy, and what `npm ci --ignore-scripts` left out.
  await Promise.all([
    hasSqlite ? undefined : steps([['Native parts', 'rebuild', 'See the errors above.']]),
    steps([
      ['Types', 'types', 'See the errors above.'],
      ['Build', 'build', 'See the errors above.'],
    ]),
    steps([
      ['Lint', 'lint', 'Run `npm run fix`, then mend what is left.'],
      ['Unused', 'unused', 'Remove what nothing reaches; knip.jsonc says what counts.'],
      ['Format', 'format', 'Run `npm run fix`.'],
    ]),
  ]);
}

console.log(
  hasPostgres
    ? 'Databases: SQLite and PostgreSQL.'
    : 'Databases: SQLite only. PostgreSQL is left out: TEST_DATABASE_URL is not set.',
);
console.log(
  chromium
    ? `Browser: ${chromium}.`
    : 'Browser: none found, so the page is NOT tested. Install Chromium, or set CHROMIUM_PATH.',
);

if (!process.env.REFERENCE_DATA)
  console.log('Comparisons with files of data are left out: REFERENCE_DATA names no folder.');

// What tests write need not outlive the machine: a disk makes each write of a database wait.
const TMPFS = '/dev/shm';
const ROOM_BYTES = 2 ** 31;
const isRoomy = existsSync(TMPFS) && freeBytes(TMPFS) > ROOM_BYTES;

mkdirSync('test-output', { recursive: true });
const projects = ['core', 'service', ...(chromium ? ['page'] : [])];
const jest = spawnSync(
  process.execPath,
  [
    // Room for what is soon thrown away: with less of it more is copied. Workers are given it too.
    '--min-semi-space-size=64',
    '--max-semi-space-size=64',
    // There are more workers than processors: what is thrown away needs no threads of its own.
    '--single-threaded-gc',
    '--experimental-vm-modules',
    '--no-warnings',
    'node_modules/jest/bin/jest.js',
    '--selectProjects',
    ...projects,
    // More than there are processors: the page's tests mostly wait for a browser, others for a command.
    `--maxWorkers=${availableParallelism() + 1}`,
    // A process that has grown is ended between two files: what it holds is looked through in vain.
    '--workerIdleMemoryLimit=900MB',
    '--json',
    '--outputFile',
    'test-output/jest.json',
    '--passWithNoTests=false',
    ...words,
  ],
  {
    stdio: 'inherit',
    env: {
      ...process.env,
      ...(chromium ? { CHROMIUM_PATH: chromium } : {}),
      ...(isRoomy ? { TMPDIR: TMPFS } : {}),
    },
  },
);
const result = existsSync('test-output/jest.json')
  ? JSON.parse(readFileSync('test-output/jest.json', 'utf8'))
  : undefined;
if (!result) fail('The tests did not run to their end.');
const suitesBroken = result.numRuntimeErrorTestSuites;
console.log(`${result.numPassedTests} passed, ${result.numFailedTests + suitesBroken} failed`);
process.exit(jest.status ?? 1);

async function steps(list) {
  for (const [name, script, help] of list) {
    const started = Date.now();
    const { status, output } = await run(
      'npm',
      script === 'rebuild' ? [script] : ['run', '--silent', script],
    );
    if (status !== 0) fail(`${output}\n${name} failed. ${help}`);
    console.log(`${name}: fine (${((Date.now() - started) / 1000).toFixed(1)} s)`);
  }
}

function run(command, args) {
  return new Promise((resolve) => {
    const child = spawn(command, args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (text) => (output += text));
    child.on('close', (status) => resolve({ status, output }));
  });
}

function freeBytes(folder) {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize;
}

function onPath(names) {
  const folders = (process.env.PATH ?? '').split(delimiter);
  return names
    .flatMap((name) => folders.map((folder) => join(folder, name)))
    .find((path) => existsSync(path));
}

function fail(message) {
  console.error(message);
  console.log('0 passed, 1 failed');
  process.exit(1);
}
