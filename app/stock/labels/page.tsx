import type { Metadata } from 'next'
import Link from 'next/link'
import { Shell } from '@/app/_components/shell/shell'
import { wantedMarks } from '@/lib/domain/stock/label/label-choice'
import { type LabelSheet, labelsOnSheet } from '@/lib/domain/stock/label/label-sheet'
import { requireUser } from '@/lib/session'
import { listLabelSheets } from '@/lib/store/label-sheet'
import { listSheetLines } from '@/lib/store/test-sheet'
import { listTubesByMark } from '@/lib/store/tube'
import { StockSections } from '../stock-sections'

export const metadata: Metadata = { title: 'Labels' }

const textOf = (value: unknown): string => (typeof value === 'string' ? value : '')

/** All of it stands in the address: what is asked for can be gone back to, and needs no script. */
export default async function LabelsPage({ searchParams }: PageProps<'/stock/labels'>) {
  const { actor, shop } = await requireUser()
  const query = await searchParams
  const ofSheet = textOf(query.test)
  const typed = ofSheet ? (await listSheetLines(ofSheet)).map(({ mark }) => mark).join(' ') : textOf(query.marks)
  const sheets = await listLabelSheets()
  const usual = sheets.find(({ pageWidth }) => pageWidth === (shop.paper === 'A4' ? 210 : 215.9))
  const sheet = sheets.find(({ id }) => id === query.sheet) ?? usual ?? sheets[0]
  const start = Number(textOf(query.start)) || 1
  return (
    <Shell shop={shop} actor={actor}>
      <StockSections words={shop.words} section="/stock/labels" />
      <div className="page-head">
        <h1>Labels</h1>
        <Link href="/settings/labels">Sizes</Link>
      </div>
      <form action="/stock/labels" className="panel stack">
        <div className="field">
          <label htmlFor="marks">Marks</label>
          <textarea id="marks" name="marks" rows={3} defaultValue={typed} />
          <p className="field-hint">With spaces between them; T-0101..T-0120 is a run of numbers.</p>
        </div>
        <div className="fields">
          <div className="field">
            <label htmlFor="sheet">Sheet</label>
            <select id="sheet" name="sheet" defaultValue={sheet?.id}>
              {sheets.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          <div className="field">
            <label htmlFor="start">First free place</label>
            <input id="start" name="start" inputMode="numeric" defaultValue={start} />
            <p className="field-hint">On a partly used sheet: counted along the rows from the upper left.</p>
          </div>
        </div>
        <div className="row">
          <button type="submit" className="button quiet">
            Look what comes
          </button>
        </div>
      </form>
      {typed && sheet && <Coming typed={typed} sheet={sheet} start={start} />}
    </Shell>
  )
}

type ComingProps = {
  readonly typed: string
  readonly sheet: LabelSheet
  readonly start: number
}

async function Coming({ typed, sheet, start }: ComingProps) {
  const wanted = wantedMarks(typed)
  const found = await listTubesByMark(wanted.marks)
  const there = new Set(found.map(({ tube }) => tube.mark))
  const missing = [...wanted.unreadable, ...wanted.marks.filter((mark) => !there.has(mark))]
  const places = labelsOnSheet(sheet)
  const isPlace = Number.isInteger(start) && start >= 1 && start <= places
  const pages = Math.ceil((start - 1 + found.length) / places)
  const address = new URLSearchParams({ sheet: sheet.id, start: String(start), marks: [...there].join(' ') })
  return (
    <section className="panel stack">
      <h2>What comes</h2>
      {missing.length > 0 && (
        <p className="form-message" data-status="refused">
          Not in the stock book: {missing.slice(0, 30).join(', ')}.
        </p>
      )}
      {!isPlace && (
        <p className="form-message" data-status="refused">
          First free place: {start} is not on this sheet. It must be between 1 and {places}.
        </p>
      )}
      <p>
        {found.length} {found.length === 1 ? 'label' : 'labels'}, {pages} {pages === 1 ? 'page' : 'pages'}:{' '}
        {found
          .slice(0, 30)
          .map(({ tube }) => `${tube.mark} ${tube.designation}`)
          .join(', ')}
        {found.length > 30 && ' …'}
      </p>
      {found.length > 0 && isPlace && (
        <div className="row">
          <a className="button" href={`/api/stock/labels?${address}`}>
            Open the labels to print
          </a>
        </div>
      )}
    </section>
  )
}
