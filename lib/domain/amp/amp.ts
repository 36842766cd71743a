/** One amplifier, the very one with this serial. Its sockets are its sheet. */
import { fold } from '@/lib/domain/fold'
import type { Socket } from './socket'
import type { ScreenFeedKind } from './supply-facts'

/** Of the mains side: I has a safety earth, II has none by design. */
export const PROTECTION_CLASSES = ['I', 'II', 'unknown'] as const
export type ProtectionClass = (typeof PROTECTION_CLASSES)[number]

export const OUTPUT_CLASSES = ['push-pull', 'single-ended'] as const
export type OutputClass = (typeof OUTPUT_CLASSES)[number]

export type AmpDetails = {
  readonly make: string
  readonly model: string
  /** Empty when it bears none. */
  readonly serial: string
  /** RMS, as marked or as the selector stands. */
  readonly mainsVolts: number
  readonly protectionClass: ProtectionClass
  /** As marked: "T 2 A". Empty when not known. */
  readonly fuse: string
  readonly outputClass: OutputClass
  /** Of each output transformer: plate to plate, or the whole primary when single-ended. Null: not known. */
  readonly plateLoadOhms: number | null
  readonly note: string
}

export type Amp = AmpDetails & {
  readonly id: string
  readonly customerId: string
  /** Counts saves of the amplifier and of its sheet together. */
  readonly version: number
}

export type AmpSheet = {
  readonly amp: Amp
  /** In chassis order. */
  readonly sockets: readonly Socket[]
  /** Of the output tubes; left out where it is not known, which reads as from the supply. */
  readonly screenFeed?: ScreenFeedKind
}

export const ampName = ({ make, model }: Pick<Amp, 'make' | 'model'>): string => `${make} ${model}`.trim()

/** "Corvane Tilt 20, serial 0417"; without a serial it says so. */
export const ampTitle = (amp: Pick<Amp, 'make' | 'model' | 'serial'>): string =>
  `${ampName(amp)}, ${amp.serial === '' ? 'no serial' : `serial ${amp.serial}`}`

const bare = (text: string) => fold(text).replace(/[^\p{L}\p{N}]/gu, '')

/** However it was written: "Tilt-20" and "tilt 20" are one model. An unnamed model is the same as no other. */
export const isSameModel = (one: Pick<Amp, 'make' | 'model'>, other: Pick<Amp, 'make' | 'model'>): boolean =>
  bare(one.model) !== '' && bare(one.model) === bare(other.model) && bare(one.make) === bare(other.make)
