/** Which filled places stand alike in the circuit: the same tube in both idles the same. */
import { at } from '@/lib/domain/circuit/solver/dense-lu'
import type { Wiring } from '@/lib/domain/circuit/solver/wiring'

const standAlike = ({ side, group, grid, screenResistance, senseResistance }: Wiring, a: number, b: number): boolean =>
  side[a] === side[b] &&
  group[a] === group[b] &&
  at(grid, a) === at(grid, b) &&
  at(screenResistance, a) === at(screenResistance, b) &&
  at(senseResistance, a) === at(senseResistance, b)

/** For each place the first of `places` that stands like it in all the circuits; itself where none does. */
export const firstLike = (wirings: readonly Wiring[], places: readonly number[]): readonly number[] =>
  places.map((place) => places.find((other) => wirings.every((one) => standAlike(one, other, place))) ?? place)
