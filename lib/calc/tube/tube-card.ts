/** What the handbook knows of a variant, each number with its provenance, units in the names. */

import { figure } from '@/lib/calc/output/figure'
import { handbookType } from '@/lib/domain/tube/handbook'
import { provenanceOf } from '@/lib/domain/tube/handbook-sources'
import type { HandbookType, HandbookVariant, OperatingRow } from '@/lib/domain/tube/handbook-type'
import { resolutionText } from '@/lib/domain/tube/resolution-text'
import { openRatings, ratingsOf, sourced } from '@/lib/domain/tube/tube-ratings'
import type { Heater, Provenance, Ratings, SourcedNumber, TubeVariant } from '@/lib/domain/tube/tube-variant'

const provenance = ({ basis, confidence, text }: Provenance) => ({ basis, confidence, source: text })

const number = ({ value, provenance: from, note }: SourcedNumber) => ({ value, ...provenance(from), note })

const numbers = (figures: Readonly<Record<string, SourcedNumber>>) =>
  Object.fromEntries(Object.entries(figures).map(([key, one]) => [key, number(one)]))

function ratings(given: Ratings) {
  const { appliesTo, system, systemNote, all, note } = given
  return { appliesTo, system, systemNote, limits: numbers(all), note }
}

const heater = ({ volts, amps, use }: Heater) => ({
  volts: number(volts),
  amps: number(amps),
  watts: figure(volts.value * amps.value),
  use,
})

function base({ base: { name, eia, pinCount, pins, provenance: from } }: TubeVariant) {
  const list = pins && Object.entries(pins).map(([pin, electrode]) => ({ pin: Number(pin), electrode }))
  return { name, eia, pinCount, pins: list, ...provenance(from) }
}

function variantSummary(type: HandbookType, variant: HandbookVariant) {
  const own = ratingsOf(type, variant)
  const plateWatts = own && openRatings(own).plateWatts
  return {
    designations: [...variant.designations],
    ratingSystem: own?.system ?? null,
    plateWatts: plateWatts && number(plateWatts),
    standIn: variant.ratings === 'lowest-of-type',
  }
}

function equivalents(type: HandbookType) {
  return {
    variants: type.variants.map((variant) => variantSummary(type, variant)),
    otherNumbers: type.otherNumbers.map(({ number: written, kind, of, source, note }) => {
      return { number: written, kind, of, ...provenance(provenanceOf(source)), note }
    }),
    /** Never the same tube: base, heater and ratings to be checked first. */
    similarOnly: type.similar.map(({ number: written, source, note }) => {
      return { number: written, ...provenance(provenanceOf(source)), note }
    }),
  }
}

function operatingRow({ label, connection, currentsFor, figures, note }: OperatingRow) {
  const opened = Object.entries(figures).map(([key, one]) => [key, number(sourced(one))])
  return { label, connection, currentsForTubes: currentsFor, figures: Object.fromEntries(opened), note }
}

function screenShare({ typicalScreenShare: typical }: TubeVariant) {
  if (!typical) return null
  const { share, halfWidth, basis, rows } = typical
  return { percentOfCathodeCurrent: figure(100 * share), plusMinus: figure(100 * halfWidth, 2), basis, rows }
}

export function tubeCard(variant: TubeVariant) {
  const type = handbookType(variant.typeId)
  return {
    asked: variant.asked,
    designation: variant.designation,
    resolution: variant.resolution,
    resolutionSentence: resolutionText(variant),
    type: type.id,
    family: variant.family,
    role: variant.role,
    class: type.className,
    ratings: variant.ratings && ratings(variant.ratings),
    ratingsStandIn: variant.ratingsStandIn,
    otherSection: variant.otherSection && ratings(variant.otherSection),
    base: base(variant),
    heaters: variant.heaters.map(heater),
    typicalScreenShare: screenShare(variant),
    equivalents: equivalents(type),
    operatingRows: type.rows.map(operatingRow),
    notes: [...variant.notes],
  }
}
