import type { LeftOut } from '@/lib/domain/amp/settle-sheet'

/** "Saved. Left out, since it belongs to output sockets only: V1 cathode resistor." */
export function leftOutText(leftOut: readonly LeftOut[]): string {
  const values = leftOut.map(({ position, label }) => `${position} ${label}`).join(', ')
  return `Saved. Left out, as it does not belong to that socket: ${values}. Bias and resistor values are kept for output sockets, sides for push-pull stages.`
}
