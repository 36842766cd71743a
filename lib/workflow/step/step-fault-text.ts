/** The sentence for every expected refusal of a step. */

import { formatInstant } from '@/lib/domain/calendar'
import { changeSentence } from '@/lib/domain/history/changes'
import { jobStateWord, nextStates } from '@/lib/domain/job/job-state'
import { pickupFaultText } from '@/lib/domain/job/pickup-fault'
import { dutyNeeds } from '@/lib/domain/person/role'
import { LIMIT_WINDOW_MINUTES } from '@/lib/domain/person/sign-in-limit'
import { quoteFaultText } from '@/lib/domain/quote/quote-fault'
import { safetyFaultText } from '@/lib/domain/safety/safety-text'
import type { Shop } from '@/lib/domain/shop/shop'
import { planChangeText } from '@/lib/domain/stock/plan-change'
import { stockFaultText } from '@/lib/domain/stock/stock-fault'
import { whereaboutsWord } from '@/lib/domain/stock/tube'
import { tubeFaultText } from '@/lib/domain/stock/tube-fault'
import { ownTypeFaultText } from '@/lib/domain/tube/own/own-type-text'
import { wordsFor } from '@/lib/domain/words'
import { tableFaultText } from '@/lib/exchange/read-table'
import type { StepFault } from './step-fault'

