/** The sentence for every safety line that cannot be signed, and for a release that is blocked. */
import type { Words } from '@/lib/domain/words'
import type { ReleaseFault, SafetyFault } from './safety-fault'

const listed = (names: readonly string[]): string => names.join(', ')

export function safetyFaultText(fault: SafetyFault, words: Words): string {
  switch (fault.code) {
    case 'outcome-missing':
      return 'Press pass, fail or not tested: a line is signed with one of the three.'
    case 'value-missing':
      return `${fault.name}: ${fault.what} is empty. Read it, or sign the line as not tested with the reason.`
    case 'limit-broken':
      return `${fault.name}: ${fault.value} breaks the limit of ${fault.limit}, so it cannot pass. Mend it and read again, or sign it as failed.`
    case 'detail-missing':
      return `${fault.name}: “${fault.what}” is empty. Write it down.`
    case 'instrument-missing':
      return `${fault.name}: no instrument is chosen. A reading without its instrument proves nothing.`
    case 'reason-missing':
      return fault.outcome === 'fail'
        ? `${fault.name}: say what fails.`
        : `${fault.name}: say why it was not tested. The reason is printed.`
    case 'does-not-apply':
      return `${fault.name} cannot be tested here, ${fault.why}. Sign it as not tested.`
    case 'fuse-differs':
      return `The fuse found, “${fault.found}”, is not the one marked, “${fault.marked}”. Fit the right one, or correct the sheet of the amplifier.`
    case 'idle-not-read':
      return 'No readings after the work are written down. Take them first, or sign this line as not tested with the reason.'
    case 'idle-before-fitting':
      return `${listed(fault.marks)} went in after those readings were taken. Read again after the work.`
    case 'idle-not-judged':
      return `${listed(fault.positions)}: the readings after the work give no share of the rating there, so idle cannot be judged. Read again, or sign this line as not tested with the reason.`
    case 'idle-dead':
      return `${listed(fault.positions)} draws next to nothing. That is a fault, not an idle within the rating.`
    case 'idle-over':
      return `${fault.position} idles above its printed rating: ${fault.band} of it. This cannot pass. Run the ${words.tube} colder and read again.`
    case 'idle-uncertain':
      return `${fault.position} may idle above its printed rating: ${fault.band} of it. To pass it all the same, say why in a word, or read it with a better instrument.`
    case 'release-blocked':
      return blockedText(fault)
  }
}

function blockedText({ open, failed, outdated }: ReleaseFault): string {
  const parts = [
    ...(failed.length > 0 ? [`Failed: ${listed(failed)}.`] : []),
    ...(open.length > 0 ? [`Not signed yet: ${listed(open)}.`] : []),
    ...(outdated.length > 0
      ? [`To be signed again: ${outdated.map(({ name, why }) => `${name} (${why})`).join(', ')}.`]
      : []),
  ]
  return `The amplifier is not released. ${parts.join(' ')}`
}
