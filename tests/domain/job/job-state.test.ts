import { describe, expect, test } from 'vitest'
import { isClosed, JOB_STATES, moveJob, nextStates, plainMoves } from '@/lib/domain/job/job-state'

describe('where a job may go', () => {
  test('a received amplifier is never handed over as collected without release', () => {
    expect(moveJob('received', 'collected')).toEqual({
      ok: false,
      fault: { code: 'cannot-move', from: 'received', to: 'collected' },
    })
  })

  test('only a tested amplifier becomes ready; an uncollected one comes back to ready', () => {
    expect(JOB_STATES.filter((state) => nextStates(state).includes('ready'))).toEqual(['testing', 'uncollected'])
  })

  test('nothing leaves a closed state', () => {
    expect(JOB_STATES.filter(isClosed)).toEqual(['collected', 'returned-unrepaired'])
  })

  test('release and pickup are not offered as a move by hand', () => {
    for (const state of JOB_STATES.filter((each) => each !== 'uncollected'))
      expect(
        plainMoves(state).filter((to) => to === 'ready' || to === 'collected' || to === 'returned-unrepaired'),
      ).toEqual([])
  })

  test('every open state has a way to an end', () => {
    const reaches = (from: (typeof JOB_STATES)[number], seen = new Set<string>()): boolean =>
      isClosed(from) || nextStates(from).some((next) => !seen.has(next) && reaches(next, new Set([...seen, from])))
    expect(JOB_STATES.every((state) => reaches(state))).toBe(true)
  })
})
