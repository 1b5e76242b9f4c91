import { defineConfig } from 'vitest/config';

/** Browser tests start a host and Chromium each, so they run one file at a time; the rest share two workers. */
export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 180_000,
    hookTimeout: 240_000,
    // A page may take its time on a slow machine; what is waited for is asserted all the same.
    expect: { poll: { timeout: 40_000 } },
    maxWorkers: 2,
    reporters: ['default', './tests/support/summary.ts'],
  },
});
