import { defineConfig } from 'vitest/config';

/** Journeys through the built product in Chromium; `npm test` builds it and says where the browser is. */
export default defineConfig({
  test: {
    include: ['test/journeys/browser/**/*.journey.ts'],
    testTimeout: 180_000,
    hookTimeout: 60_000,
    fileParallelism: false,
    passWithNoTests: false,
  },
});
