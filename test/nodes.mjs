/**
 * Tries the program on several versions of Node, each in a fresh copy: what npm warns of, the build,
 * a start with one plan, and the tests of the core.
 *
 *   npm run nodes -- 20 22 24
 *
 * Each version comes from the package registry. Ends with 1 when one of them does not work.
 */
import { execFileSync, spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const versions = process.argv.slice(2);
if (versions.length === 0) {
  console.error('Name the versions to try: npm run nodes -- 20 22 24');
  process.exit(1);
}

let failed = 0;
for (const version of versions) {
  const folder = mkdtempSync(join(tmpdir(), `broodfold-node-${version}-`));
  try {
    console.log(`Node ${await tryNode(version, folder)} works.`);
  } catch (error) {
    failed++;
    console.error(`Node ${version} does not work: ${error.message}`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
process.exit(failed === 0 ? 0 : 1);

/** The full version, when everything works. */
async function tryNode(version, folder) {
  const platform = process.platform === 'win32' ? 'win' : process.platform;
  const name = `node-${platform}-${process.arch}`;
  const home = join(folder, 'node');
  mkdirSync(home);
  runWith(process.env, home, 'npm', [
    'install',
    '--no-save',
    '--prefix',
    '.',
    `${name}@${version}`,
  ]);
  const installed = join(home, 'node_modules', name);
  const env = {
    ...process.env,
    PATH: join(installed, 'bin') + delimiter + process.env.PATH,
    // Where a database driver is compiled, it is for this version.
    npm_config_nodedir: installed,
  };
  const copy = join(folder, 'copy');
  for (const file of execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
    .trim()
    .split('\n')) {
    mkdirSync(dirname(join(copy, file)), { recursive: true });
    cpSync(join(root, file), join(copy, file));
  }
  const said = runWith(env, copy, 'npm', ['ci']);
  if (said.includes('EBADENGINE')) throw new Error(`npm warns of engines: ${said.slice(0, 2000)}`);
  runWith(env, copy, 'npm', ['run', 'build']);
  await onePlan(env, copy);
  runWith(env, copy, 'node', [
    '--experimental-vm-modules',
    '--no-warnings',
    'node_modules/jest/bin/jest.js',
    '--selectProjects=core',
  ]);
  return runWith(env, copy, 'node', ['--version']).trim();
}

function runWith(env, cwd, command, args) {
  const { status, stdout, stderr, error } = spawnSync(command, args, {
    env,
    cwd,
    encoding: 'utf8',
    shell: process.platform === 'win32',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (error) throw error;
  if (status === 0) return stdout + stderr;
  throw new Error(
    `${command} ${args.join(' ')} ended with ${status}.\n${(stdout + stderr).slice(-4000)}`,
  );
}

/** Starts the built program and plans the sample farm's work, which uses database and threads. */
async function onePlan(env, cwd) {
  const child = spawn('node', ['dist/src/main.js'], {
    cwd,
    env: { ...env, PORT: '0', HOST: '', DATABASE_URL: '', DATA_DIR: join(cwd, 'data') },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  try {
    const url = await new Promise((resolve, reject) => {
      let said = '';
      for (const stream of [child.stdout, child.stderr]) {
        stream.setEncoding('utf8').on('data', (text) => {
          said += text;
          const found = /ready at (http:\/\/[^\s/]+)/.exec(said)?.[1];
          if (found) resolve(found);
        });
      }
      child.once('close', () => reject(new Error(`it did not start: ${said}`)));
    });
    const farm = await (await fetch(`${url}/api/farms/sample`, { method: 'POST' })).json();
    const work = await fetch(`${url}/api/farms/${farm.id}/work`);
    const { jobs } = await work.json();
    if (!work.ok || !(0 < jobs?.length))
      throw new Error(`the work of the sample was ${work.status}`);
  } finally {
    child.kill();
  }
}