export function stepFaultText(fault: StepFault, shop: Pick<Shop, 'timeZone' | 'words'>): string {
  switch (fault.code) {
    case 'not-your-duty':
      return dutyNeeds(fault.duty)
    case 'not-found':
      return `${fault.what} is not there. It may have been removed meanwhile; go back and look again.`
    case 'stale': {
      const when = fault.savedAt
        ? ` at ${formatInstant(fault.savedAt, shop.timeZone, wordsFor(shop.words).locale)}`
        : ''
      const what = fault.changes.length > 0 ? `: ${fault.changes.map(changeSentence).join('; ')}.` : '.'
      return `${fault.savedBy} saved this sheet${when}, after you opened it${what}`
    }
    case 'amp-already-here':
      return `This amplifier is already in the shop on job ${fault.jobNumber}. Open that job instead of a second one.`
    case 'position-twice':
      return `Position ${fault.position} stands twice on the sheet. Every socket needs a position of its own.`
    case 'shared-by-too-many': {
      const { position, part, count, sockets, side } = fault
      const there = `${sockets} output socket${sockets === 1 ? '' : 's'} ${side === '' ? 'on the sheet' : `on side ${side}`}`
      return `${position}: ${count} ${wordsFor(shop.words).tubes} cannot share its ${part}; there ${sockets === 1 ? 'is' : 'are'} only ${there}.`
    }
    case 'socket-in-use':
      return `${fault.position} cannot be taken out: ${socketPast(fault, wordsFor(shop.words).tube)} to it. Keep it, or give it another position.`
    case 'sheet-not-empty':
      return `The sheet already has ${fault.sockets} sockets. A sheet is copied only onto an empty one.`
    case 'other-model':
      return `${fault.model} is not the same make and model as ${fault.wanted}. Its sheet is not copied.`
    case 'plan-stale': {
      const changes = fault.changes.map((change) => planChangeText(change, wordsFor(shop.words)))
      return `Nothing was written down. Since this was worked out: ${changes.join('; ')}. Work it out again.`
    }
    case 'nothing-read':
      return 'No reading is filled in. Enter what the meter showed at one socket at least.'
    case 'job-closed':
      return `The job is “${jobStateWord(fault.state)}” and its papers are handed over, so nothing is added to it. Take the amplifier in again.`
    case 'tubes-refused':
      return fault.faults.map((each) => tubeFaultText(each, wordsFor(shop.words))).join(' ')
    case 'tube-held':
      return `${fault.mark} is held for ${fault.jobNumber ? `job ${fault.jobNumber}` : 'another job'}. Release it there first, or choose another ${wordsFor(shop.words).tube}.`
    case 'tube-fitted':
      return `${fault.mark} sits in ${fault.place}. It leaves there with that amplifier's job, not from the shelf.`
    case 'tube-already':
      return `${fault.mark} is already ${whereaboutsWord(fault.whereabouts)}.`
    case 'currency-stands':
      return `The currency stays ${fault.currency}: amounts are already written in it, in quotes, prices, payments or spending limits.`
    case 'last-keeper':
      return `${fault.name} is the only one left who keeps the shop. Give that to somebody else first.`
    case 'sign-in-name-taken':
      return `The sign-in name ${fault.signInName} is taken. Choose another.`
    case 'pass-phrase-wrong':
      return 'The present pass phrase does not fit. Nothing was changed.'
    case 'too-many-tries':
      return `Too many failed tries. Wait ${LIMIT_WINDOW_MINUTES} minutes and try again.`
    case 'not-your-instruments':
      return 'Instruments are kept by a technician, or by whoever keeps the shop.'
    case 'meter-has-readings':
      return `${fault.name} stays a meter: readings were taken with it. Retire it and write the other instrument down anew.`
    case 'own-type-refused':
      return fault.faults.map(ownTypeFaultText).join(' ')
    case 'maker-there':
      return `Name: ${fault.name} is on the list already. Open it and add to it.`
    case 'type-withdrawn':
      return `${fault.designation} was written down before and withdrawn. Open it and take it into use again.`
    case 'quote-not-draft':
    case 'quote-not-waiting':
    case 'quote-not-answered':
    case 'quote-not-out':
    case 'quote-empty':
    case 'quote-below-zero':
    case 'valid-day-past':
    case 'validity-over':
    case 'answer-ahead':
    case 'answer-before-quote':
    case 'no-address':
    case 'tube-twice':
    case 'tube-not-free':
    case 'work-begun':
    case 'mail-settled':
    case 'no-tube-quoted':
    case 'exchange-for-itself':
    case 'exchange-taken':
    case 'exchange-fitted':
    case 'exchange-unfit':
    case 'exchange-dearer':
      return quoteFaultText(fault, wordsFor(shop.words))
    case 'outcome-missing':
    case 'value-missing':
    case 'limit-broken':
    case 'detail-missing':
    case 'instrument-missing':
    case 'reason-missing':
    case 'does-not-apply':
    case 'fuse-differs':
    case 'idle-not-read':
    case 'idle-before-fitting':
    case 'idle-not-judged':
    case 'idle-dead':
    case 'idle-over':
    case 'idle-uncertain':
    case 'release-blocked':
      return safetyFaultText(fault, wordsFor(shop.words))
    case 'work-closed':
    case 'no-tube-ordered':
    case 'socket-not-on-sheet':
    case 'socket-holds':
    case 'not-fitted-here':
    case 'nothing-owed':
    case 'overpaid':
    case 'refund-too-high':
    case 'no-amount':
    case 'items-left':
    case 'balance-open':
    case 'balance-over':
    case 'collector-missing':
    case 'identity-missing':
    case 'return-reason-missing':
    case 'way-missing':
    case 'not-handed-over':
    case 'take-back-reason-missing':
    case 'taken-in-since':
      return pickupFaultText(fault, wordsFor(shop.words))
    case 'table-refused':
      return tableFaultText(fault.fault)
    case 'sheet-mark-missing':
    case 'sheet-mark-unknown':
    case 'sheet-other-type':
    case 'sheet-tested-already':
    case 'sheet-not-in-stock':
    case 'lot-empty':
    case 'count-below-zero':
    case 'part-not-there':
    case 'photo-empty':
    case 'photo-too-big':
    case 'photo-no-picture':
    case 'photo-damaged':
    case 'photos-full':
    case 'import-undone-already':
    case 'import-under-way':
    case 'labels-off-page':
      return stockFaultText(fault, wordsFor(shop.words))
    case 'cannot-move': {
      const next = nextStates(fault.from).map(jobStateWord)
      const ways = next.length > 0 ? `From there it can go to ${next.join(', ')}.` : 'It is closed.'
      return `The job is “${jobStateWord(fault.from)}” and cannot become “${jobStateWord(fault.to)}”. ${ways}`
    }
  }
}

type SocketInUse = Extract<StepFault, { code: 'socket-in-use' }>

function socketPast({ readings, fittings }: SocketInUse, tube: string): string {
  const parts = [counted(readings, 'bench reading'), counted(fittings, `fitted ${tube}`)].filter(Boolean)
  return `${parts.join(' and ')} ${readings + fittings === 1 ? 'belongs' : 'belong'}`
}

const counted = (count: number, what: string) => (count === 0 ? '' : `${count} ${what}${count === 1 ? '' : 's'}`)
