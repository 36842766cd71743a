import type { Metadata } from 'next'
import Link from 'next/link'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listMakers } from '@/lib/store/maker'
import { SettingsFrame } from '../settings-frame'

export const metadata: Metadata = { title: 'Makers' }

export default async function MakersPage() {
  const { actor, shop } = await requireUser()
  const makers = await listMakers()
  const { tube } = wordsFor(shop.words)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/makers">
      <div className="page-head">
        <h1>Makers</h1>
        <Link className="button" href="/settings/makers/new">
          New maker
        </Link>
      </div>
      <p className="soft">
        None come with the program. “What is it?” names a maker of this list where its marks stand on a {tube}; a mark
        tells who made it, not whose brand is on the carton.
      </p>
      <div className="panel table-scroll">
        <table>
          <thead>
            <tr>
              <th>Name</th>
              <th>Source codes</th>
              <th>JAN letters</th>
              <th>Factory marks</th>
              <th>Note</th>
            </tr>
          </thead>
          <tbody>
            {makers.map(({ id, name, sourceCodes, janLetters, factoryMarks, note }) => (
              <tr key={id}>
                <td>
                  <Link href={`/settings/makers/${id}`}>{name}</Link>
                </td>
                <td>{sourceCodes.join(', ')}</td>
                <td>{janLetters.join(', ')}</td>
                <td>{factoryMarks.join(', ')}</td>
                <td>{note}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {makers.length === 0 && <p className="soft">No maker yet.</p>}
      </div>
    </SettingsFrame>
  )
}
