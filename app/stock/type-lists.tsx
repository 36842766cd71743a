/** Suggestions for the boxes of type and instrument; anything else may be typed there too. */
import { listDesignations } from '@/lib/domain/tube/list-designations'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'

export const TYPE_LIST = 'tube-types'
export const TESTER_LIST = 'tube-testers'

type Props = {
  readonly testers: readonly string[]
  readonly catalogue: TubeCatalogue
  readonly sets?: readonly string[]
}

export function TypeLists({ testers, catalogue, sets = [] }: Props) {
  return (
    <>
      <datalist id={TYPE_LIST}>
        {[...new Set(listDesignations(catalogue))].map((designation) => (
          <option key={designation} value={designation} />
        ))}
      </datalist>
      <datalist id={TESTER_LIST}>
        {testers.map((tester) => (
          <option key={tester} value={tester} />
        ))}
      </datalist>
      <datalist id="tube-sets">
        {sets.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </>
  )
}
