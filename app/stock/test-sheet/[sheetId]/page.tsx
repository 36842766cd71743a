import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { Shell } from '@/app/_components/shell/shell'
import { formatDay } from '@/lib/domain/calendar'
import { dutyNeeds, mayDo } from '@/lib/domain/person/role'
import { bookReading } from '@/lib/domain/stock/sheet/book-point'
import { sheetSpread } from '@/lib/domain/stock/sheet/sheet-spread'
import { stockType } from '@/lib/domain/stock/stock-type'
import { settingText } from '@/lib/domain/stock/tube-text'
import { handbookRows } from '@/lib/domain/tube/handbook-rows'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findTestSheet, listSheetLines } from '@/lib/store/test-sheet'
import { LineForm } from './line-form'
import { blankLine, lineValues } from './line-schema'
import { RunPanel } from './run-panel'
import styles from './sheet.module.css'
import { SheetLines } from './sheet-lines'

export const metadata: Metadata = { title: 'Test sheet' }

export default async function TestSheetPage({ params, searchParams }: PageProps<'/stock/test-sheet/[sheetId]'>) {
  const { actor, shop } = await requireUser()
  const sheet = await findTestSheet((await params).sheetId)
  if (!sheet) notFound()
  const lines = await listSheetLines(sheet.id)
  const asked = (await searchParams).line
  const wrong = lines.find(({ test }) => test.id === asked) ?? null
  const words = wordsFor(shop.words)
  const type = stockType(sheet.designation, shop)
  const book = type.variant ? bookReading(handbookRows(type.variant.typeId, shop), sheet) : null
  const spread = sheetSpread(lines, book)
  const twin = sheet.sections === 2
  const electrodes = { screen: type.mayHaveScreen, grid: type.mayHaveGrid, second: twin }
  const may = mayDo(actor, 'bench-work')
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          {sheet.designation} <span className="soft">at {settingText(sheet)}</span>
        </h1>
        <div className="row">
          {lines.length > 0 && <Link href={`/stock/labels?test=${sheet.id}`}>Labels</Link>}
          <Link href="/stock/test-sheet">Another sheet</Link>
        </div>
      </div>
      <p className="soft">
        {sheet.instrumentName}, {formatDay(sheet.day, words.locale)}, started by {sheet.startedBy}
      </p>
      <div className={styles.sheet}>
        {may ? (
          <section className="panel no-print">
            <h2>{wrong ? `Put right: ${wrong.mark}` : `Next ${words.tube}`}</h2>
            {wrong && <Link href={`/stock/test-sheet/${sheet.id}`}>Leave it as it is</Link>}
            <LineForm
              key={wrong ? `line ${wrong.test.id}` : 'next'}
              words={shop.words}
              electrodes={electrodes}
              values={wrong ? lineValues(sheet.id, wrong) : blankLine(sheet.id, '')}
              correcting={wrong?.mark ?? null}
            />
          </section>
        ) : (
          <p className="caution">{dutyNeeds('bench-work')}</p>
        )}
        <div className={styles.run}>
          <RunPanel {...{ spread, book, words, twin }} count={lines.length} last={lines.at(-1)?.mark ?? null} />
        </div>
        <SheetLines
          {...{ lines, spread, words }}
          sheetId={sheet.id}
          correcting={wrong?.test.id ?? null}
          mayCorrect={may}
        />
      </div>
    </Shell>
  )
}
