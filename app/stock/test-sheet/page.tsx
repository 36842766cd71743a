import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { dayInZone, formatInstant } from '@/lib/domain/calendar'
import { dutyNeeds, mayDo } from '@/lib/domain/person/role'
import { settingText } from '@/lib/domain/stock/tube-text'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listTestSheets } from '@/lib/store/test-sheet'
import { listTubeTesters } from '@/lib/store/tube-tester'
import { stockKit } from '../tube-schema'
import { TypeLists } from '../type-lists'
import { StartForm } from './start-form'
import { startSheetValues } from './start-schema'

export const metadata: Metadata = { title: 'Test sheet' }

export default async function TestSheetsPage() {
  const { actor, shop } = await requireUser()
  const [testers, sheets] = await Promise.all([listTubeTesters(), listTestSheets()])
  const today = dayInZone(new Date(), shop.timeZone)
  const { locale, tube, tubes } = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <h1>Test many {tubes} of one type</h1>
      <p className="soft">
        Set the tester up once; then mark, readings and Enter, {tube} after {tube}.
      </p>
      <TypeLists testers={testers} catalogue={shop} />
      {mayDo(actor, 'bench-work') ? (
        <StartForm kit={stockKit(shop)} values={startSheetValues({ today, instrument: testers[0] ?? '' })} />
      ) : (
        <p className="caution">{dutyNeeds('bench-work')}</p>
      )}
      {sheets.length > 0 && (
        <section className="panel">
          <h2>Earlier sheets</h2>
          <ul>
            {sheets.map((sheet) => (
              <li key={sheet.id}>
                <Link href={`/stock/test-sheet/${sheet.id}`}>
                  {sheet.designation} at {settingText(sheet)}
                </Link>
                : {sheet.lines} {sheet.lines === 1 ? tube : tubes}, {sheet.instrumentName},{' '}
                {formatInstant(sheet.startedAt, shop.timeZone, locale)} by {sheet.startedBy}
              </li>
            ))}
          </ul>
        </section>
      )}
    </Shell>
  )
}
