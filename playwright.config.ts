/**
 * The program as it is served, in a browser: the demo shop and an empty one, each with a
 * data folder and a port of its own, never those of the shop that may run beside it.
 */
import { mkdtempSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { defineConfig } from '@playwright/test'
import { chromiumPath } from './lib/setup/chromium.mjs'

async function freePort(): Promise<string> {
  return new Promise((settle, fail) => {
    const probe = createServer()
    probe.once('error', fail)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() =>
        address && typeof address === 'object' ? settle(String(address.port)) : fail(new Error('no port')),
      )
    })
  })
}

/** Chosen once; the workers read this file again and inherit the choice through the environment. */
async function chosen(name: string, choose: () => string | Promise<string>): Promise<string> {
  const value = process.env[name] || (await choose())
  process.env[name] = value
  return value
}

const data = await chosen('E2E_DATA', () => mkdtempSync(join(tmpdir(), 'benchglow-e2e-')))
const demoPort = await chosen('E2E_DEMO_PORT', freePort)
const emptyPort = await chosen('E2E_EMPTY_PORT', freePort)
const smtpPort = await chosen('E2E_SMTP_PORT', freePort)

const shop = (name: string, port: string, env: Record<string, string>) => ({
  name,
  command: 'node lib/setup/start.mjs',
  url: `http://127.0.0.1:${port}/api/health`,
  env: { PORT: port, BENCHGLOW_DATA: join(data, name), ...env },
  reuseExistingServer: false,
  timeout: 300_000,
  gracefulShutdown: { signal: 'SIGTERM', timeout: 10_000 } as const,
})

const rootFlags = process.getuid?.() === 0 ? ['--no-sandbox'] : []

export default defineConfig({
  testDir: 'tests/e2e',
  outputDir: 'test-results',
  globalTeardown: './tests/support/remove-e2e-data.ts',
  fullyParallel: false,
  // The tests share two shops, and one walks a job from the counter to collected.
  workers: 1,
  forbidOnly: true,
  timeout: 120_000,
  expect: { timeout: 10_000 },
  reporter: process.env.E2E_REPORT ? [['list'], ['json', { outputFile: process.env.E2E_REPORT }]] : [['list']],
  use: {
    baseURL: `http://127.0.0.1:${demoPort}`,
    timezoneId: 'UTC',
    locale: 'en-GB',
    trace: 'retain-on-failure',
    screenshot: 'only-on-failure',
    launchOptions: {
      executablePath: chromiumPath() ?? undefined,
      args: [
        ...rootFlags,
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    { name: 'with-script', testIgnore: /no-script\.spec\.ts$/ },
    { name: 'without-script', testMatch: /no-script\.spec\.ts$/, use: { javaScriptEnabled: false } },
  ],
  webServer: [
    shop('demo', demoPort, {}),
    shop('empty', emptyPort, { BENCHGLOW_EMPTY: '1', BENCHGLOW_SMTP_URL: `smtp://127.0.0.1:${smtpPort}` }),
  ],
})
