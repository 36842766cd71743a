/** The names of the ready-made choices, and why a set bears them. */
import { sidesText } from '@/lib/domain/matching/matching-text'
import type { MatchGrade } from '@/lib/domain/matching/proposal'
import { safeMarginsText } from '@/lib/domain/matching/safe-margins-text'
import { capital, type Words } from '@/lib/domain/words'
import type { SetRole, ShownSet } from './group-proposal'

function roleName(role: SetRole, match: MatchGrade, { tubes }: Words): string {
  switch (role) {
    case 'best':
      return 'best by the weights'
    case 'safe':
      return 'safe working'
    case 'closest':
      return match === 'outside' ? 'closest there is, but no match' : 'closest match'
    case 'value':
      return 'best value'
    case 'next':
      return `next best of other ${tubes}`
  }
}

/** "Best by the weights, safe working and closest match" */
export function rolesTitle({ option, roles }: ShownSet, words: Words): string {
  const names = roles.map((role) => roleName(role, option.match, words))
  const last = names.pop() ?? ''
  return capital(names.length === 0 ? last : `${names.join(', ')} and ${last}`)
}

/** Says which of several names it is the reason of. */
export function roleReasons({ option, roles }: ShownSet, words: Words): string[] {
  return roles.flatMap((role) => {
    const reason = roleReason(role, sidesText(option) !== null, words)
    if (reason === null) return []
    return roles.length === 1 ? reason : `${capital(roleName(role, option.match, words))}: ${reason}`
  })
}

/** `sides`: tubes stand in parallel on each side, so their difference counts too. */
function roleReason(role: SetRole, sides: boolean, words: Words): string | null {
  switch (role) {
    case 'best':
      return `Spread, ${sides ? 'difference of the sides, ' : ''}price, rarity and how sure its figures are, weighed together.`
    case 'safe':
      return safeMarginsText(words)
    case 'closest':
      return sides
        ? 'Least spread and difference of the sides there is, whatever it costs.'
        : 'Least spread there is, whatever it costs.'
    case 'value':
      return 'The cheapest set that lies within the yardsticks.'
    case 'next':
      return null
  }
}

/** One alone is as close to itself as any other. */
export const rolesOfOne = (roles: readonly SetRole[]): SetRole[] => roles.filter((role) => role !== 'closest')
