/** What a bottle can be: one version of a type, with all that the rules ask about it. */
import type { TubeClass } from '../tube/tube-variant'
import type { KnowledgeSourceKey } from './knowledge-source'

export type Service = 'civil' | 'jan' | 'signal-corps' | 'common-valve' | 'british-service'

/** One number that a service gave to this version. */
export type ServiceNumber = { readonly service: Service; readonly number: string | null; readonly note: string | null }

/** By designation: metal can, glass with a known suffix, glass without one, or glass by nature (miniatures). */
export type Envelope = 'metal' | 'G' | 'GT' | 'later-G' | 'glass'

export type VersionYears = {
  /** Not made before, as far as is known. */
  readonly from: number
  /** Null: still made, or the end is not known. */
  readonly to: number | null
  readonly source: KnowledgeSourceKey
}

export type Version = {
  /** The designation as written here, unique. */
  readonly designation: string
  readonly typeId: string
  /** The usual designation of the type; the id of a type that the shop wrote down is no word. */
  readonly typeName: string
  /** The number without its suffix: "6L6". Null where a maker's own letters belong to the number. */
  readonly stem: string | null
  /** Other writings of the same: the Latin one of a Cyrillic number. */
  readonly aliases: readonly string[]
  /** How it stands beside the type: its usual number, another number, a special-quality issue. */
  readonly standing: 'designation' | 'other-number' | 'special-quality'
  /** "other number of the 6V6GT". */
  readonly of: string | null
  readonly envelope: Envelope
  readonly baseLetter: 'Y' | 'X' | null
  readonly rugged: boolean
  readonly base: string
  readonly tubeClass: TubeClass
  readonly heaterPins: string | null
  readonly cathode: 'sleeve' | 'filament' | null
  /** Of the base: fewest and most pins that can be there; null where the pins are not known. */
  readonly pins: readonly [fewest: number, most: number] | null
  readonly years: VersionYears | null
  readonly services: readonly ServiceNumber[]
}
