import { describe, expect, it } from 'vitest'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import {
  type Fitting,
  fittedTubeText,
  readFittedTube,
  sheetAsOf,
  takenOut,
  tubesChangedAt,
} from '@/lib/domain/amp/fitting'
import { plainSocket } from '@/lib/domain/amp/socket'

const at = (hour: number) => new Date(Date.UTC(2031, 4, 6, hour))
const row = (over: Partial<Fitting>): Fitting => ({
  id: 'f',
  socketId: 's',
  tubeId: null,
  jobId: 'j',
  type: '6L6G',
  mark: '',
  fittedAt: at(8),
  fittedBy: 'as received',
  removedAt: null,
  ...over,
})
const RECEIVED = row({ id: 'old', removedAt: at(12) })
const FITTED = row({ id: 'new', tubeId: 't', type: '6L6GC', mark: 'T-0007', fittedAt: at(12), fittedBy: 'Ines' })
const sheet = (typeFitted: string, markFitted = ''): AmpSheet => ({
  amp: {} as AmpSheet['amp'],
  sockets: [{ ...plainSocket('V3', 'output', typeFitted), markFitted, id: 's', place: 0 }],
})
const typeAt = (hour: number, fittings: readonly Fitting[], now = sheet('6L6GC', 'T-0007')) =>
  sheetAsOf(now, fittings, at(hour)).sockets[0]?.typeFitted

describe('a fitted tube as text', () => {
  it.each([
    { type: '6L6GC', mark: 'T-0007' },
    { type: '12AX7', mark: 'quiet one, mark it' },
    { type: '', mark: 'T-9' },
    { type: 'EL34', mark: '' },
  ])('%j is read back as it was', (tube) => {
    expect(readFittedTube(fittedTubeText(tube))).toEqual(tube)
  })
})

describe('the sheet as of an instant', () => {
  it('has the tube that sat there when it was read: 6L6G before noon, 6L6GC from noon on', () => {
    expect([9, 12, 15].map((hour) => typeAt(hour, [RECEIVED, FITTED]))).toEqual(['6L6G', '6L6GC', '6L6GC'])
  })

  it('without a row it is the sheet itself; before the only row nothing is known', () => {
    expect(typeAt(9, [])).toBe('6L6GC')
    expect(typeAt(9, [FITTED])).toBe('')
  })

  it('of what sits there now the sheet is believed, where it may have been corrected', () => {
    expect(typeAt(15, [RECEIVED, FITTED], sheet('5881'))).toBe('5881')
  })
})

describe('what this job changed', () => {
  it('the old tube is the customer’s; what the job put in and took out again is the shop’s', () => {
    const undone = { ...FITTED, removedAt: at(13) }
    expect(takenOut([RECEIVED, undone], 'j', at(8)).map(({ id }) => id)).toEqual(['old'])
    expect(takenOut([RECEIVED], 'j', at(13))).toEqual([])
  })

  it('the last change is the latest in or out since the amplifier came', () => {
    expect(tubesChangedAt([RECEIVED, FITTED], 'j', at(8))).toEqual(at(12))
    expect(tubesChangedAt([{ ...FITTED, jobId: 'earlier' }], 'j', at(13))).toBeNull()
  })
})
