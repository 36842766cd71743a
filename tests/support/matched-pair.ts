import type { MatchStatement } from '@/lib/domain/matching/proposal'
import { amps, ratio, volts } from '@/lib/domain/units'

/** What is claimed of a pair of 6V6GT read alike, as the choice of a set would. */
export const MATCHED_PAIR: MatchStatement = {
  firstTested: '2031-05-06',
  lastTested: '2031-05-06',
  instrument: 'Bench tester 1',
  testPoint: { plateVoltage: volts(250), screenVoltage: volts(250), gridVoltage: volts(-12.5) },
  spreads: { plateCurrent: amps(0.0012), transconductance: ratio(0.03) },
  yardsticks: { plateCurrent: amps(0.005), transconductance: ratio(0.1) },
  match: 'both',
}
