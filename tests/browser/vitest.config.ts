import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    root: new URL('../..', import.meta.url).pathname,
    include: ['tests/browser/**/*.test.ts'],
    setupFiles: ['tests/support/setup.ts'],
    expect: { requireAssertions: true },
    // One browser at a time is kind to a small machine; nothing asserts wall-clock time.
    fileParallelism: false,
    testTimeout: 180_000,
    hookTimeout: 180_000,
  },
})
