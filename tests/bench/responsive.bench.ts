/**
 * Whether the program answers while a long computation runs in its worker: the demo shop, and what
 * its first page and its stock page ask of the session and the database, served over HTTP by the
 * process that started the worker. Sent as JSON: the drawing of the page by the framework is not
 * in it, as that needs a build. Somebody asks for a page every so often, 50 times; the longest
 * wait and the middle one count, on the wall, beside the same with nothing running. How late
 * the timers of that process were is its event loop.
 *
 * A wait is a person's, so other work on the machine is in it too.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { monitorEventLoopDelay, performance } from 'node:perf_hooks'
import { setTimeout as sleep } from 'node:timers/promises'
import { USUAL_SPREAD_RULE } from '@/lib/domain/pairing/spread-rule'
import { fail } from '@/lib/domain/result'
import { amps, ratio } from '@/lib/domain/units'
import { startPlanning } from '@/lib/planning/planning-run'
import type { ShareOrder } from '@/lib/planning/sharing/share-order'
import type { PlanningRun } from '@/lib/planning/worker/run'
import type { Figure } from '@/lib/setup/bench'
import { migrate } from '@/lib/setup/migrate'
import { closeDatabase, databasePath } from '@/lib/store/database'
import { listClosedJobs, listOpenJobs } from '@/lib/store/job'
import { listStockedParts } from '@/lib/store/part-draw'
import { findShop } from '@/lib/store/shop'
import { listTubes } from '@/lib/store/tube'
import { personOfToken, signIn } from '@/lib/workflow/shop/sign-in'
import { seedDemoShop } from '@/seed/demo-shop'
import { AS_OF, aDemand, readTube, someLimits } from '@/tests/domain/matching/tubes'
import { gaussian, generator, randomTubes } from '@/tests/domain/pairing/random-tubes'
import { demoSignIn } from '@/tests/support/demo-sign-in'

export const name = 'responsive'

const LOOKS = 50
/** Milliseconds between them. */
const PAUSE = 100
/** Milliseconds: a person takes it for at once. */
const GOAL = 300
const TUBES = 360
const JOBS = 90
const PATHS = ['/', '/stock'] as const

type Waits = { readonly worst: number; readonly median: number; readonly timers: number }

export async function run(): Promise<readonly Figure[]> {
  const folder = mkdtempSync(join(tmpdir(), 'benchglow-responsive-'))
  process.env.BENCHGLOW_DATA = folder
  delete process.env.BENCHGLOW_SMTP_URL
  try {
    await migrate(databasePath())
    const token = await demoShop()
    const server = await serving(token)
    try {
      return await figures(server)
    } finally {
      server.close()
      server.closeAllConnections()
    }
  } finally {
    await closeDatabase()
    rmSync(folder, { recursive: true, force: true })
  }
}

async function demoShop(): Promise<string> {
  const seeded = await seedDemoShop(new Date())
  if (!seeded.ok) throw new Error(seeded.fault)
  const signedIn = await signIn(demoSignIn(seeded.value), new Date())
  if (!signedIn.ok) throw new Error(signedIn.fault)
  return signedIn.value.token
}

async function figures(server: Server): Promise<readonly Figure[]> {
  const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  await waits(address, 10)
  const idle = await waits(address, LOOKS)
  const quads = await during(
    startPlanning('quads', { tubes: randomTubes(1, 600), rule: USUAL_SPREAD_RULE, size: 4, seconds: 60 }),
    address,
  )
  const share = await during(startPlanning('share', bigOrder()), address)
  return [...figuresOf('quads of 600 tubes', quads, idle), ...figuresOf(`a sharing of ${TUBES} tubes`, share, idle)]
}

