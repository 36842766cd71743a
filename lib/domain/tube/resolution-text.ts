/** How what was asked for led to the variant whose figures are given. */
import type { TubeVariant } from './tube-variant'

export function resolutionText({
  resolution,
  asked,
  designation,
}: Pick<TubeVariant, 'resolution' | 'asked' | 'designation'>): string {
  switch (resolution) {
    case 'designation':
      return `${designation} is listed.`
    case 'other-number':
      return `${asked} is another number of ${designation}.`
    case 'special-quality':
      return `${asked} is a special-quality issue of ${designation}, whose figures stand in. Its own sheet decides.`
    case 'own-letters':
      return `The last letters of ${asked} are a maker’s or dealer’s own. The figures of ${designation} stand in; its own sheet decides.`
    case 'later-issue':
      return `${asked} is not listed. It reads as a later issue of ${designation}, whose figures stand in. Its own sheet decides.`
  }
}
