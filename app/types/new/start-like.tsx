/** A known type to start from: a plain form of the address, the same with and without JavaScript. */
import { listDesignations } from '@/lib/domain/tube/list-designations'
import { resolutionText } from '@/lib/domain/tube/resolution-text'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { TubeVariant } from '@/lib/domain/tube/tube-variant'
import styles from '../types.module.css'

type Props = {
  readonly like: string
  readonly designation: string
  readonly from: TubeVariant | null
  readonly catalogue: TubeCatalogue
}

export function StartLike({ like, designation, from, catalogue }: Props) {
  return (
    <section className="panel stack">
      <form action="/types/new" className={`row ${styles.start}`}>
        {designation !== '' && <input type="hidden" name="designation" value={designation} />}
        <div className="field">
          <label htmlFor="like">Start from a known type</label>
          <input id="like" name="like" list="known-types" defaultValue={like} autoComplete="off" />
        </div>
        <button type="submit" className="button quiet">
          Fill the boxes from it
        </button>
      </form>
      <datalist id="known-types">
        {[...new Set(listDesignations(catalogue))].map((known) => (
          <option key={known} value={known} />
        ))}
      </datalist>
      {like !== '' && <Started like={like} from={from} />}
    </section>
  )
}

function Started({ like, from }: Pick<Props, 'like' | 'from'>) {
  if (!from) return <p className="form-message">“{like}” is not known here, so there is nothing to start from.</p>
  const stands = from.resolution === 'designation' ? '' : `${resolutionText(from)} `
  return (
    <p className="form-message">
      {stands}Class, base, pins, heater and limits of the {from.designation} stand in the boxes. Go through each against
      the sheet of the new type: a limit taken over may be too high for it.
    </p>
  )
}
