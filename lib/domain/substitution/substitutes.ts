/** Every variant a shop knows, asked of one socket. */
import { findTubeType } from '../tube/find-tube-type'
import { listDesignations } from '../tube/list-designations'
import type { AmpSocket, SubstitutionRules } from './amp-socket'
import { ANSWERS, type Substitute, substitute } from './substitute'

/**
 * Types of the socket's own role and base, best answer first, then by designation. Of several
 * numbers of one variant the usual one stands for all. What has another base or is another
 * kind of tube is not listed: it would be most of the handbook.
 */
export function substitutesFor(socket: AmpSocket, rules: SubstitutionRules): Substitute[] {
  const { made } = socket
  const all = listDesignations(rules.catalogue).flatMap((designation) => {
    const variant = findTubeType(designation, rules.catalogue)
    return variant && variant.role === made.role && variant.base.name === made.base.name ? [variant] : []
  })
  return all
    .map((variant) => substitute(variant, socket, rules))
    .filter(({ findings }) => findings.every(({ check }) => check !== 'kind' && check !== 'base'))
    .sort(
      (a, b) =>
        ANSWERS.indexOf(a.answer) - ANSWERS.indexOf(b.answer) ||
        a.proposed.designation.localeCompare(b.proposed.designation, 'en', { numeric: true }),
    )
}
