/** The curve sheets of a round, folded away: one for each output group and type. */
import { type GroupPlot, groupPlots, type PlotRound, type PlotSettings } from '@/lib/domain/plot/group-plots'
import { plotFaultText } from '@/lib/domain/plot/plot-text'
import { capital, type Words } from '@/lib/domain/words'
import { PlateCurves } from './plate-curves'
import styles from './plate-curves.module.css'

type Props = PlotSettings & {
  readonly rounds: readonly PlotRound[]
  readonly words: Words
}

function Folded({ group, designation, plot }: GroupPlot, words: Words) {
  if (!plot.ok) {
    return (
      <p key={`${group} ${designation}`} className="soft">
        {plotFaultText(plot.fault, words)}
      </p>
    )
  }
  const sockets = [...new Set(plot.value.points.map(({ socket }) => socket))].join(', ')
  return (
    <details key={`${group} ${designation}`}>
      <summary className={styles.fold}>
        {capital(words.plate)} curves: {designation} in {sockets}
      </summary>
      <PlateCurves sheet={plot.value} words={words} />
    </details>
  )
}

export function GroupPlots({ rounds, words, loadOf, catalogue }: Props) {
  const plots = groupPlots(rounds, { loadOf, catalogue })
  return plots.length === 0 ? null : <div>{plots.map((each) => Folded(each, words))}</div>
}
