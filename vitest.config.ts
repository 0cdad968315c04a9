import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.ts', 'src/**/*.test.tsx', 'test/**/*.test.ts'],
    exclude: ['test/journeys/browser/**', 'node_modules/**', 'dist/**'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // All cores: left to itself, vitest keeps one free, which is half of a machine with two.
    maxWorkers: '100%',
  },
});
