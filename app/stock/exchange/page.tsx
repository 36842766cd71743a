import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { formatInstant } from '@/lib/domain/calendar'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listImports } from '@/lib/store/import'
import { listCutShort } from '@/lib/workflow/tables/import-standing'
import { importLimits, tableRefusal } from '@/lib/workflow/tables/import-words'
import { StockSections } from '../stock-sections'
import { CutShortNotice } from './cut-short-notice'
import { importStateWord } from './import-words'

export const metadata: Metadata = { title: 'Import and export' }

const TABLES = [
  ['tubes', 'with what is known of each and its latest test'],
  ['tests', 'every test there is, a line for each'],
  ['lots', 'kept by count'],
  ['parts', 'fuses, resistors, capacitors'],
  ['customers', 'with address and phone'],
  ['amps', 'with their sockets'],
  ['jobs', 'with state, days and payments'],
] as const

export default async function ExchangePage({ searchParams }: PageProps<'/stock/exchange'>) {
  const { actor, shop } = await requireUser()
  const { refused, row } = await searchParams
  const refusal = typeof refused === 'string' ? tableRefusal(refused, Number(row) || 0) : ''
  const imports = await listImports()
  const cut = await listCutShort()
  const cutOf = (id: string) => cut.find((one) => one.import.id === id)
  const { locale, tubes } = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock/exchange" />
      <h1>Import and export</h1>
      <CutShortNotice cut={cut} />
      <div className="columns">
        <section className="panel stack">
          <h2>Take in a list of {tubes}</h2>
          {refusal && (
            <p className="form-message" data-status="refused" role="alert">
              {refusal}
            </p>
          )}
          <form action="/api/stock/import" method="post" encType="multipart/form-data" className="stack">
            <div className="field">
              <label htmlFor="table">File</label>
              <input id="table" name="table" type="file" accept=".csv,.tsv,.txt,text/csv" required />
              <p className="field-hint">{importLimits}</p>
            </div>
            <div className="row">
              <button type="submit" className="button">
                Look at the file
              </button>
            </div>
          </form>
          {imports.length > 0 && <h3>Earlier files</h3>}
          <ul>
            {imports.map((each) => (
              <li key={each.id}>
                <Link href={`/stock/exchange/${each.id}`}>{each.fileName}</Link>:{' '}
                {importStateWord(each, cutOf(each.id) !== undefined)}, {cutOf(each.id)?.written ?? each.taken} of{' '}
                {each.rows} rows, {formatInstant(each.at, shop.timeZone, locale)} by {each.person}
              </li>
            ))}
          </ul>
        </section>
        <section className="panel stack">
          <h2>Take everything along</h2>
          <p className="soft">
            One file for each table, as UTF-8 with commas (RFC 4180). A text that begins with = + - or @ gets an
            apostrophe in front, so that a spreadsheet does not run it; reading the file back takes it off. Figures stay
            figures.
          </p>
          <ul>
            {TABLES.map(([table, text]) => (
              <li key={table}>
                <a href={`/api/stock/export/${table}`} download>
                  {table === 'tubes' ? tubes : table}
                </a>
                : {text}
              </li>
            ))}
          </ul>
        </section>
      </div>
    </Shell>
  )
}
