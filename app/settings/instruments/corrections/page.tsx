import type { Metadata } from 'next'
import Link from 'next/link'
import { correctedFigureName, factorText, readingUncertaintyText } from '@/lib/domain/stock/correction-text'
import { instrumentCorrections } from '@/lib/domain/stock/instrument-correction'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listReferenceTubes } from '@/lib/store/tube'
import { SettingsFrame } from '../../settings-frame'

export const metadata: Metadata = { title: 'Instruments compared' }

export default async function CorrectionsPage() {
  const { actor, shop } = await requireUser()
  const references = await listReferenceTubes()
  const corrections = instrumentCorrections(references)
  const words = wordsFor(shop.words)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/instruments">
      <div className="page-head">
        <h1>Instruments compared</h1>
        <Link href="/settings/instruments">All instruments</Link>
      </div>
      <p className="soft">
        Readings of two testers are compared only through reference {words.tubes} read on both at one test point. Tick
        “Shop reference” on a {words.tube}'s page and test it on each. The choice of sets, sharing out, pairing up and
        the prices beside a {words.tube} carry readings over by them, with their doubt. A tester is off by another share
        at another point, so references of the types you match are worth most.
      </p>
      <section className="panel">
        <h2>Corrections</h2>
        {corrections.length === 0 && <p className="soft">No reference {words.tube} was read on two testers yet.</p>}
        {corrections.length > 0 && (
          // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
          <section className="table-scroll" tabIndex={0} aria-label="Corrections between instruments">
            <table>
              <thead>
                <tr>
                  <th>A reading on</th>
                  <th>is on</th>
                  <th>Figure</th>
                  <th className="num">times, at 95 %</th>
                  <th className="num">One reading then</th>
                  <th>By</th>
                </tr>
              </thead>
              <tbody>
                {corrections.map((each) => (
                  <tr key={`${each.from} ${each.to} ${each.figure}`}>
                    <td>{each.from}</td>
                    <td>{each.to}</td>
                    <td>{correctedFigureName(each.figure, words)}</td>
                    <td className="num">{factorText(each)}</td>
                    <td className="num">{readingUncertaintyText(each)}</td>
                    <td>
                      {each.marks.join(', ')}
                      {each.assumedSpread && (
                        <p className="small soft">
                          {each.marks.length === 1 ? 'One only' : 'They agree closely'}: that a tester repeats to 2 % is
                          assumed.
                        </p>
                      )}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        )}
      </section>
      <section className="panel">
        <h2>Shop references</h2>
        {references.length === 0 && <p className="soft">None yet.</p>}
        <ul>
          {references.map(({ id, mark, designation, tests }) => (
            <li key={id}>
              <Link href={`/stock/${id}`}>{mark}</Link> {designation}:{' '}
              {[...new Set(tests.map(({ instrumentName }) => instrumentName))].join(', ') || 'not tested yet'}
            </li>
          ))}
        </ul>
      </section>
    </SettingsFrame>
  )
}
