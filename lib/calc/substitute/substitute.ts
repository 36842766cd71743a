/** `calc substitute`: which types may go into a socket, or whether one may. */
import { z } from 'zod'
import { calculator, type Faults, together } from '@/lib/calc/calculator'
import { knownTube } from '@/lib/calc/input/known-tube'
import { gridVolts, milliampsFromZero, name, ohmsAboveZero, voltsFromZero } from '@/lib/calc/input/quantities'
import { wordSet } from '@/lib/calc/input/word-set'
import { DEFAULT_IDLE_WINDOWS, idleWindow } from '@/lib/domain/bias/idle-verdict'
import { ok, type Result } from '@/lib/domain/result'
import type { AmpSocket, SocketBias } from '@/lib/domain/substitution/amp-socket'
import { substitute as judge, type Substitute } from '@/lib/domain/substitution/substitute'
import { substitutesFor } from '@/lib/domain/substitution/substitutes'
import { answerWord, READ_AFTER_FITTING } from '@/lib/domain/substitution/substitution-text'
import { HANDBOOK_ONLY } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import { amps, ohms, volts } from '@/lib/domain/units'
import { wordsFor } from '@/lib/domain/words'

const bias = z
  .discriminatedUnion('kind', [
    z.strictObject({
      kind: z.literal('grid-supplied'),
      nowVolts: gridVolts('Grid supply as it stands.').optional(),
      coldestVolts: gridVolts('The most negative the adjustment gives.').optional(),
      hottestVolts: gridVolts('The least negative the adjustment gives.').optional(),
    }),
    z.strictObject({
      kind: z.literal('cathode-resistor'),
      ohms: ohmsAboveZero('The cathode resistor. Left out: not known.').optional(),
      sharedBy: z.int().min(1).max(8).default(1).describe('Tubes whose current flows through it.'),
    }),
  ])
  .describe('Of an output socket. Left out for others.')

const input = z.strictObject({
  made: name('Type the socket is wired for.'),
  proposed: z
    .array(name('A type asked about.'))
    .max(100)
    .default([])
    .describe('Empty: every type of its kind and base.'),
  count: z.int().min(1).max(8).default(1).describe('Sockets of the group, all changed together.'),
  service: z.enum(['push-pull-class-ab', 'single-ended-class-a']).default('push-pull-class-ab'),
  plateToCathodeVolts: voltsFromZero('As measured. Left out: not measured.').optional(),
  screenToCathodeVolts: voltsFromZero('As measured. Left out: not measured, or no screen.').optional(),
  bias: bias.optional(),
  gridLeakKilohms: z.number().gt(0).max(100_000).optional().describe('Of each tube.'),
  plateLoadOhms: ohmsAboveZero('Plate to plate, or the whole single-ended primary.').optional(),
  heaterWinding: z
    .strictObject({
      limitAmps: z.number().gt(0).max(100).describe('What the winding may give.'),
      drawnAmps: z.number().min(0).max(100).describe('What all heaters on it draw now.'),
    })
    .optional(),
  reservoirMicrofarads: z.number().gt(0).max(100_000).optional().describe('After the rectifier.'),
  supplyMilliamps: milliampsFromZero('Direct current through the rectifier.').optional(),
  allowOverPrintedRating: z.boolean().default(false).describe('Volts above the print: a note instead of a refusal.'),
  words: wordSet,
})

type Given = z.output<typeof input>

const maybe = <T>(value: number | undefined, unit: (value: number) => T): T | null =>
  value === undefined ? null : unit(value)

function biasOf(given: Given['bias']): SocketBias | null {
  if (!given) return null
  if (given.kind === 'cathode-resistor')
    return { kind: given.kind, resistance: maybe(given.ohms, ohms), sharedBy: given.sharedBy }
  return {
    kind: given.kind,
    now: maybe(given.nowVolts, volts),
    coldest: maybe(given.coldestVolts, volts),
    hottest: maybe(given.hottestVolts, volts),
  }
}

function socketOf(given: Given, made: TubeVariant): AmpSocket {
  const { bias: kind, service, heaterWinding: winding } = given
  return {
    position: 'the socket',
    made,
    count: given.count,
    plateToCathode: maybe(given.plateToCathodeVolts, volts),
    screenToCathode: maybe(given.screenToCathodeVolts, volts),
    bias: biasOf(kind),
    window: kind ? idleWindow({ bias: kind.kind, service, windows: DEFAULT_IDLE_WINDOWS }) : null,
    gridLeak: maybe(given.gridLeakKilohms, (kilohms) => ohms(1000 * kilohms)),
    plateLoad: maybe(given.plateLoadOhms, ohms),
    heaterWinding: winding ? { limit: amps(winding.limitAmps), drawn: amps(winding.drawnAmps) } : null,
    reservoirMicrofarads: given.reservoirMicrofarads ?? null,
    supplyCurrent: maybe(given.supplyMilliamps, (milliamps) => amps(milliamps / 1000)),
  }
}

const report = ({ proposed, answer, findings }: Substitute) => ({
  type: proposed.asked,
  ratingsOf: proposed.designation,
  answer,
  inWords: answerWord(answer),
  findings,
})

function calculate(given: Given): Result<object, Faults> {
  const made = together([knownTube(given.made, 'made')])
  if (!made.ok) return made
  const proposed = together(given.proposed.map((type, index) => knownTube(type, `proposed[${index}]`)))
  if (!proposed.ok) return proposed
  const socket = socketOf(given, made.value[0] as TubeVariant)
  const rules = {
    catalogue: HANDBOOK_ONLY,
    words: wordsFor(given.words),
    allowOverPrintedRating: given.allowOverPrintedRating,
  }
  const all =
    proposed.value.length === 0
      ? substitutesFor(socket, rules)
      : proposed.value.map((variant) => judge(variant, socket, rules))
  return ok({ made: socket.made.designation, answers: all.map(report), caution: READ_AFTER_FITTING })
}

export const substitute = calculator({
  title: 'Substitutes for a socket',
  input,
  example: {
    made: '6L6GC',
    proposed: ['EL34', 'KT66', '7591'],
    count: 2,
    plateToCathodeVolts: 432,
    screenToCathodeVolts: 428,
    bias: { kind: 'grid-supplied', nowVolts: -44, coldestVolts: -56, hottestVolts: -36 },
    gridLeakKilohms: 100,
    plateLoadOhms: 4200,
    heaterWinding: { limitAmps: 4, drawnAmps: 3.3 },
  },
  calculate,
})
