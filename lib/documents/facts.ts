/**
 * What the papers share: the facts handed to a view, still as domain values.
 *
 * Instants are ISO 8601 with zone ("2026-10-08T13:05:00Z") and are shown in the
 * shop's zone; plain days are "2026-10-08" and never shift. Null is "not known"
 * and prints so; it is never shown as zero.
 */
import type { Amps, Ratio, Seconds, Siemens, Volts, Watts } from '@/lib/domain/units'
import type { WordSet } from '@/lib/domain/words'
import type { Letterhead, PaperSize } from './paper'

/** Which words of the trade the shop speaks. */
export type Words = WordSet

export type PaperSettings = {
  readonly shop: Letterhead
  readonly size: PaperSize
  readonly words: Words
  /** BCP 47, for money and numbers. Dates follow the words. */
  readonly locale: string
  /** IANA name: "America/New_York". */
  readonly zone: string
  /** ISO 4217. */
  readonly currency: string
  readonly issuedAt: string
}

export type CustomerFacts = {
  readonly name: string
  readonly addressLines: readonly string[]
  readonly phone: string
  readonly email: string
  /** In words: "phone, after five". */
  readonly preferredContact: string
}

export type AmpFacts = {
  readonly make: string
  readonly model: string
  readonly serial: string
  readonly mainsVoltage: Volts | null
  readonly protectionClass: 'I' | 'II' | null
  /** Type and value: "T 2.5 A". */
  readonly fuse: string
}

export type CountedItem = { readonly count: number; readonly label: string }

export type TestPoint = {
  readonly plateVoltage: Volts
  /** Null for a triode. */
  readonly screenVoltage: Volts | null
  readonly gridVoltage: Volts
}
export type TestedSection = { readonly plateCurrent: Amps; readonly transconductance: Siemens | null }
export type TubeTestFacts = {
  /** Plain day. */
  readonly testedOn: string
  readonly instrument: string
  readonly testPoint: TestPoint
  /** One for each section, in the order of the base. */
  readonly sections: readonly TestedSection[]
}

/** A match without date, test point and tolerance is void, so none of the three may be absent. */
export type MatchFacts = {
  readonly marks: readonly string[]
  readonly type: string
  /** Plain days of the first and the last of the tests that are compared; often the same. */
  readonly testedFrom: string
  readonly testedTo: string
  readonly instrument: string
  readonly testPoint: TestPoint
  /** Left out: compared at the test point. Else by the idle predicted in the amplifier, as read on a plain day. */
  readonly predicted?: {
    readonly readOn: string
    readonly plusMinus: Amps
    /** Of a difference between them; null for one alone. */
    readonly apartPlusMinus: Amps | null
  }
  /** Readings carried over from another instrument by reference tubes read on both. Left out: all are as read. */
  readonly carried?: readonly {
    readonly marks: readonly string[]
    readonly from: string
    readonly to: string
    /** Of one plate current carried, half of the 95 % band as a share. */
    readonly share: Ratio
  }[]
  /** Of a difference across instruments at the test point. Left out: predicted, or carried alike. */
  readonly apartPlusMinus?: Amps
  readonly plateCurrentSpread: Amps
  readonly plateCurrentTolerance: Amps
  readonly transconductanceSpread: Ratio | null
  readonly transconductanceTolerance: Ratio | null
}

/** `half` is the half-width of the band, in the unit of the value; null is "not worked out". */
export type Banded<Unit> = { readonly value: Unit; readonly half: Unit | null }

export type SocketReadingFacts = {
  readonly position: string
  readonly type: string
  /** Plate to cathode. */
  readonly plateVoltage: Volts | null
  readonly plateCurrent: Banded<Amps> | null
  readonly plateDissipation: Banded<Watts> | null
  readonly shareOfRating: Banded<Ratio> | null
  /** Bench words: "within", "hotter than the limit". */
  readonly verdict: string
  /** True when an assumption enters, as a typical screen share or an equal split: printed as an estimate. */
  readonly estimated?: boolean
}
export type ReadingSetFacts = {
  readonly takenAt: string
  readonly takenBy: string
  /** In words, one for each method used. */
  readonly methods: readonly string[]
  readonly instruments: readonly string[]
  readonly wallVoltage: Volts | null
  readonly warmUp: Seconds | null
  /** "no signal", or what was fed. */
  readonly signal: string
  /** In chassis order. */
  readonly sockets: readonly SocketReadingFacts[]
}

/** One line of the safety sign-off. Limit and value carry their units already. */
export type SignOffFacts = {
  readonly line: string
  readonly limit: string
  readonly outcome: 'open' | 'passed' | 'failed' | 'not-tested'
  /** Empty while open; for a line not tested, the reason. */
  readonly value: string
  readonly instrument: string
  /** Plain day; null where no instrument is used or its date is not known. */
  readonly calibratedOn: string | null
  readonly name: string
  /** Instant. */
  readonly signedAt: string | null
}
