/** Where the browser is, and how it is started for tests. */
export function chromiumOptions(args: readonly string[] = []): {
  executablePath: string;
  args: string[];
} {
  const executablePath = process.env['CHROMIUM_PATH'];
  if (!executablePath) throw new Error('CHROMIUM_PATH is not set: run the tests with npm test.');
  return { executablePath, args: [...CHROMIUM_ARGS, ...args] };
}

const CHROMIUM_ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // All windows are of one program: a process for them all need not be started anew for each.
  '--disable-site-isolation-trials',
  '--renderer-process-limit=1',
];
