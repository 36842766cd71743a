import type { Metadata } from 'next'
import Link from 'next/link'
import { formatDay } from '@/lib/domain/calendar'
import type { Instrument } from '@/lib/domain/shop/instrument'
import { accuracyText } from '@/lib/domain/shop/instrument-shown'
import { wordsFor } from '@/lib/domain/words'
import { requireUser } from '@/lib/session'
import { listInstruments } from '@/lib/store/instrument'
import { mayKeepInstruments } from '@/lib/workflow/shop/keep-instrument'
import { SettingsFrame } from '../settings-frame'
import { NotYourInstruments } from './not-your-instruments'

export const metadata: Metadata = { title: 'Instruments' }

export default async function InstrumentsPage() {
  const { actor, shop } = await requireUser()
  const may = mayKeepInstruments({ actor })
  const instruments = await listInstruments()
  const { locale, tube } = wordsFor(shop.words)
  return (
    <SettingsFrame actor={actor} shop={shop} section="/settings/instruments">
      <div className="page-head">
        <h1>Instruments</h1>
        <Link href="/settings/instruments/corrections">Compared by reference {`${tube}s`}</Link>
        {may && (
          <Link className="button" href="/settings/instruments/new">
            New instrument
          </Link>
        )}
      </div>
      {!may && <NotYourInstruments />}
      <div className="panel table-scroll">
        <table>
          <thead>
            <tr>
              <th>Name</th>
              <th>Kind</th>
              <th>Calibrated on</th>
              <th>DC accuracy</th>
              <th>Display</th>
              <th>Input resistance</th>
              <th>In use</th>
            </tr>
          </thead>
          <tbody>
            {instruments.map((instrument) => (
              <tr key={instrument.id}>
                <td>
                  {may ? (
                    <Link href={`/settings/instruments/${instrument.id}`}>{instrument.name}</Link>
                  ) : (
                    instrument.name
                  )}
                </td>
                <td>{instrument.kind.replace('tube', tube)}</td>
                <td>{instrument.calibratedOn ? formatDay(instrument.calibratedOn, locale) : 'not known'}</td>
                <MeterCells instrument={instrument} />
                <td>{instrument.active ? 'yes' : 'no, retired'}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {instruments.length === 0 && (
          <p className="soft">No instrument yet. Readings need a meter with its accuracy.</p>
        )}
      </div>
    </SettingsFrame>
  )
}

function MeterCells({ instrument }: { instrument: Instrument }) {
  if (instrument.kind !== 'meter') return <td colSpan={3}>—</td>
  return (
    <>
      <td className="nowrap">{accuracyText(instrument)}</td>
      <td className="nowrap">{instrument.displayCounts} counts</td>
      <td className="nowrap">{instrument.inputResistance / 1e6} MΩ</td>
    </>
  )
}
