import { defineConfig } from 'vitest/config';

/** Journeys through the built product in Chromium; `npm test` builds it and says where the browser is. */
export default defineConfig({
  test: {
    include: ['test/journeys/browser/**/*.journey.ts'],
    testTimeout: 180_000,
    hookTimeout: 60_000,
    // Every file has a server and a browser of its own, and waits for them more than it reckons.
    maxWorkers: 2,
    passWithNoTests: false,
  },
});
