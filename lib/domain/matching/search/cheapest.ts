/** The few cheapest of the tubes shown to it, by cost and then mark, kept in that order. */
import type { Crowd } from './crowd'

export class Cheapest {
  readonly members: number[] = []
  total = 0

  constructor(
    private readonly crowd: Crowd,
    private readonly count: number,
  ) {}

  get full(): boolean {
    return this.members.length === this.count
  }

  clear(): void {
    this.members.length = 0
    this.total = 0
  }

  copy(other: Cheapest): void {
    this.clear()
    for (const member of other.members) this.members.push(member)
    this.total = other.total
  }

  add(member: number): void {
    const { members, count, crowd } = this
    if (members.length === count && !this.before(member, members[count - 1] as number)) return
    if (members.length === count) this.total -= crowd.cost[members.pop() as number] as number
    let to = members.length
    for (; to > 0 && this.before(member, members[to - 1] as number); to -= 1) members[to] = members[to - 1] as number
    members[to] = member
    this.total += crowd.cost[member] as number
  }

  same(other: Cheapest): boolean {
    const { members } = this
    return members.length === other.members.length && members.every((member, at) => member === other.members[at])
  }

  /** Of the cheapest with this one among them; the list is full. */
  totalWith(member: number): number {
    const { members, count, crowd } = this
    const last = members[count - 1] as number
    if (!this.before(last, member)) return this.total
    return this.total - (crowd.cost[last] as number) + (crowd.cost[member] as number)
  }

  /** Of the first so many. */
  firstTotal(count: number): number {
    let total = 0
    for (let at = 0; at < count; at += 1) total += this.crowd.cost[this.members[at] as number] as number
    return total
  }

  private before(a: number, b: number): boolean {
    const { cost, place } = this.crowd
    return (
      (cost[a] as number) - (cost[b] as number) < 0 ||
      (cost[a] === cost[b] && (place[a] as number) < (place[b] as number))
    )
  }
}
