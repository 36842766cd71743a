import type { Metadata } from 'next'
import Link from 'next/link'
import { type MatchWeights, SET_ARRANGEMENTS, USUAL_WEIGHTS } from '@/lib/domain/matching/match-weights'
import { arrangementName, arrangementReason, weightText } from '@/lib/domain/matching/match-weights-text'
import { safeMarginsText } from '@/lib/domain/matching/safe-margins-text'
import { type Words, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'

export const metadata: Metadata = { title: 'How sets are weighed' }

const WEIGHTS = Object.keys(USUAL_WEIGHTS['one-trim']) as (keyof MatchWeights)[]

export default async function WeightsPage({ params }: PageProps<'/jobs/[jobNumber]/tubes/weights'>) {
  const { shop } = await requireUser()
  const { jobNumber } = await params
  const words = wordsFor(shop.words)
  return (
    <>
      <div className="row spread">
        <h2>How sets are weighed</h2>
        <Link href={`/jobs/${jobNumber}/tubes`}>Back to the sets</Link>
      </div>
      <section className="panel stack">
        <p>
          The best set is the one that counts least: its two spreads in yardsticks (5 mA and 10 %) and, where{' '}
          {words.tubes} stand in parallel on each side, the difference of the sides, each times its weight, and the mean
          of what its {words.tubes} cost beside that. Limits are kept first; a weight never lifts one. The weights are
          the shop’s rules, no law of the trade.
        </p>
        <WeightTable words={words} />
        <h3>What counts</h3>
        <dl>
          {WEIGHTS.map((weight) => {
            const { name, reason } = weightText(weight, words)
            return (
              <div key={weight}>
                <dt>{name}</dt>
                <dd>{reason}</dd>
              </div>
            )
          })}
        </dl>
        <h3>Why it counts as much</h3>
        <dl>
          {SET_ARRANGEMENTS.map((arrangement) => (
            <div key={arrangement}>
              <dt>{arrangementName(arrangement, words)}</dt>
              <dd>{arrangementReason(arrangement, words)}</dd>
            </div>
          ))}
        </dl>
        <h3>The ready-made choices</h3>
        <p>
          Safe working: {safeMarginsText(words)} Closest match: least spread and difference of the sides, whatever it
          costs. Best value: the cheapest set within both yardsticks, whatever its sides. They may be one and the same
          set, which is then shown once.
        </p>
      </section>
    </>
  )
}

function WeightTable({ words }: { words: Words }) {
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th>Weight</th>
            {SET_ARRANGEMENTS.map((arrangement) => (
              <th key={arrangement} className="num">
                {arrangementName(arrangement, words)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {WEIGHTS.map((weight) => {
            const { name, unit } = weightText(weight, words)
            return (
              <tr key={weight}>
                <th scope="row">
                  {name} <span className="soft small">{unit}</span>
                </th>
                {SET_ARRANGEMENTS.map((arrangement) => (
                  <td key={arrangement} className="num">
                    {USUAL_WEIGHTS[arrangement][weight]}
                  </td>
                ))}
              </tr>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}
