/** Many absurd stages solved, counted by how they ended. A NaN anywhere in a solution ends the run. */
import { solveIdle } from '@/lib/domain/circuit/solve-idle'
import { absurdStage } from './random-stage'

export type AbsurdRun = {
  readonly solved: number
  /** Among those solved. */
  readonly stepped: number
  readonly collapsed: number
  /** Seeds without an answer. */
  readonly failed: readonly string[]
  readonly worstImbalance: number
  readonly mostSteps: number
}

export function solveAbsurd(firstSeed: number, count: number): AbsurdRun {
  let [solved, stepped, collapsed, worstImbalance, mostSteps] = [0, 0, 0, 0, 0]
  const failed: string[] = []
  for (let seed = firstSeed; seed < firstSeed + count; seed++) {
    const result = solveIdle(absurdStage(seed))
    if (!result.ok) {
      if (result.fault.code === 'supply-collapsed') collapsed++
      else failed.push(`${seed}: ${JSON.stringify(result.fault)}`)
      continue
    }
    solved++
    const { value } = result
    if (value.stepped) stepped++
    worstImbalance = Math.max(worstImbalance, value.worstImbalance)
    mostSteps = Math.max(mostSteps, value.steps)
    const amounts = value.tubes.flatMap((tube) => [
      tube.plate,
      tube.screen,
      tube.cathode,
      tube.plateCurrent,
      tube.screenCurrent,
    ])
    if (![value.reservoir, value.supplyCurrent, ...amounts].every(Number.isFinite)) failed.push(`${seed}: not a number`)
  }
  return { solved, stepped, collapsed, failed, worstImbalance, mostSteps }
}
