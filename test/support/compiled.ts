/**
 * The command of a program, from the source that `compile-program.mjs` compiled before all tests: a
 * program that compiles itself takes seconds to start.
 */
export const compiled = (command: string): string[] =>
  command
    .replace(
      /--import @swc-node\/register\/esm-register src\/(?:cli\/)?(\S+)\.ts/,
      'test-output/program/$1.js',
    )
    .split(' ');
