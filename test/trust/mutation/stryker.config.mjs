/** Read in the copy of the tree that `npm run trust -- --mutation PART` makes; the run says what to change and what to ask. */
const lines = name => (process.env[name] ?? '').split('\n').filter(line => line !== '');

export default {
  plugins: ['@stryker-mutator/vitest-runner'],
  testRunner: 'vitest',
  vitest: { configFile: 'test/trust/mutation/vitest.config.mjs', related: false },
  mutate: lines('MUTATION_FILES'),
  coverageAnalysis: 'perTest',
  // What runs once, while a module is read, is asked of every test and costs a start of its own each.
  ignoreStatic: true,
  inPlace: true,
  disableTypeChecks: false,
  concurrency: 1,
  timeoutMS: 4000,
  reporters: ['json', 'progress-append-only'],
  jsonReporter: { fileName: process.env.MUTATION_REPORT ?? 'report.json' },
  allowEmpty: true,
  logLevel: 'warn',
};
