/** The round as it was read, and what it would read at the marked mains voltage, one under the other. */
import { ThenTable } from '@/app/_components/what-if/then-table'
import type { AmpCircuit } from '@/lib/domain/circuit/amp/amp-circuit'
import { restatedAtMains } from '@/lib/domain/circuit/change/restated'
import { socketList, whatIfFaultText } from '@/lib/domain/circuit/circuit-text'
import type { Words } from '@/lib/domain/words'

export function RestatedTable({ circuit, words }: { circuit: AmpCircuit; words: Words }) {
  const found = restatedAtMains(circuit)
  if (!found.ok) return <p className="form-message">{whatIfFaultText(found.fault, words)}</p>
  const { readAtWallVolts, statedAtWallVolts, sockets, reservoirVolts } = found.value
  const unread = sockets.filter(({ wasRead }) => !wasRead).map(({ position }) => position)
  return (
    <>
      <p>
        {words.supply} at the reservoir: {reservoirVolts.asRead.toFixed(0)} V as read,{' '}
        {reservoirVolts.restated.toFixed(0)} V restated.
        {unread.length > 0 && ` No current was read at ${socketList(unread)}: taken as the others'.`}
      </p>
      <ThenTable
        sockets={sockets.map(({ position, asRead, restated }) => ({ position, now: asRead, changed: restated }))}
        changed
        states={[`as read, ${readAtWallVolts} V`, `restated, ${statedAtWallVolts} V`]}
        words={words}
      />
    </>
  )
}
