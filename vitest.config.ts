import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const root = fileURLToPath(new URL('.', import.meta.url))

export default defineConfig({
  resolve: {
    alias: {
      '@': root.replace(/\/$/, ''),
      // Throws outside a server bundle; its own empty file is what a server bundle gets.
      'server-only': fileURLToPath(new URL('node_modules/server-only/empty.js', import.meta.url)),
    },
  },
  test: {
    include: ['tests/**/*.test.{ts,tsx,mjs}'],
    exclude: ['tests/e2e/**', 'node_modules/**'],
    pool: 'forks',
    maxWorkers: 2,
    globalSetup: ['tests/support/template-database.ts'],
    setupFiles: ['tests/support/quiet-console.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // No such folder: a test that forgot `freshDatabase()` fails instead of opening the shop's records.
    env: { TZ: 'UTC', BENCHGLOW_DATA: '/nowhere/benchglow' },
  },
})
