/** A new pass phrase, typed twice. Spaces at its ends are not part of it, here and when signing in. */
import { checkPassPhrase, LONGEST_PASS_PHRASE, SHORTEST_PASS_PHRASE } from '@/lib/domain/person/password'
import { box } from './fields'

export const newPassPhrase = (label: string) =>
  box((typed, refuse) => {
    const checked = checkPassPhrase(typed)
    if (checked.ok) return checked.value
    return checked.fault === 'too-short'
      ? refuse(`${label} is too short. It needs at least ${SHORTEST_PASS_PHRASE} characters; a few words are good.`)
      : refuse(`${label} is too long. At most ${LONGEST_PASS_PHRASE} characters fit.`)
  })

export const sameAgain = (label: string, first: string) =>
  box((typed, refuse) =>
    typed === first ? null : refuse(`${label} differs from the one before. Type the same twice.`),
  )
