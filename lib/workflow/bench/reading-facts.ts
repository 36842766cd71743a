/** A round of readings as papers print it. */
import type { Banded as PrintedBand, ReadingSetFacts, SocketReadingFacts } from '@/lib/documents/facts'
import type { SocketResult } from '@/lib/domain/bench/bench-result'
import { methodWord } from '@/lib/domain/bench/reading-set'
import type { Banded } from '@/lib/domain/bias/banded'
import { verdictWord } from '@/lib/domain/bias/bias-text'
import type { IdleResult } from '@/lib/domain/bias/idle'
import { formatDay } from '@/lib/domain/calendar'
import { amps, ratio, seconds, volts, watts } from '@/lib/domain/units'
import type { Words } from '@/lib/domain/words'
import type { WorkedRound } from '@/lib/workflow/work/safety-state'

function printed<Unit>({ value, plusMinus }: Banded, unit: (value: number) => Unit, scale = 1): PrintedBand<Unit> {
  return { value: unit(value * scale), half: unit(plusMinus * scale) }
}

/** The printed rating is the stronger statement, so it is said with the verdict. */
function verdictOf({ verdict }: IdleResult): string {
  const word = verdictWord(verdict.verdict).toLowerCase()
  if (verdict.overRating === 'yes') return `${word}, over the rating`
  return verdict.overRating === 'possibly' ? `${word}, may be over the rating` : word
}

function idleFacts(position: string, idle: IdleResult): SocketReadingFacts {
  return {
    position,
    type: idle.designation,
    plateVoltage: volts(idle.plateToCathodeVolts.value),
    plateCurrent: printed(idle.plateAmps, amps),
    plateDissipation: printed(idle.plateWatts, watts),
    shareOfRating: idle.platePercent && printed(idle.platePercent, ratio, 0.01),
    verdict: verdictOf(idle),
    estimated: idle.plateAmps.estimate || (idle.platePercent?.estimate ?? false),
  }
}

function socketFacts({ socket, outcome }: SocketResult): SocketReadingFacts[] {
  const { position, typeFitted: type } = socket
  const unknown = {
    position,
    type,
    plateVoltage: null,
    plateCurrent: null,
    plateDissipation: null,
    shareOfRating: null,
  }
  switch (outcome.kind) {
    case 'idle':
      return [idleFacts(position, outcome.idle)]
    case 'contradiction':
      return [{ ...unknown, verdict: 'readings contradict' }]
    case 'gap':
    case 'incomplete':
      return [{ ...unknown, verdict: 'cannot be judged' }]
    case 'noted':
      return []
  }
}

export function readingSetFacts({ set, result }: WorkedRound, words: Words): ReadingSetFacts {
  const methods = set.entries.flatMap(({ method }) => (method === '' ? [] : [methodWord(method)]))
  const calibrated =
    set.calibratedOn === null ? 'calibration date not known' : `cal. ${formatDay(set.calibratedOn, words.locale)}`
  return {
    takenAt: set.takenAt.toISOString(),
    takenBy: set.takenBy,
    methods: [...new Set(methods)],
    instruments: [`${set.instrumentName}, ${calibrated}`],
    wallVoltage: volts(set.wallVolts),
    warmUp: seconds(set.warmupMinutes * 60),
    signal: set.signalState,
    sockets: result.sockets.flatMap(socketFacts),
  }
}
