import Link from 'next/link'
import type { AmpSheet } from '@/lib/domain/amp/amp'
import { unknownTypes } from '@/lib/domain/amp/socket-base'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import { capital, type Words } from '@/lib/domain/words'
import type { ListedAmp } from '@/lib/store/amp'
import { CopySheet } from '../copy-sheet'
import { SheetChassis } from '../sheet-chassis'

type ChassisPanelProps = { sheet: AmpSheet; others: readonly ListedAmp[]; words: Words; catalogue: TubeCatalogue }

export function ChassisPanel({ sheet, others, words, catalogue }: ChassisPanelProps) {
  const { amp, sockets } = sheet
  const sheetAddress = `/amps/${amp.id}/sheet`
  if (sockets.length === 0) {
    return (
      <section className="panel stack" aria-labelledby="chassis">
        <h2 id="chassis">Chassis</h2>
        <p>The sheet is empty. Once its sockets are written down, the chassis is drawn here.</p>
        <CopySheet onto={amp} from={others.filter(({ socketCount }) => socketCount > 0)} />
        <div className="row">
          <Link className="button" href={sheetAddress}>
            Write the sheet
          </Link>
        </div>
      </section>
    )
  }
  const unknown = unknownTypes(
    sockets.map(({ typeFitted }) => typeFitted),
    catalogue,
  )
  return (
    <section className="panel" aria-labelledby="chassis">
      <div className="panel-head">
        <h2 id="chassis">Chassis</h2>
        <span className="row">
          <Link href={sheetAddress}>Change the sheet</Link>
          <Link href={`${sheetAddress}/print`}>Sheet to print</Link>
        </span>
      </div>
      {unknown.length > 0 && (
        <p className="form-message">
          {unknown.join(', ')}: not in the handbook, no ratings known. What a data sheet says of it can be written down
          under{' '}
          <Link href={`/types/new?designation=${encodeURIComponent(unknown[0] ?? '')}`}>
            {capital(words.tube)} data
          </Link>
          .
        </p>
      )}
      <SheetChassis sheet={sheet} words={words} catalogue={catalogue} />
    </section>
  )
}