function figuresOf(running: string, busy: Waits, idle: Waits): readonly Figure[] {
  const common = { unit: 'ms', better: 'lower' } as const
  const reference = { worst: rounded(idle.worst), median: rounded(idle.median), timers: rounded(idle.timers) }
  const label = `another page beside ${running}`
  return [
    { figure: `${label}, longest of ${LOOKS}`, value: busy.worst, reference: reference.worst, goal: GOAL, ...common },
    { figure: `${label}, median of ${LOOKS}`, value: busy.median, reference: reference.median, goal: GOAL, ...common },
    { figure: `${label}, latest timer`, value: busy.timers, reference: reference.timers, goal: null, ...common },
  ]
}

/** To 0.1 ms. */
const rounded = (milliseconds: number): number => Math.round(10 * milliseconds) / 10

/** From the first word of the run on; it must still run at the end. */
async function during(run: PlanningRun, address: string): Promise<Waits> {
  try {
    while (run.progress() === null && run.state() !== 'ended') await sleep(20)
    const measured = await waits(address, LOOKS)
    if (run.state() !== 'running') throw new Error(`The run had ended before ${LOOKS} pages were looked at`)
    return measured
  } finally {
    run.cancel()
    await run.result
  }
}

async function waits(address: string, looks: number): Promise<Waits> {
  const took: number[] = []
  const delay = monitorEventLoopDelay({ resolution: 5 })
  delay.enable()
  for (let look = 0; look < looks; look += 1) {
    await sleep(PAUSE)
    const began = performance.now()
    const response = await fetch(`${address}${PATHS[look % PATHS.length]}`)
    const body = await response.text()
    if (!response.ok) throw new Error(`${response.status}: ${body}`)
    took.push(performance.now() - began)
  }
  delay.disable()
  const sorted = took.toSorted((a, b) => a - b)
  const [median, worst] = [sorted[Math.floor(looks / 2)], sorted.at(-1)]
  return { median: median ?? Number.NaN, worst: worst ?? Number.NaN, timers: delay.max / 1e6 }
}

function serving(token: string): Promise<Server> {
  const server = createServer((request, response) => {
    page(request.url ?? '/', token).then(
      (body) => response.writeHead(200, { 'content-type': 'application/json' }).end(body),
      (error: unknown) => response.writeHead(500).end(String(error)),
    )
  })
  return new Promise((settle) => {
    server.listen(0, '127.0.0.1', () => settle(server))
  })
}

async function page(path: string, token: string): Promise<string> {
  const now = new Date()
  const [shop, actor] = [await findShop(), await personOfToken(token, now)]
  if (!shop || !actor) throw new Error('Nobody is signed in')
  if (path === '/stock') return JSON.stringify([actor, await listTubes({ search: '', view: 'in-stock', page: 1, now })])
  return JSON.stringify([actor, await Promise.all([listOpenJobs(), listClosedJobs(12), listStockedParts()])])
}

/** Jobs that want more tubes of one type than there are. */
function bigOrder(): ShareOrder {
  const random = generator(3)
  const reading = (middle: number, spread: number) => Math.max(0.5, middle + spread * gaussian(random))
  const stock = Array.from({ length: TUBES }, (_, at) => ({
    candidate: readTube(`T-${at + 1}`, Number(reading(72, 7).toFixed(3)), Number(reading(6, 0.5).toFixed(3))),
    stocked: null,
    heldFor: null,
  }))
  const sizes = [4, 4, 2, 6, 4, 8, 2, 4, 6, 4]
  const jobs = Array.from({ length: JOBS }, (_, at) => ({
    jobNumber: String(1001 + at),
    basis: null,
    readOn: '',
    groups: [
      {
        group: 'Output',
        designation: '6L6GC',
        demand: aDemand(sizes[at % sizes.length] as number),
        sockets: [],
        circuit: fail('Not read.'),
      },
    ],
  }))
  const limits = someLimits({ yardsticks: { plateCurrent: amps(0.005), transconductance: ratio(0.1) }, asOf: AS_OF })
  return { jobs, stock, limits, view: null, seconds: 60 }
}
