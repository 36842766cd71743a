/**
 * What may be typed at a safety line: bounds of the box only. Whether it may be
 * signed so is decided by the step, because that hangs on the button pressed.
 */
import * as z from 'zod/mini'
import { box, measure, optionalChoice, rows, text, version } from '@/app/_components/form/fields'
import { type Check, OUTCOMES } from '@/lib/domain/safety/check'

const nothing = () => box((): number | null => null)

export function lineSchema({ source, detail }: Check) {
  return z.object({
    version: version(),
    outcome: optionalChoice('Outcome', OUTCOMES),
    value: source.kind === 'typed' ? measure(source.box) : nothing(),
    detail: text({ label: detail?.label ?? 'Noted', max: 300 }),
    instrumentId: text({ label: 'Instrument' }),
    reason: text({ label: 'Reason', max: 500 }),
    parts: rows(z.object({ ohms: measure({ label: 'Measured', unit: 'Ω', min: 0, max: 1_000_000 }) })),
  })
}
