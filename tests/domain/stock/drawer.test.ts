import { describe, expect, it } from 'vitest'
import { money } from '@/lib/domain/money'
import {
  claimsOn,
  drawerOf,
  type JobNeeds,
  type PartYes,
  piecesByPart,
  piecesOf,
  shortfalls,
  shortText,
  withinReach,
} from '@/lib/domain/stock/drawer'
import { isToReorder } from '@/lib/domain/stock/part'
import { leftOver, partStandings } from '@/lib/domain/stock/part-standing'

const at = (day: number) => new Date(Date.UTC(2031, 4, day))
const yes = (day: number, fuses: number): PartYes => ({ at: at(day), needed: new Map([['fuse', fuses]]) })
const job = (jobId: string, yeses: readonly PartYes[], drawn = 0): JobNeeds => ({
  jobId,
  jobNumber: `${jobId}-0`,
  yeses,
  drawn: new Map(drawn > 0 ? [['fuse', drawn]] : []),
})
const drawer = (count: number, ...jobs: readonly JobNeeds[]) => drawerOf(count, claimsOn('fuse', jobs))

describe('a drawer', () => {
  it('of 5, with 2 claimed by one job, has 2 set aside and 3 free', () => {
    expect(drawer(5, job('a', [yes(1, 2)]))).toMatchObject({ inDrawer: 5, aside: 2, free: 3, short: 0 })
  })

  it('serves jobs in the order of their yes: of 3, the first gets its 2, the second 1 of 2', () => {
    const { claims, free, short } = drawer(3, job('late', [yes(2, 2)]), job('early', [yes(1, 2)]))
    expect(claims.map(({ jobId, aside, short }) => [jobId, aside, short])).toEqual([
      ['early', 2, 0],
      ['late', 1, 1],
    ])
    expect([free, short]).toEqual([0, 1])
  })

  it('claims what is not drawn yet: 2 needed, 1 drawn leaves 1', () => {
    expect(drawer(5, job('a', [yes(1, 2)], 1)).aside).toBe(1)
    expect(drawer(5, job('a', [yes(1, 2)], 2)).claims).toEqual([])
    expect(drawer(5, job('a', [yes(1, 2)], 3)).free).toBe(5)
  })

  it('a revision keeps its place for what it lists still, and stands behind with what it adds', () => {
    const revised = job('a', [yes(1, 1), yes(3, 2)])
    const between = job('b', [yes(2, 1)])
    expect(drawer(2, revised, between).claims.map(({ jobId, pieces, aside }) => [jobId, pieces, aside])).toEqual([
      ['a', 1, 1],
      ['b', 1, 1],
      ['a', 1, 0],
    ])
  })

  it('a revision that takes a part off and one that puts it back stands behind', () => {
    const returned = job('a', [yes(1, 1), yes(2, 0), yes(4, 1)])
    expect(drawer(1, returned, job('b', [yes(3, 1)])).claims.map(({ jobId, aside }) => [jobId, aside])).toEqual([
      ['b', 1],
      ['a', 0],
    ])
  })

  it('within reach of a job is what is set aside for it and what is free, not what others have set aside', () => {
    const full = drawer(5, job('a', [yes(1, 2)]), job('b', [yes(2, 1)]))
    expect([withinReach(full, 'a'), withinReach(full, 'b'), withinReach(full, 'c')]).toEqual([4, 3, 2])
  })

  it('names each job it is short for once, with all it waits for', () => {
    expect(shortfalls(drawer(1, job('a', [yes(1, 1), yes(3, 3)])))).toEqual([
      { jobId: 'a', jobNumber: 'a-0', pieces: 3, short: 2 },
    ])
  })

  it('law: set aside and free make up the drawer, no figure falls below nothing, nobody gets more than wanted', () => {
    for (let count = 0; count <= 6; count++)
      for (let first = 0; first <= 3; first++)
        for (let second = 0; second <= 3; second++)
          for (let drawn = 0; drawn <= 2; drawn++) {
            const whole = drawer(count, job('a', [yes(1, first), yes(3, second)], drawn), job('b', [yes(2, second)]))
            expect(whole.aside + whole.free).toBe(count)
            expect(Math.min(whole.aside, whole.free, whole.short)).toBeGreaterThanOrEqual(0)
            expect(whole.aside + whole.short).toBe(Math.max(0, second - drawn) + second)
            for (const { aside, short, pieces } of whole.claims) expect(aside + short).toBe(pieces)
          }
  })
})

describe('pieces of a line', () => {
  it('are whole: a quantity of 1.5 draws 2', () => {
    expect(piecesOf({ thousandths: 1500 })).toBe(2)
  })

  it('of one part on two lines add up; lines written freely draw nothing', () => {
    const lines = [
      { partId: 'fuse', thousandths: 1000 },
      { partId: null, thousandths: 9000 },
      { partId: 'fuse', thousandths: 2000 },
    ]
    expect([...piecesByPart(lines)]).toEqual([['fuse', 3]])
  })
})

const part = (count: number, level: number | null, ...jobs: readonly JobNeeds[]) => ({
  ...({
    id: 'fuse',
    name: 'Fuse',
    kind: 'fuse',
    value: 'T 2 A',
    cost: null,
    price: money(80),
    location: 'Rack',
  } as const),
  ...{ version: 1, count, reorderLevel: level, drawer: drawer(count, ...jobs) },
})

describe('a part', () => {
  it('at 20 is to be reordered when 46 less what is set aside leaves 20, not at 21', () => {
    expect(isToReorder(part(46, 20, job('a', [yes(1, 26)])))).toBe(true)
    expect(isToReorder(part(46, 20, job('a', [yes(1, 25)])))).toBe(false)
    expect(isToReorder(part(0, null))).toBe(false)
  })

  it('on a quote for 2 with 1 in the drawer says: 2 needed, 1 free: order 1', () => {
    const here = { jobId: 'c', drawn: new Map<string, number>() }
    const standing = partStandings([{ partId: 'fuse', thousandths: 2000 }], [part(1, null)], here)
    expect(standing.get('fuse')).toMatchObject({
      name: 'Fuse, T 2 A',
      needed: 2,
      there: 1,
      short: '2 needed, 1 free: order 1',
    })
    expect(shortText(2, 2)).toBe('')
    expect(shortText(1, 0)).toBe('1 needed, 0 free: order 1')
  })

  it('counts what the job has drawn and what is set aside for it as there', () => {
    const own = part(1, null, job('c', [yes(1, 3)], 2))
    const lines = [{ partId: 'fuse', thousandths: 3000 }]
    expect(partStandings(lines, [own], { jobId: 'c', drawn: new Map([['fuse', 2]]) }).get('fuse')?.short).toBe('')
  })

  it('drawn beyond what ticked lines use is left over', () => {
    const drawn = { jobId: 'c', drawn: new Map([['fuse', 3]]) }
    const lines = [
      { partId: 'fuse', thousandths: 1000, doneAt: at(2) },
      { partId: 'fuse', thousandths: 2000, doneAt: null },
    ]
    expect(leftOver(lines, [part(0, null)], drawn)).toEqual([{ partId: 'fuse', name: 'Fuse, T 2 A', pieces: 2 }])
    expect(leftOver(lines, [part(0, null)], { ...drawn, drawn: new Map([['fuse', 1]]) })).toEqual([])
  })
})
