/** The stock level in sets: one row for each type and place where it was tested. */
import { type MatchingFormat, testPointText } from '@/lib/domain/matching/matching-text'
import { type SetsPossible, setsPossible } from '@/lib/planning/sets/sets-possible'
import { carriedFrom, possibleText } from '@/lib/planning/sets/sets-text'
import type { StockCohort } from '@/lib/planning/sets/stock-cohorts'
import { makeSets } from './actions'
import styles from './sets.module.css'
import type { SetsLimits } from './sets-limits'
import { spreadRuleOf } from './shelf-stock'

type Props = { readonly cohorts: readonly StockCohort[]; readonly limits: SetsLimits; readonly format: MatchingFormat }

export function SetsTable({ cohorts, limits, format }: Props) {
  const rows = cohorts.map((cohort) => ({ cohort, possible: setsPossible(cohort.tubes, spreadRuleOf(limits)) }))
  const short = limits.level === null ? new Set<string>() : shortFamilies(rows, limits.level)
  return (
    <table>
      <thead>
        <tr>
          <th>Type</th>
          <th>Tested at</th>
          <th className="num">Free, read alike</th>
          <th className="num">Pairs</th>
          <th className="num">Quads</th>
          <th className="no-print">Make them</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ cohort, possible }, at) => (
          <tr key={cohort.key}>
            <th scope="row">
              {cohort.family}{' '}
              {short.has(cohort.family) && cohorts[at - 1]?.family !== cohort.family && (
                <span className="tag" data-tone="warn" data-shape="!">
                  order again
                </span>
              )}
            </th>
            <td>
              {testPointText(cohort.testPoint, format)}, {cohort.instrument}
              {!cohort.measured && <span className="soft">; transconductance not read</span>}
              <CarriedOver tubes={cohort.tubes} />
            </td>
            <td className="num">{cohort.tubes.length}</td>
            <td className="num">{possible?.pairs ?? <span className="soft">pair up</span>}</td>
            <td className="num">{possible ? possibleText(possible) : <span className="soft">pair up</span>}</td>
            <td className="no-print">
              <form action={makeSets} className={styles.make}>
                {Object.entries(limits.typed).map(([name, value]) => (
                  <input key={name} type="hidden" name={name} value={value} />
                ))}
                <input type="hidden" name="cohort" value={cohort.key} />
                <Make size={2} cohort={cohort}>
                  Pair up
                </Make>
                <Make size={4} cohort={cohort}>
                  Quads
                </Make>
              </form>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function CarriedOver({ tubes }: Pick<StockCohort, 'tubes'>) {
  const carried = tubes.filter((tube) => tube.carried)
  if (carried.length === 0) return null
  return (
    <p className="small soft">
      {carried.length} of them carried from {carriedFrom(tubes).join(' and ')}
    </p>
  )
}

type MakeProps = { readonly size: number; readonly cohort: StockCohort; readonly children: string }

function Make({ size, cohort, children }: MakeProps) {
  if (cohort.tubes.length < size) return null
  const what = `${children}: ${cohort.family} tested on ${cohort.instrument}, ${cohort.tubes.length} of them`
  return (
    <button type="submit" name="size" value={size} className="button quiet" aria-label={what}>
      {children}
    </button>
  )
}

type Row = { readonly cohort: StockCohort; readonly possible: SetsPossible | null }

/** Over all its cohorts together; one that was not counted has enough. */
function shortFamilies(rows: readonly Row[], level: number): ReadonlySet<string> {
  const pairs = new Map<string, number>()
  for (const { cohort, possible } of rows)
    pairs.set(cohort.family, (pairs.get(cohort.family) ?? 0) + (possible?.pairs ?? level))
  return new Set([...pairs].flatMap(([family, count]) => (count < level ? [family] : [])))
}
