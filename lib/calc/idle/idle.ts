/** `calc idle`: from what the bench meter shows to currents, dissipations, bands and verdicts. */

import { calculator, type Faults, faultsOf, together } from '@/lib/calc/calculator'
import type { InputFault } from '@/lib/calc/input/input-fault'
import { knownTube } from '@/lib/calc/input/known-tube'
import { idleFaultText } from '@/lib/domain/bias/bias-text'
import { groupBalance } from '@/lib/domain/bias/group-balance'
import { computeIdle, type IdleResult } from '@/lib/domain/bias/idle'
import type { IdleFault } from '@/lib/domain/bias/idle-fault'
import type { IdleContext } from '@/lib/domain/bias/idle-reading'
import { fail, ok, type Result } from '@/lib/domain/result'
import { type Words, wordsFor } from '@/lib/domain/words'
import { type IdleInput, idleExample, idleInput, type SocketInput } from './idle-input'
import { idleInputFaults } from './idle-input-faults'
import { idleContext, socketReading } from './idle-readings'
import { balanceReport, idleReport } from './idle-report'

/** The key of a socket that each refusal is about. */
const KEYS: Readonly<Record<IdleFault['code'], string>> = {
  'not-an-output-tube': 'type',
  'resistance-not-positive': 'current.ohms',
  'tolerance-out-of-range': 'current.tolerancePercent',
  'drop-negative': 'current',
  'shared-by-not-whole': 'current.sharedBy',
  'warming-out-of-range': 'current.possibleWarmingCelsius',
  'method-needs-cathode-resistor': 'current.method',
  'missing-cathode-voltage': 'cathodeVolts',
  'missing-screen-share': 'screenCurrent',
  'screen-current-negative': 'screenCurrent.milliamps',
  'plate-below-cathode': 'plateVolts',
  'current-beyond-belief': 'current',
  'screen-above-cathode': 'screenCurrent',
}

type Computed = { readonly given: SocketInput; readonly idle: IdleResult }

function compute(
  given: SocketInput,
  index: number,
  context: IdleContext,
  words: Words,
): Result<Computed, readonly InputFault[]> {
  const variant = knownTube(given.type, `sockets[${index}].type`)
  if (!variant.ok) return variant
  const idle = computeIdle(socketReading(given, variant.value), context)
  if (idle.ok) return ok({ given, idle: idle.value })
  const { code } = idle.fault
  return fail([{ code, path: `sockets[${index}].${KEYS[code]}`, sentence: idleFaultText(idle.fault, words) }])
}

function calculate(input: IdleInput): Result<object, Faults> {
  const refused = idleInputFaults(input)
  if (refused.length > 0) return fail(faultsOf(refused))
  const [context, words] = [idleContext(input), wordsFor(input.words)]
  const computed = together(input.sockets.map((given, index) => compute(given, index, context, words)))
  if (!computed.ok) return computed
  const balance = groupBalance(computed.value.map(({ given, idle }) => ({ side: given.side ?? null, idle })))
  return ok({
    sockets: computed.value.map(({ given, idle }) => idleReport(idle, given.type, words)),
    balance: computed.value.length > 1 ? balanceReport(balance, words) : null,
  })
}

export const idle = calculator({
  title: 'Idle of output tubes from bench readings',
  input: idleInput,
  example: idleExample,
  calculate,
})
