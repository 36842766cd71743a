/**
 * The coupled operating point against ngspice (general-purpose circuit simulator, run as
 * WebAssembly), which gets the circuit as a netlist with the published tube equations:
 * see support/ngspice-netlist.ts.
 */
import { beforeAll, describe, expect, test } from 'vitest'
import { ratio } from '@/lib/domain/units'
import { usualStage } from '../domain/circuit/random-stage'
import { solved } from '../domain/circuit/solved'
import { cathodeBiased } from '../domain/circuit/stage-fixture'
import { agreementWithNgspice } from './support/ngspice-agreement'
import { type NgspiceEngine, startNgspice } from './support/ngspice-engine'

const CIRCUITS = 110

let engine: NgspiceEngine
beforeAll(async () => {
  engine = await startNgspice()
}, 60_000)

test(`${CIRCUITS} random stages: every node voltage and current agrees to 1e-6`, async () => {
  const off: string[] = []
  let compared = 0
  for (let seed = 1; seed <= CIRCUITS; seed++) {
    const stage = usualStage(seed)
    const agreement = await agreementWithNgspice(engine, stage, solved(stage))
    compared += agreement.compared
    if (!(agreement.worst <= 1e-6)) off.push(`${seed}: ${agreement.quantity}`)
  }
  expect(off).toEqual([])
  expect(compared).toBeGreaterThan(10 * CIRCUITS)
}, 120_000)

const FED = 25

test(`screens on a tap of 43 % and strapped to their plates: ${FED} random stages of each agree to 1e-6`, async () => {
  const feeds = [{ kind: 'primary-tap', tap: ratio(0.43) }, { kind: 'triode-strapped' }] as const
  const off: string[] = []
  for (const screenFeed of feeds) {
    for (let seed = 1001; seed <= 1000 + FED; seed++) {
      const stage = { ...usualStage(seed), screenFeed }
      const agreement = await agreementWithNgspice(engine, stage, solved(stage))
      if (!(agreement.worst <= 1e-6)) off.push(`${screenFeed.kind} ${seed}: ${agreement.quantity}`)
    }
  }
  expect(off).toEqual([])
}, 60_000)

describe('the comparison itself', () => {
  test('sees a bias resistor that is 0.01 % off', async () => {
    const off = cathodeBiased({ biasResistors: [{ id: 'Rk', resistance: 250.025 as never }] })
    expect((await agreementWithNgspice(engine, off, solved(cathodeBiased()))).worst).toBeGreaterThan(1e-5)
  })

  test('sees a floor of 1 V under the width of the cutoff, which shifts a cold tube by 1e-5', async () => {
    const stage = usualStage(60)
    expect((await agreementWithNgspice(engine, stage, solved(stage), 1)).worst).toBeGreaterThan(1e-5)
  })
})
