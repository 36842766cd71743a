import Link from 'next/link'
import { ampName } from '@/lib/domain/amp/amp'
import type { ListedAmp } from '@/lib/store/amp'

export function AmpList({ amps, search }: { amps: readonly ListedAmp[]; search: string }) {
  return (
    <div className="panel table-scroll">
      <table>
        <thead>
          <tr>
            <th>Amplifier</th>
            <th>Serial</th>
            <th>Owner</th>
            <th>Output stage</th>
            <th className="num">Sockets</th>
            <th className="num">Jobs</th>
          </tr>
        </thead>
        <tbody>
          {amps.map((amp) => (
            <tr key={amp.id}>
              <td>
                <Link href={`/amps/${amp.id}`}>{ampName(amp)}</Link>
              </td>
              <td>{amp.serial || <span className="soft">none</span>}</td>
              <td>
                <Link href={`/customers/${amp.customerId}`}>{amp.ownerName}</Link>
              </td>
              <td>{amp.outputClass}</td>
              <td className="num">{amp.socketCount || <span className="soft">no sheet</span>}</td>
              <td className="num">{amp.jobCount}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {amps.length === 0 && <p className="soft">No amplifier found{search && ` for “${search}”`}.</p>}
    </div>
  )
}
