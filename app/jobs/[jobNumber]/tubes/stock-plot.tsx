/** The stock the set was chosen from, by the figures that were compared. */
import { StockScatter } from '@/app/_components/plot/stock-scatter'
import { instrumentKey, samePoint } from '@/lib/domain/matching/cohort'
import { type MatchingFormat, testPointText } from '@/lib/domain/matching/matching-text'
import { predictedTube } from '@/lib/domain/matching/predicted-tube'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { type StockPoint, stockScatter } from '@/lib/domain/plot/stock-scatter'
import type { StockedTube } from '@/lib/domain/stock/tube'
import type { Basis, GroupProposal } from './group-proposal'

type Props = { readonly asked: GroupProposal; readonly chosen: SetOption | null; readonly format: MatchingFormat }

export function StockPlot({ asked, chosen, format }: Props) {
  const { stock, basis, wanted } = asked
  const marked = new Set(chosen?.tubes.map(({ candidate }) => candidate.tubeId))
  const points = stock.flatMap((each) => pointOf(each, basis, chosen, marked) ?? [])
  const scatter = stockScatter(points)
  if (!scatter) return null
  const at = basis.ok
    ? 'as predicted in this amplifier'
    : chosen
      ? `tested on ${chosen.instrument} at ${testPointText(chosen.testPoint, format)}`
      : 'each at its own test point'
  const title = `${wanted.demand.family} in stock, ${at}`
  return (
    <details open>
      <summary className="button plain">The stock as a picture</summary>
      <StockScatter scatter={scatter} title={title} words={format.words} />
    </details>
  )
}

function pointOf(
  { tube, test }: StockedTube,
  basis: Basis,
  chosen: SetOption | null,
  marked: ReadonlySet<string>,
): StockPoint | null {
  const point = { tubeId: tube.id, mark: tube.mark, designation: tube.designation, chosen: marked.has(tube.id) }
  if (basis.ok) {
    const predicted = predictedTube(basis.value, tube.id)
    if (!predicted) return null
    const { plateCurrent, transconductance } = predicted
    return { ...point, at: { across: 1000 * plateCurrent.value, up: 1000 * transconductance.value } }
  }
  const reading = test?.sections[0]
  if (!test || !reading?.plateCurrent || !reading.transconductance || !comparable(test, chosen)) return null
  return { ...point, at: { across: 1000 * reading.plateCurrent, up: 1000 * reading.transconductance } }
}

/** Readings on other instruments or at other points say nothing beside those of the set. */
function comparable(test: NonNullable<StockedTube['test']>, chosen: SetOption | null): boolean {
  if (chosen === null) return true
  const { plateVoltage, screenVoltage, gridVoltage, instrumentName } = test
  if (plateVoltage === null || gridVoltage === null) return false
  const point = { plateVoltage, screenVoltage, gridVoltage }
  return samePoint(point, chosen.testPoint) && instrumentKey(instrumentName) === instrumentKey(chosen.instrument)
}
