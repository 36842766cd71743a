/** A job whose work is done: accepted quote with two tubes, readings after the work, safety lines signed. */
import type { Phase, SocketEntry } from '@/lib/domain/bench/reading-set'
import { CHECK_IDS, type CheckId } from '@/lib/domain/safety/check'
import { findAmpSheet } from '@/lib/store/amp'
import { db } from '@/lib/store/database'
import { listSafetyLines } from '@/lib/store/safety'
import { keepReadings } from '@/lib/workflow/bench/keep-readings'
import type { Step } from '@/lib/workflow/step/step'
import { fitTube } from '@/lib/workflow/work/fit-tubes'
import { type SignedEntry, signSafetyLine } from '@/lib/workflow/work/sign-safety-line'
import { atBench, NOW } from './person-at-work'
import { answer, done, draftWith, jobOf, jobOnBench, send, shopOnFile } from './quoted-job'
import { tubeInStock } from './stocked-shop'

/** So many minutes after the job came in, so that nothing happens at one instant. */
export const later = (minutes: number, who = 'Ines'): Step => atBench(who, new Date(NOW.getTime() + minutes * 60_000))

/** Gives its id. Invented. */
export async function instrumentOnFile(name = 'Safety tester', calibratedOn = '2031-02-11'): Promise<string> {
  const there = await db().instrument.findFirst({ where: { name }, select: { id: true } })
  if (there) return there.id
  const row = await db().instrument.create({ data: { name, kind: 'other', calibratedOn }, select: { id: true } })
  return row.id
}

/** Accepted, with two tubes of stock for V3 and V4. */
export async function acceptedJob(
  owner: { name?: string } = {},
): Promise<{ number: string; tubeIds: readonly [string, string] }> {
  const number = await jobOnBench(owner)
  const tubeIds = [await tubeInStock(), await tubeInStock()] as const
  await draftWith(number, tubeIds)
  done(await send(number))
  done(await answer(number))
  return { number, tubeIds }
}

export async function fitBoth(number: string, step: Step = later(20)): Promise<void> {
  done(await fitTube(step, number, 'V3'))
  done(await fitTube(step, number, 'V4'))
}

const UNREAD = {
  cathodeVolts: null,
  screenVolts: null,
  gridVolts: null,
  senseDropVolts: null,
  halfDropVolts: null,
  screenDropVolts: null,
}

type Read = { phase?: Phase; plateVolts?: number; cathodeVolts?: number; positions?: readonly string[]; step?: Step }

/** Cathode volts over the 250 Ω that V3 and V4 share. */
export async function read(
  number: string,
  { phase = 'after', plateVolts = 340, cathodeVolts = 19, positions = ['V3', 'V4'], step = later(30) }: Read = {},
) {
  const job = await jobOf(number)
  const sheet = await findAmpSheet(job.ampId)
  const entries = positions.map((position): SocketEntry => {
    const socket = sheet?.sockets.find((each) => each.position === position)
    return { ...UNREAD, socketId: socket?.id ?? '', method: 'cathode-bias', plateVolts, cathodeVolts }
  })
  const conditions = {
    phase,
    instrumentId: await instrumentOnFile('Meter 1', '2031-01-20'),
    wallVolts: 121,
    warmupMinutes: 20,
    signalState: 'no signal',
    resistorTolerancePercent: 1,
    copperWarmingCelsius: 0,
    note: '',
  } as const
  return keepReadings(step, { jobNumber: number, setId: null, version: 0, conditions, entries })
}

const BLANK: SignedEntry = { outcome: 'pass', value: null, detail: '', instrumentId: '', reason: '', parts: [] }

/** Good values, in SI. The invented amplifier has no screen resistors on its sheet. */
const GOOD: Readonly<Record<CheckId, Partial<SignedEntry>>> = {
  discharge: { value: 2, detail: '40 s, again after 100 s' },
  fuse: { detail: 'T 1 A' },
  cord: {},
  'earth-bond': { value: 0.11 },
  insulation: { value: 48e6 },
  leakage: { value: 0.00042 },
  'screen-resistors': { outcome: 'not-tested' },
  idle: {},
  'full-power': { value: 17, detail: '8 Ω, 10 min' },
  soak: { value: 90 * 60, detail: 'V3 37.6 mA, V4 37.2 mA' },
  listening: {},
}

export async function signed(
  number: string,
  check: CheckId,
  over: Partial<SignedEntry> & { version?: number } = {},
  step: Step = later(40),
) {
  const { version, ...entry } = over
  const lines = await listSafetyLines((await jobOf(number)).id)
  const there = lines.find((line) => line.check === check)?.version ?? 0
  const instrumentId = await instrumentOnFile()
  const input = {
    jobNumber: number,
    check,
    version: version ?? there,
    entry: { ...BLANK, instrumentId, ...GOOD[check], ...entry },
  }
  return signSafetyLine(step, await shopOnFile(), input)
}

export async function signAll(number: string, except: readonly CheckId[] = [], step: Step = later(40)): Promise<void> {
  for (const check of CHECK_IDS) if (!except.includes(check)) done(await signed(number, check, {}, step))
}
