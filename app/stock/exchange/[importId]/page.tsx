import type { Metadata } from 'next'
import Link from 'next/link'
import { notFound } from 'next/navigation'
import { ActForm } from '@/app/_components/form/act-form'
import { Shell } from '@/app/_components/shell/shell'
import { formatInstant } from '@/lib/domain/calendar'
import type { Shop } from '@/lib/domain/shop/shop'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { findImport, type Import, listImportMarks } from '@/lib/store/import'
import { importPreview } from '@/lib/workflow/tables/import-preview'
import { importProgress } from '@/lib/workflow/tables/import-progress'
import { cutShort } from '@/lib/workflow/tables/import-standing'
import { importStateWord } from '../import-words'
import { submitUndo } from './actions'
import { CutShortPanel } from './cut-short-panel'
import { MappingForm } from './mapping-form'
import { mappingValues } from './mapping-schema'
import { ProgressPanel } from './progress-panel'

export const metadata: Metadata = { title: 'Import' }

const PHASES = { reading: 'Reading the rows', writing: 'Writing them down', 'taking back': 'Taking them back' } as const

export default async function ImportPage({ params }: PageProps<'/stock/exchange/[importId]'>) {
  const { actor, shop } = await requireUser()
  const found = await findImport((await params).importId)
  if (!found) notFound()
  const progress = importProgress(found.id)
  const cut = await cutShort(found)
  const { locale, tubes } = wordsFor(shop.words)
  return (
    <Shell shop={shop} actor={actor}>
      <div className="page-head">
        <h1>
          {found.fileName} <span className="soft">{importStateWord(found, cut !== null)}</span>
        </h1>
        <Link href="/stock/exchange">Import and export</Link>
      </div>
      <p className="soft">
        {found.rows} rows, chosen {formatInstant(found.at, shop.timeZone, locale)} by {found.person}
      </p>
      {progress && (
        <ProgressPanel importId={found.id} words={PHASES[progress.phase]} done={progress.done} total={progress.total} />
      )}
      {cut && <CutShortPanel cut={cut} tubes={tubes} />}
      {!progress && !cut && <Outcome found={found} shop={shop} />}
      {!progress && ['chosen', 'cancelled', 'failed'].includes(found.state) && <Preview found={found} shop={shop} />}
    </Shell>
  )
}

async function Outcome({ found, shop }: { found: Import; shop: Shop }) {
  if (found.state === 'chosen') return null
  const { tube, tubes } = wordsFor(shop.words)
  const isLeftOver = found.state !== 'done'
  const left = isLeftOver && found.taken > 0 ? await listImportMarks(found.id) : []
  return (
    <section className="panel stack">
      <h2>What came of it</h2>
      <p>
        {found.taken === 0
          ? 'Nothing of it is in stock.'
          : `${found.taken} ${found.taken === 1 ? tube : tubes} ${isLeftOver ? 'left of it' : 'taken in'}.`}{' '}
        {found.refused > 0 && `${found.refused} ${found.refused === 1 ? 'row needs' : 'rows need'} another look.`}
      </p>
      {left.length > 0 && <p>Kept, because something was done with them since: {left.join(', ')}.</p>}
      {found.refused > 0 && (
        <p>
          <a href={`/api/stock/import/${found.id}/faults`} download>
            The rows to correct, each with its fault
          </a>
          . Put them right there and take the file in again.
        </p>
      )}
      {found.taken > 0 && found.state !== 'undone' && (
        <ActForm
          action={submitUndo}
          values={{ importId: found.id }}
          quiet
          fold={{
            summary: 'Undo the whole import',
            note: `Takes all of these ${tubes} out again, except those that were tested, corrected, moved, quoted, fitted or pictured since.`,
          }}
        >
          Undo this import
        </ActForm>
      )}
    </section>
  )
}

async function Preview({ found, shop }: { found: Import; shop: Shop }) {
  const preview = await importPreview(found.id, shop, new Date())
  if (!preview) return <p className="form-message">The file is not at hand any more. Choose it again.</p>
  const { headings, mapping, rows, options, faults } = preview
  return (
    <section className="panel stack">
      <h2>The first rows, and what their columns mean</h2>
      {faults.length > 0 && (
        <div className="caution">
          <strong>In the first {preview.looked} rows, read as guessed below:</strong>
          <ul>
            {faults.map((fault) => (
              <li key={fault}>{fault}</li>
            ))}
          </ul>
        </div>
      )}
      <MappingForm values={mappingValues(found.id, mapping)} {...{ headings, rows, options }} />
    </section>
  )
}
