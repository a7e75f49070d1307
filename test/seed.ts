import fc from 'fast-check';

/**
 * Random tests draw the same cases on every run, so that a red test says something of the change at hand. New cases are
 * looked for on purpose: `npm run trust -- --properties 5` runs the random tests with five other seeds.
 */
fc.configureGlobal({ seed: Number(process.env['REEFWRIGHT_SEED'] ?? '20261129') });
