/** The stock the set was chosen from, by the figures that were compared. */
import { StockScatter } from '@/app/_components/plot/stock-scatter'
import { type MatchingFormat, testPointText } from '@/lib/domain/matching/matching-text'
import type { SetOption } from '@/lib/domain/matching/proposal'
import { type StockSample, stockSample } from '@/lib/domain/matching/stock-sample'
import { stockScatter } from '@/lib/domain/plot/stock-scatter'
import type { GroupProposal } from './group-proposal'

type Props = { readonly asked: GroupProposal; readonly chosen: SetOption | null; readonly format: MatchingFormat }

export function StockPlot({ asked, chosen, format }: Props) {
  const { running, basis, wanted } = asked
  const sample = stockSample(running, chosen)
  const scatter = stockScatter(sample.points)
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
      <SampleLine sample={sample} format={format} />
    </details>
  )
}

function SampleLine({ sample: { points, all, every }, format }: { sample: StockSample; format: MatchingFormat }) {
  if (points.length === all) return null
  return (
    <p className="soft">
      Drawn are {points.length} of {all} {format.words.tubes}: one in {every} in the order of marks, and the set.
    </p>
  )
}
