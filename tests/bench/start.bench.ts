/**
 * A shop that is built and seeded: how long until it answers, what it takes of the memory,
 * and how much script a browser fetches for the page of a job.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { get } from 'node:http'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { performance } from 'node:perf_hooks'
import { setTimeout as sleep } from 'node:timers/promises'
import { chromium, type Page } from '@playwright/test'
import type { Figure } from '@/lib/setup/bench'
import { chromiumPath } from '@/lib/setup/chromium.mjs'
import { demoSignIn } from '@/tests/support/demo-sign-in'

export const name = 'start'

const startSeconds = 300
const pageViews = 30

export async function run(): Promise<readonly Figure[]> {
  const data = mkdtempSync(join(tmpdir(), 'benchglow-bench-'))
  try {
    await stop((await start(data)).server)
    const builtFrom = buildStamp()
    const { server, seconds, address } = await start(data)
    try {
      if (buildStamp() !== builtFrom)
        throw new Error('The sources changed meanwhile: the second start built them again')
      const scriptBytes = await jobPageScript(address, data)
      return [
        { figure: 'second start', value: seconds, unit: 's', reference: null, goal: 10, better: 'lower' },
        { figure: 'server memory', value: memoryOf(server), unit: 'MB', reference: null, goal: null, better: 'lower' },
        {
          figure: 'job page script, gzip',
          value: scriptBytes,
          unit: 'bytes',
          reference: null,
          goal: null,
          better: 'lower',
        },
      ]
    } finally {
      await stop(server)
    }
  } finally {
    rmSync(data, { recursive: true, force: true })
  }
}

/** Changes with every build that was needed. */
const buildStamp = () => readFileSync('.next/benchglow-stamp', 'utf8')

/** As `npm start` does it, without npm itself. The first one builds and seeds where that is needed. */
async function start(data: string) {
  const port = await freePort()
  const began = performance.now()
  const server = spawn(process.execPath, ['lib/setup/start.mjs'], {
    env: { ...process.env, PORT: String(port), BENCHGLOW_DATA: data },
    stdio: ['ignore', 2, 2],
  })
  const address = `http://127.0.0.1:${port}`
  while (!(await fetch(`${address}/api/health`).catch(() => null))?.ok) {
    if (server.exitCode !== null) throw new Error('The shop did not start')
    if (performance.now() - began > startSeconds * 1000) {
      await stop(server)
      throw new Error(`The shop did not answer within ${startSeconds} s`)
    }
    await sleep(20)
  }
  return { server, address, seconds: (performance.now() - began) / 1000 }
}

async function stop(server: ChildProcess) {
  if (server.exitCode !== null) return
  const gone = new Promise((resolve) => server.once('exit', resolve))
  server.kill('SIGTERM')
  await gone
}

/** Resident memory of the start program and the server under it, after the page views; 1 MB is 1,000,000 bytes. */
function memoryOf(server: ChildProcess): number {
  const { stdout } = spawnSync('ps', ['-o', 'rss=', '--pid', String(server.pid), '--ppid', String(server.pid)], {
    encoding: 'utf8',
  })
  const kibibytes = stdout.trim().split(/\s+/).map(Number)
  if (kibibytes.length < 2) throw new Error(`Expected the start program and a server, ps says "${stdout}"`)
  return (kibibytes.reduce((sum, each) => sum + each, 0) * 1024) / 1e6
}

async function jobPageScript(address: string, data: string): Promise<number> {
  const executablePath = chromiumPath()
  if (!executablePath) throw new Error('Chromium is needed to load the page of a job')
  const args = process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : ['--disable-gpu']
  const browser = await chromium.launch({ executablePath, args })
  try {
    const page = await browser.newPage()
    await signIn(page, address, data)
    const jobAddress = await firstJob(page, address)
    const scripts = await scriptsOf(page, jobAddress)
    for (let view = 0; view < pageViews; view++) await page.goto(jobAddress)
    const sizes = await Promise.all(scripts.map(gzipBytes))
    return sizes.reduce((sum, size) => sum + size, 0)
  } finally {
    await browser.close()
  }
}

async function signIn(page: Page, address: string, data: string) {
  const { signInName, passPhrase } = demoSignIn(readFileSync(join(data, 'demo-sign-in.txt'), 'utf8'))
  await page.goto(`${address}/sign-in`)
  await page.getByLabel('Sign-in name').fill(signInName)
  await page.getByLabel('Pass phrase').fill(passPhrase)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
}

async function firstJob(page: Page, address: string): Promise<string> {
  await page.goto(`${address}/`)
  const paths = await page
    .locator('a[href^="/jobs/"]')
    .evaluateAll((links) => links.map((link) => link.getAttribute('href')))
  const job = paths.find((path) => path && /^\/jobs\/(?!new)[^/?]+$/.test(path))
  if (!job) throw new Error(`No job is linked from the first page: ${paths.join(', ')}`)
  return `${address}${job}`
}

/** Every script the browser fetched for the page, in a context that has nothing in its cache. */
async function scriptsOf(page: Page, jobAddress: string): Promise<readonly string[]> {
  const fresh = await page
    .context()
    .browser()
    ?.newContext({ storageState: await page.context().storageState() })
  if (!fresh) throw new Error('The browser has gone')
  const scripts = new Set<string>()
  const view = await fresh.newPage()
  view.on('request', (request) => {
    if (request.resourceType() === 'script') scripts.add(request.url())
  })
  const response = await view.goto(jobAddress, { waitUntil: 'networkidle' })
  if (response?.status() !== 200) throw new Error(`${jobAddress} answered ${response?.status()}`)
  await fresh.close()
  if (scripts.size === 0) throw new Error(`${jobAddress} fetched no script`)
  return [...scripts]
}

/** The body as it crosses the wire; fetch would unpack it. */
function gzipBytes(url: string): Promise<number> {
  return new Promise((settle, fail) => {
    get(url, { headers: { 'accept-encoding': 'gzip' } }, (response) => {
      if (response.headers['content-encoding'] !== 'gzip') fail(new Error(`${url} came without gzip`))
      let bytes = 0
      response.on('data', (chunk: Buffer) => {
        bytes += chunk.length
      })
      response.on('end', () => settle(bytes))
    }).on('error', fail)
  })
}

function freePort(): Promise<number> {
  return new Promise((settle) => {
    const probe = createServer()
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => settle(typeof address === 'object' && address ? address.port : 0))
    })
  })
}
