/** What leaves the shop with the amplifier: items one by one, and the old tubes bagged by socket. */

import type { AmpSheet } from '@/lib/domain/amp/amp'
import { type Fitting, fittedTubeText, takenOut } from '@/lib/domain/amp/fitting'
import type { Job, JobItem } from '@/lib/domain/job/job'
import { capital, type Words } from '@/lib/domain/words'
import { PressForm } from '../press-form'
import { pressItem } from './actions'

type Props = {
  readonly job: Job
  readonly sheet: AmpSheet
  readonly fittings: readonly Fitting[]
  readonly words: Words
  readonly open: boolean
}

export function GoesBack({ job, sheet, fittings, words, open }: Props) {
  return (
    <section className="panel stack" aria-labelledby="goes-back">
      <h2 id="goes-back">Goes back with the amplifier</h2>
      {job.items.length === 0 ? (
        <p className="soft">Nothing else was left with it.</p>
      ) : (
        <div className="table-scroll">
          <table>
            <tbody>
              {job.items.map((item) => (
                <ItemRow key={item.id} item={item} jobNumber={job.number} open={open} />
              ))}
            </tbody>
          </table>
        </div>
      )}
      <OldParts job={job} sheet={sheet} fittings={fittings} words={words} />
    </section>
  )
}

function ItemRow({ item, jobNumber, open }: { item: JobItem; jobNumber: string; open: boolean }) {
  const { id, count, label, returned } = item
  return (
    <tr>
      <td>
        {count} × {label}
      </td>
      <td>
        <span className="tag" data-shape={returned ? '●' : '○'} data-tone={returned ? 'good' : undefined}>
          {returned ? 'laid ready' : 'not here yet'}
        </span>
      </td>
      {open && (
        <td className="no-print">
          <PressForm action={pressItem.bind(null, { jobNumber, itemId: id, returned: !returned })} quiet={returned}>
            {returned ? 'Not after all' : 'Laid ready'}
            <span className="sr-only"> {label}</span>
          </PressForm>
        </td>
      )}
    </tr>
  )
}

function OldParts({ job, sheet, fittings, words }: Omit<Props, 'open'>) {
  const positions = new Map(sheet.sockets.map(({ id, position }) => [id, position]))
  const out = takenOut(fittings, job.id, job.receivedAt)
  return (
    <div>
      <h3>Old {words.tubes}, bagged by socket</h3>
      <p>{job.oldPartsBack ? 'The customer wants old parts back.' : 'The customer does not want old parts back.'}</p>
      {out.length === 0 ? (
        <p className="soft">No {words.tube} was taken out.</p>
      ) : (
        <dl className="facts">
          {out.map((fitting) => (
            <OldTube
              key={fitting.id}
              bag={positions.get(fitting.socketId) ?? '?'}
              text={`${fittedTubeText(fitting)}, as received`}
              jobNumber={job.number}
            />
          ))}
        </dl>
      )}
      {!job.oldPartsBack && out.length > 0 && <p className="soft">{capital(words.tubes)} taken out stay here.</p>}
    </div>
  )
}

const OldTube = ({ bag, text, jobNumber }: { bag: string; text: string; jobNumber: string }) => (
  <>
    <dt>
      Bag {jobNumber} · {bag}
    </dt>
    <dd>{text}</dd>
  </>
)
