/**
 * The command of a program, from the source that `compile-threads.mjs` compiled before all tests: a
 * program that compiles itself takes seconds to start.
 */
export const compiled = (command: string): string[] =>
  command
    .replace(
      /--import @swc-node\/register\/esm-register (src\/\S+)\.ts/,
      'test-output/threads/$1.js',
    )
    .split(' ');
