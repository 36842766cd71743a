import type { Metadata } from 'next'
import Link from 'next/link'
import { CopySheet } from '@/app/amps/copy-sheet'
import { biasKindWord, roleWord } from '@/lib/domain/amp/socket'
import { capital, wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listAmpsOfModel } from '@/lib/store/amp'
import { JobChassis } from '../job-chassis'
import { latestBench } from '../latest-bench'
import { requireHead } from '../require-head'

export const metadata: Metadata = { title: 'Amplifier' }

export default async function JobAmplifierPage({ params }: PageProps<'/jobs/[jobNumber]/amplifier'>) {
  const { shop } = await requireUser()
  const { job, amp } = await requireHead(params)
  const bench = await latestBench(job, shop)
  const { sockets } = bench.sheet
  const words = wordsFor(shop.words)
  const same =
    sockets.length > 0
      ? []
      : (await listAmpsOfModel(amp.make, amp.model)).filter(({ id, socketCount }) => id !== amp.id && socketCount > 0)
  return (
    <>
      <div className="row spread">
        <h2>Sockets in chassis order</h2>
        <Link className="button" href={`/amps/${amp.id}/sheet`}>
          {sockets.length === 0 ? 'Note the sockets' : 'Edit the sheet'}
        </Link>
      </div>
      {sockets.length === 0 ? (
        <div className="panel stack">
          <p>Nothing is noted yet.</p>
          <CopySheet onto={amp} from={same} />
        </div>
      ) : (
        <>
          <JobChassis bench={bench} shop={shop} jobNumber={job.number} />
          <div className="panel table-scroll">
            <table>
              <thead>
                <tr>
                  <th>Socket</th>
                  <th>Role</th>
                  <th>{capital(words.tube)} type</th>
                  <th>Mark</th>
                  <th>Idle current by</th>
                  <th>Values</th>
                </tr>
              </thead>
              <tbody>
                {sockets.map((socket) => (
                  <tr key={socket.id}>
                    <th scope="row">{socket.position}</th>
                    <td>
                      {roleWord(socket.role)} {socket.side && <span className="soft">side {socket.side}</span>}
                    </td>
                    <td>{socket.typeFitted || <span className="soft">not noted</span>}</td>
                    <td>{socket.markFitted}</td>
                    <td>{biasKindWord(socket.biasKind)}</td>
                    <td>
                      {[
                        socket.cathodeOhms !== null &&
                          `cathode ${socket.cathodeOhms} Ω${socket.cathodeSharedBy > 1 ? ` for ${socket.cathodeSharedBy}` : ''}`,
                        socket.senseOhms !== null && `sense ${socket.senseOhms} Ω`,
                        socket.screenOhms !== null && `screen ${socket.screenOhms} Ω`,
                        socket.halfPrimaryOhms !== null &&
                          `half primary ${socket.halfPrimaryOhms} Ω${socket.halfSharedBy > 1 ? ` for ${socket.halfSharedBy}` : ''}`,
                      ]
                        .filter(Boolean)
                        .join(', ')}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </>
      )}
    </>
  )
}
