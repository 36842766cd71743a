/**
 * A stocked tube as the choice of a matched set looks at it: printed ratings of
 * its own variant from the handbook, its latest usable test, and whether it is
 * free for the job in hand.
 *
 * The reading is section 1 alone: sets are chosen for output sockets. A twin's second
 * section is compared with its first, for phase inverters (`twinOf`). Days are the shop's, so that the age of
 * a test does not depend on the hour. A tube whose only record is a short has no
 * reading to compare, so it is passed in as untested.
 */
import { dayInZone } from '../calendar'
import type {
  Candidate,
  TubeTest as ComparedTest,
  SectionFigures,
  TestPoint,
  TubeRatings,
  TubeState,
  TwinCandidate,
} from '../matching/candidate'
import type { TubeCatalogue } from '../tube/tube-catalogue'
import type { Ratings, SourcedNumber } from '../tube/tube-variant'
import { volts, watts } from '../units'
import { heardTexts, microphonyGrade } from './microphony'
import { stockType } from './stock-type'
import { activeHold, type SectionReading, type Tube, type TubeTest, whereaboutsWord } from './tube'

export type CandidateView = {
  readonly now: Date
  readonly timeZone: string
  /** Tubes held for it are free here. */
  readonly jobInHand: string | null
  readonly catalogue: TubeCatalogue
}

type JudgedTest = Omit<TubeTest, 'id' | 'testedBy' | 'calibratedOn' | 'note' | 'sections'> & {
  readonly sections: readonly Pick<SectionReading, 'plateCurrent' | 'transconductance'>[]
}

/** As much of a stocked tube as is looked at here. */
export type JudgedTube = {
  readonly tube: Pick<Tube, 'id' | 'mark' | 'designation' | 'condition' | 'price'> & HoldFacts
  readonly test: JudgedTest | null
  readonly shortsFoundAt: Date | null
}

export function candidateOf(stocked: JudgedTube, view: CandidateView): Candidate {
  return candidate(stocked, view, knownFactsOf(stocked.tube.designation, view.catalogue))
}

export const candidatesOf = (stock: readonly JudgedTube[], view: CandidateView): Candidate[] =>
  stock.map((stocked) => candidateOf(stocked, view))

type TypeFacts = Pick<Candidate, 'family' | 'base' | 'ratings'>

/** A stock is long and of few designations, and a catalogue never changes: each is looked up once. */
const factsIn = new WeakMap<TubeCatalogue, Map<string, TypeFacts>>()

function knownFactsOf(designation: string, catalogue: TubeCatalogue): TypeFacts {
  const known = factsIn.get(catalogue) ?? new Map<string, TypeFacts>()
  factsIn.set(catalogue, known)
  const facts = known.get(designation) ?? typeFactsOf(designation, catalogue)
  known.set(designation, facts)
  return facts
}

function typeFactsOf(designation: string, catalogue: TubeCatalogue): TypeFacts {
  const { family, base, variant } = stockType(designation, catalogue)
  return { family, base, ratings: ratingsOf(variant?.ratings ?? null, variant?.ratingsStandIn ?? false) }
}

function candidate(stocked: JudgedTube, view: CandidateView, facts: TypeFacts): Candidate {
  const { tube } = stocked
  return {
    tubeId: tube.id,
    mark: tube.mark,
    designation: tube.designation,
    ...facts,
    condition: tube.condition,
    price: tube.price,
    state: stateOf(tube, view),
    test: comparedTest(stocked, view.timeZone),
  }
}

/** null: not both sections were read. */
export function twinOf(stocked: JudgedTube, view: CandidateView): TwinCandidate | null {
  const candidate = candidateOf(stocked, view)
  const [one, other] = (stocked.test?.sections ?? []).flatMap(({ plateCurrent, transconductance }): SectionFigures[] =>
    plateCurrent === null ? [] : [{ plateCurrent, transconductance }],
  )
  const { test } = candidate
  if (!one || !other || !test || !stocked.test) return null
  const heard = heardTexts(stocked.test)
  const ringsStrongly = microphonyGrade(stocked.test.microphony) === 'strong'
  return {
    ...{ ...candidate, test, sections: [one, other] },
    ...(heard.length > 0 ? { heard } : {}),
    ...(ringsStrongly ? { ringsStrongly } : {}),
  }
}

export function ratingsOf(ratings: Ratings | null, standIn: boolean): TubeRatings {
  const figure = <T>(number: SourcedNumber | null | undefined, unit: (value: number) => T): T | null =>
    number ? unit(number.value) : null
  return {
    maxPlateVoltage: figure(ratings?.plateVolts, volts),
    maxScreenVoltage: figure(ratings?.screenVolts, volts),
    maxPlateDissipation: figure(ratings?.plateWatts, watts),
    ...(ratings && standIn ? { standsIn: ratings.appliesTo } : {}),
  }
}

/** All of a tube that says whether it is free. */
export type HoldFacts = Pick<Tube, 'whereabouts' | 'hold' | 'heldForJob' | 'heldForJobNumber' | 'heldUntil'> & {
  readonly further: Pick<Tube['further'], 'reference'>
}

export function stateOf(tube: HoldFacts, { now, jobInHand }: Pick<CandidateView, 'now' | 'jobInHand'>): TubeState {
  if (tube.whereabouts === 'fitted') return { kind: 'fitted', place: 'an amplifier' }
  if (tube.whereabouts !== 'in-stock') return { kind: 'gone', cause: whereaboutsWord(tube.whereabouts) }
  if (tube.further.reference) return { kind: 'gone', cause: 'kept as a shop reference' }
  if (activeHold(tube, now) === '') return { kind: 'free' }
  if (tube.heldForJob !== null && tube.heldForJob === jobInHand) return { kind: 'free' }
  return { kind: 'reserved', holder: tube.heldForJobNumber ? `job ${tube.heldForJobNumber}` : 'another job' }
}

function comparedTest({ test, shortsFoundAt }: JudgedTube, zone: string): ComparedTest | null {
  const reading = test?.sections[0]
  const point = test && testPoint(test)
  if (!test || !reading || reading.plateCurrent === null || !point) return null
  return {
    testedAt: dayInZone(shortsFoundAt ?? test.testedAt, zone),
    instrument: test.instrumentName,
    testPoint: point,
    plateCurrent: reading.plateCurrent,
    transconductance: reading.transconductance,
    shorts: shortsFoundAt !== null,
    leakageNote: leakageNote(test),
  }
}

/** Null for a rectifier, which has no grid: it is not matched by a test point. */
function testPoint({ plateVoltage, screenVoltage, gridVoltage }: JudgedTest): TestPoint | null {
  return plateVoltage === null || gridVoltage === null ? null : { plateVoltage, screenVoltage, gridVoltage }
}

function leakageNote({ leakage, gas }: JudgedTest): string | null {
  const notes = [leakage && `heater to cathode: ${leakage}`, gas && `gas: ${gas}`].filter(Boolean)
  return notes.length > 0 ? notes.join('; ') : null
}
