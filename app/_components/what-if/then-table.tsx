/** Every socket in two states, one under the other: as it is, and as it would be. */
import { VerdictTag } from '@/app/_components/bench/verdict-tag'
import { BandFigure, bandEnds, MILLIAMPS, PERCENT, VOLTS, WATTS } from '@/app/_components/circuit/band-figure'
import { ratingSystemText, verdictWord } from '@/lib/domain/bias/bias-text'
import type { SocketIdle } from '@/lib/domain/circuit/change/socket-idle'
import type { WhatIf } from '@/lib/domain/circuit/change/what-if'
import { capital, type Words } from '@/lib/domain/words'
import styles from './what-if.module.css'

type Props = {
  readonly sockets: WhatIf['sockets']
  /** False: nothing is changed, and only the present state is shown. */
  readonly changed: boolean
  readonly words: Words
  readonly states?: readonly [string, string]
}

export function ThenTable({ sockets, changed, words, states: [first, second] = ['now', 'then'] }: Props) {
  return (
    <div className="table-scroll">
      <table className={styles.then}>
        <thead>
          <tr>
            <th>Socket</th>
            <th>State</th>
            <th>Verdict, {words.tube}</th>
            <th className="num">{capital(words.plate)} to cathode</th>
            <th className={`num ${styles.spare}`}>Grid to cathode</th>
            <th className="num">{capital(words.plate)} current</th>
            <th className="num">Dissipation</th>
            <th className="num">Of the rating</th>
            <th className="num">Screen</th>
          </tr>
        </thead>
        {sockets.map((socket) => (
          <tbody key={socket.position}>
            <tr>
              <th scope="rowgroup" rowSpan={changed ? 2 : 1}>
                {socket.position}
              </th>
              <IdleCells state={first} idle={socket.now} />
            </tr>
            {changed && (
              <tr className={styles.changed}>
                {socket.changed ? (
                  <IdleCells state={second} idle={socket.changed} />
                ) : (
                  <>
                    <th scope="row">{second}</th>
                    <td colSpan={7}>Pulled: this socket is empty.</td>
                  </>
                )}
              </tr>
            )}
          </tbody>
        ))}
      </table>
    </div>
  )
}

function IdleCells({ state, idle }: { state: string; idle: SocketIdle }) {
  return (
    <>
      <th scope="row">{state}</th>
      <td>
        <VerdictTag verdict={idle.verdict.verdict} word={verdictWord(idle.verdict.verdict)} /> {idle.designation}
        {idle.mark && <span> {idle.mark}</span>}
        <br />
        <span className="soft small">
          {idle.plateRatingWatts === null ? 'no rating known' : `${idle.plateRatingWatts} W`}
          {idle.ratingSystem && `, ${ratingSystemText(idle.ratingSystem)}`}
        </span>
      </td>
      <td className="num">
        <BandFigure band={idle.plateToCathodeVolts} scale={VOLTS} />
      </td>
      <td className={`num ${styles.spare}`}>
        <BandFigure band={idle.gridToCathodeVolts} scale={{ ...VOLTS, decimals: 1 }} />
      </td>
      <td className="num">
        <BandFigure band={idle.plateAmps} scale={MILLIAMPS} />
      </td>
      <td className="num">
        <BandFigure band={idle.plateWatts} scale={WATTS} />
      </td>
      <td className="num">
        {idle.platePercent ? <BandFigure band={idle.platePercent} scale={PERCENT} /> : <span className="soft">—</span>}
      </td>
      <td className={`num ${styles.screen}`}>
        <ScreenFigures idle={idle} />
      </td>
    </>
  )
}

function ScreenFigures({ idle: { screenAmps, screenWatts, screenPercent } }: { idle: SocketIdle }) {
  if (screenAmps === null || screenWatts === null) return <span className="soft">—</span>
  return (
    <>
      <span className="nowrap">{(1000 * screenAmps.value).toFixed(1)} mA,</span>{' '}
      <span className="nowrap">{screenWatts.value.toFixed(1)} W</span>
      <br />
      <span className="soft small">
        <span className="nowrap">{bandEnds(screenWatts, WATTS)} W</span>
        {screenPercent && `, ${Math.round(screenPercent.value)}\u00a0%`}
      </span>
    </>
  )
}
