/**
 * A tube type as the bench knows it: one designation with the ratings, base,
 * heater and screen share that belong to that very variant.
 *
 * Plain objects of numbers and strings throughout, so a variant can be stored
 * or sent to the screen as JSON. Names carry the unit.
 */
export type TubeRole = 'output' | 'small-signal' | 'rectifier'

export type TubeClass =
  | 'beam-tetrode'
  | 'power-pentode'
  | 'power-triode'
  | 'triode-pentode'
  | 'triode'
  | 'twin-triode'
  | 'signal-pentode'
  | 'rectifier'

/**
 * design-centre: already leaves room for supply and component spread.
 * design-maximum: not to be exceeded by an average tube under the worst probable equipment conditions.
 * absolute: not to be exceeded by any tube at any time.
 * not-stated: the sheets disagree or do not say.
 * Figures of different systems are never compared without naming them.
 */
export type RatingSystem = 'design-centre' | 'design-maximum' | 'absolute' | 'not-stated'

export type Provenance = {
  readonly basis: 'published' | 'from-memory' | 'shop-entry'
  /** Only for from-memory. */
  readonly confidence: 'high' | 'medium' | 'low' | null
  /** Readable: "6V6GTA data sheet, as transcribed on a builder's page" or "from memory: US receiving-tube handbooks". */
  readonly text: string
}

export type SourcedNumber = {
  readonly value: number
  readonly provenance: Provenance
  readonly note: string | null
}

/** Limits of one tube, or of one unit of a twin. Null where no figure is known. */
export type Ratings = {
  /** Wording of the sheet heading: "6V6, 6V6G, 6V6GT". */
  readonly appliesTo: string
  readonly system: RatingSystem
  readonly systemNote: string | null
  readonly plateVolts: SourcedNumber | null
  readonly screenVolts: SourcedNumber | null
  readonly plateWatts: SourcedNumber | null
  readonly screenWatts: SourcedNumber | null
  readonly cathodeMilliamps: SourcedNumber | null
  /** Every printed limit by its key, the ones above included. */
  readonly all: Readonly<Record<string, SourcedNumber>>
  readonly note: string | null
}

export type Heater = {
  readonly volts: SourcedNumber
  readonly amps: SourcedNumber
  /** "series, pins 4-5"; null when there is only one way to wire it. */
  readonly use: string | null
}

export type TubeBase = {
  readonly name: 'octal' | 'noval' | 'miniature-7' | 'novar' | 'four-pin'
  /** EIA basing, "7AC". */
  readonly eia: string
  readonly pinCount: number
  /** Pin number → electrode, seen from below, clockwise from key or gap. Null: not known well enough to print. */
  readonly pins: Readonly<Record<string, string>> | null
  readonly provenance: Provenance
}

/** Screen current as a share of CATHODE current at idle: value ± half-width, rectangular. */
export type ScreenShare = {
  /** 0.08 is 8 %. */
  readonly share: number
  readonly halfWidth: number
  readonly basis: 'handbook-rows' | 'from-memory'
  /** How many handbook rows the median was taken of; 0 when from memory. */
  readonly rows: number
}

/** How the designation asked for led here. */
export type Resolution =
  | 'designation'
  /** Same tube under another number (CV, VT, national). */
  | 'other-number'
  /** Ruggedised or special-quality issue: the plain type's figures stand in; its own sheet decides. */
  | 'special-quality'
  /** A later letter (A, B, C) not listed here: the earlier issue's figures stand in. */
  | 'later-issue'
  /** Letters behind it are a maker's or dealer's own: the plain type's figures stand in. */
  | 'own-letters'

export type TubeVariant = {
  readonly typeId: string
  /** As this catalogue writes the variant whose ratings are given: "6L6GC". */
  readonly designation: string
  /** The designation asked for, tidied: "CV511". */
  readonly asked: string
  readonly resolution: Resolution
  /** Interchange family: tubes that the trade fits in each other's place (bias set again). */
  readonly family: string
  readonly role: TubeRole
  readonly tubeClass: TubeClass
  readonly base: TubeBase
  readonly heaters: readonly Heater[]
  /** Null: sources contradict each other, or none known. */
  readonly ratings: Ratings | null
  /** True when the tube named prints no limits of its own here and those of a plainer one stand in. */
  readonly ratingsStandIn: boolean
  /** Limits of the other section (triode of a triode-pentode, second unit of a dissimilar twin). */
  readonly otherSection: Ratings | null
  /** Null for types without a screen grid. */
  readonly typicalScreenShare: ScreenShare | null
  readonly notes: readonly string[]
}
