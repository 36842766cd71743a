/** Jobs that go without, and what to buy so that they need not. */
import Link from 'next/link'
import type { JobLine } from '@/lib/domain/job/job'
import type { MatchingFormat } from '@/lib/domain/matching/matching-text'
import type { SharePlan } from '@/lib/planning/sharing/share-plan'
import { buyTexts, freedTexts, relaxedTexts } from '@/lib/planning/sharing/share-text'

type Props = {
  readonly plan: SharePlan
  readonly lines: ReadonlyMap<string, JobLine>
  readonly format: MatchingFormat
}

export function WithoutSets({ plan, lines, format }: Props) {
  if (plan.buy.length === 0) return null
  return (
    <section className="panel stack" aria-labelledby="without">
      <h2 id="without">Goes without, and what to buy</h2>
      {freedTexts(plan.buy).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <div className="table-scroll">
        <table>
          <thead>
            <tr>
              <th>Job</th>
              <th>Amplifier</th>
              <th>To buy</th>
            </tr>
          </thead>
          <tbody>
            {plan.buy.map((step) => (
              <tr key={step.jobNumber}>
                <th scope="row" className="nowrap">
                  <Link href={`/jobs/${step.jobNumber}`}>{step.jobNumber}</Link>
                </th>
                <td>
                  {lines.get(step.jobNumber)?.ampName}, {lines.get(step.jobNumber)?.customerName}
                </td>
                <td>
                  {buyTexts(step, format).map((sentence) => (
                    <p key={sentence}>{sentence}</p>
                  ))}
                  <Relax plan={plan} jobNumber={step.jobNumber} format={format} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft small">
        The fewest are counted, each job after those above it: a list for the counter, no proof. Test what comes in
        before it is promised.
      </p>
    </section>
  )
}

type RelaxProps = { readonly plan: SharePlan; readonly jobNumber: string; readonly format: MatchingFormat }

/** For a job that no sharing could serve: which limit stands in the way. */
function Relax({ plan, jobNumber, format }: RelaxProps) {
  const impossible = plan.jobs.find((job) => job.jobNumber === jobNumber)?.impossible ?? []
  return impossible.map((each) => (
    <div key={each.group} className="soft small">
      Within these limits no set for “{each.group}” can be made from the whole stock. What giving up one limit would
      bring:
      <ul>
        {relaxedTexts(each, format).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
        {relaxedTexts(each, format).length === 0 && <li>No limit alone: nothing of this type fits these sockets.</li>}
      </ul>
    </div>
  ))
}
