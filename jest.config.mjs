/** One project for each size of test; `test/run-all.mjs` says which databases and browser there are. */
const shared = {
  rootDir: '.',
  testEnvironment: '<rootDir>/test/support/environment.mjs',
  extensionsToTreatAsEsm: ['.ts'],
  transform: { '^.+\\.ts$': '<rootDir>/test/support/transform.mjs' },
  globalSetup: '<rootDir>/test/support/compile-program.mjs',
  moduleNameMapper: {
    '^\\./worker-file\\.js$': '<rootDir>/test/support/worker-file.ts',
    '^(\\.{1,2}/.*)\\.js$': '$1',
  },
};

export default {
  testSequencer: '<rootDir>/test/support/longest-first.mjs',
  // Speed is never asserted: a busy machine must not fail a test.
  testTimeout: 60_000,
  projects: [
    {
      ...shared,
      displayName: 'core',
      testMatch: [
        '<rootDir>/test/{buying,calendar,checks,explain,farm,maths,money,pasture,plan,poultry,problems,published,ration,schedule,seeds,units,weather,house,cli}/**/*.test.ts',
      ],
    },
    { ...shared, displayName: 'service', testMatch: ['<rootDir>/test/service/**/*.test.ts'] },
    { ...shared, displayName: 'page', testMatch: ['<rootDir>/test/page/**/*.test.ts'] },
  ],
};
