/**
 * The coupled operating point against ngspice (general-purpose circuit simulator, run as
 * WebAssembly), which gets the circuit as a netlist with the published tube equations:
 * see support/ngspice-netlist.ts.
 */
import { beforeAll, describe, expect, test } from 'vitest'
import { usualStage } from '../domain/circuit/random-stage'
import { solved } from '../domain/circuit/solved'
import { cathodeBiased, gridSupplied } from '../domain/circuit/stage-fixture'
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

describe('the comparison itself', () => {
  test('sees a bias resistor that is 0.01 % off', async () => {
    const off = cathodeBiased({ biasResistors: [{ id: 'Rk', resistance: 250.025 as never }] })
    expect((await agreementWithNgspice(engine, off, solved(cathodeBiased()))).worst).toBeGreaterThan(1e-5)
  })

  test('the floor under the cutoff costs less than 1e-4 of any quantity against the equations as printed', async () => {
    for (const stage of [gridSupplied(), cathodeBiased(), usualStage(1), usualStage(5)]) {
      const printed = await agreementWithNgspice(engine, stage, solved(stage), 0)
      expect(printed.worst).toBeLessThan(1e-4)
    }
  })
})
