/**
 * Operations a new shop starts from, all editable. Hours are common practice,
 * no source; there is no flat price, because prices are the shop's own.
 */
import type { WordSet } from '@/lib/domain/words'
import type { Tx } from '@/lib/store/database'
import { createOperation } from '@/lib/store/operation'

/** Its words differ with the country more than any other's. */
const MAINS_CORD = 'Three-wire power cord, bonded to the chassis'
const MAINS_LEAD = 'Three-core mains lead, bonded to the chassis'

const USUAL: readonly (readonly [name: string, milliHours: number])[] = [
  ['Bench diagnosis', 1000],
  ['Fit and match output set, set idle current', 750],
  ['Set idle current', 500],
  ['Replace filter capacitors', 2000],
  ['Replace coupling capacitor', 500],
  ['Replace screen resistor', 500],
  ['Replace socket', 750],
  ['Clean controls and sockets', 500],
  [MAINS_CORD, 1000],
  ['Full-power and soak test', 500],
]

export async function addUsualOperations(tx: Tx, words: WordSet): Promise<void> {
  for (const [place, [name, milliHours]] of USUAL.entries())
    await createOperation(tx, {
      name: name === MAINS_CORD && words === 'UK' ? MAINS_LEAD : name,
      milliHours,
      flatPrice: null,
      active: true,
      place,
    })
}
