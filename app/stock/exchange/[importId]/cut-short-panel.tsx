/** The server was stopped in the middle: what lies in stock of it, and the two ways out. */
import { ActForm } from '@/app/_components/form/act-form'
import { type CutShort, cutShortText } from '@/lib/workflow/tables/import-standing'
import { submitContinue, submitUndo } from './actions'

function wayOn({ written, import: { order, rows } }: CutShort): string {
  const rest = `Going on reads the file again from its first row and takes in what is missing; the ${written} that are in stock stay as they are.`
  return order?.allOrNothing
    ? `${rest} It was to be all or nothing: should one of the ${rows} rows be bad, all are taken out again but those that something was done with since.`
    : `${rest} Bad rows go into a file to correct, as before.`
}

export function CutShortPanel({ cut, tubes }: { cut: CutShort; tubes: string }) {
  const importId = cut.import.id
  const isUndoing = cut.during === 'undoing'
  return (
    <section className="panel stack">
      <h2>Cut short</h2>
      <p className="caution">{cutShortText(cut)} No row of it is half written.</p>
      {cut.canGoOn && <p>{wayOn(cut)}</p>}
      {cut.canGoOn && (
        <ActForm action={submitContinue} values={{ importId }}>
          Go on: take in the rest
        </ActForm>
      )}
      <p>
        Undoing takes its {tubes} out again, except those that were tested, corrected, moved, quoted, fitted or pictured
        since.
      </p>
      <ActForm action={submitUndo} values={{ importId }} quiet>
        {isUndoing ? 'Go on undoing' : 'Undo: take out what is in'}
      </ActForm>
    </section>
  )
}
