/** One tube type as written down in the data files: compact, every figure with its source. */
import type { SourceKey } from './handbook-sources'
import type { RatingSystem, TubeBase, TubeClass, TubeRole } from './tube-variant'

/** Value in the unit of the field's name, source, remark. */
export type Figure = readonly [value: number, source: SourceKey, remark?: string]

export type LimitKey =
  | 'plateVolts'
  | 'plateVoltsCold'
  | 'screenVolts'
  | 'screenVoltsCold'
  | 'plateScreenJoinedVolts'
  | 'triodeConnectedVolts'
  | 'triodeOrUltralinearVolts'
  | 'plateWatts'
  | 'bothUnitsPlateWatts'
  | 'screenWatts'
  | 'plateAndScreenWatts'
  | 'triodeConnectedWatts'
  | 'cathodeMilliamps'
  | 'plateMilliampsGridSupplied'
  | 'plateMilliampsCathodeBias'
  | 'heaterCathodeVolts'
  | 'gridLeakMegohms'
  | 'gridLeakGridSuppliedMegohms'
  | 'gridLeakCathodeBiasMegohms'
  | 'warmUpSeconds'
  | 'bulbCelsius'
  | 'peakInverseVolts'
  | 'peakPlateMilliamps'
  | 'transientPlateAmps'
  | 'outputMilliamps'
  | 'capacitorInputRmsVolts'
  | 'chokeInputRmsVolts'
  | 'transformerRmsVolts'
  | 'reservoirMicrofarads'
  | 'sourceOhmsPerPlate'
  | `sourceOhmsPerPlateAt${number}Volts`

export type RowKey =
  | 'plateVolts'
  | 'screenVolts'
  | 'suppressorVolts'
  | 'gridVolts'
  | 'supplyVolts'
  | 'screenSupplyVolts'
  | 'plateMilliamps'
  | 'plateMilliampsFullSignal'
  | 'screenMilliamps'
  | 'screenMilliampsFullSignal'
  | 'gmMilliampsPerVolt'
  | 'plateResistanceKilohms'
  | 'mu'
  | 'screenGridMu'
  | 'cathodeOhms'
  | 'commonCathodeOhms'
  | 'commonScreenOhms'
  | 'loadKilohms'
  | 'plateToPlateKilohms'
  | 'plateLoadKilohms'
  | 'voltageGain'
  | 'distortionPercent'
  | 'outputWatts'
  | 'dropVolts'
  | 'dropMilliampsPerPlate'

/** Per tube, or per unit of a twin, as `appliesTo` says. */
export type HandbookRatings = {
  readonly appliesTo: string
  readonly system: RatingSystem
  readonly systemNote: string | null
  readonly limits: Readonly<Partial<Record<LimitKey, Figure>>>
  readonly note: string | null
}

export type OperatingRow = {
  readonly label: string
  /** 2: the currents are sums of both tubes of a push-pull pair. */
  readonly currentsFor: 1 | 2
  readonly connection: 'pentode' | 'triode' | 'diode'
  readonly figures: Readonly<Partial<Record<RowKey, Figure>>>
  readonly note: string | null
}

export type HandbookVariant = {
  /** The first one is the usual writing. */
  readonly designations: readonly [string, ...string[]]
  /**
   * Null: the sources contradict each other, so none is given. 'lowest-of-type':
   * no sheet of its own is known here, the lowest limits among the variants stand in.
   */
  readonly ratings: HandbookRatings | null | 'lowest-of-type'
}

export type OtherNumber = {
  readonly number: string
  readonly kind: 'other-number' | 'special-quality'
  /** The designation it stands for. */
  readonly of: string
  readonly source: SourceKey
  readonly note: string | null
}

/** Sometimes fitted instead, after checking base, heater and ratings: never resolved as the same tube. */
export type SimilarType = { readonly number: string; readonly source: SourceKey; readonly note: string | null }

export type HandbookType = {
  readonly id: string
  readonly family: string
  readonly role: TubeRole
  readonly tubeClass: TubeClass
  /** As the handbook words it. */
  readonly className: string
  readonly base: Pick<TubeBase, 'name' | 'eia' | 'pins'> & {
    readonly eiaSource: SourceKey
    readonly pinsSource: SourceKey
  }
  readonly heaters: readonly { readonly volts: Figure; readonly amps: Figure; readonly use: string | null }[]
  readonly variants: readonly HandbookVariant[]
  readonly otherSection: HandbookRatings | null
  readonly rows: readonly OperatingRow[]
  readonly otherNumbers: readonly OtherNumber[]
  readonly similar: readonly SimilarType[]
  readonly notes: readonly string[]
}
