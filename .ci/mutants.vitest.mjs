import { defineConfig } from 'vitest/config';

/** The tests that stand beside what is mutated, and those of journals over both folders. */
export default defineConfig({
  test: { include: ['src/{outing,log}/**/*.test.ts', 'test/journals/*.test.ts'] },
});
