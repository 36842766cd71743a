/** Every sentence on sets for the shelf, in bench words. */
import { figure, type MatchingFormat, testPointText } from '@/lib/domain/matching/matching-text'
import { YARDSTICK_STEPS } from '@/lib/domain/pairing/spread-rule'
import type { Words } from '@/lib/domain/words'
import type { Progress } from '../worker/task'
import type { SetsPlan, StockSet, TestNext } from './sets-plan'
import type { SetsPossible } from './sets-possible'
import type { StockTube } from './stock-cohorts'

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`
const yardsticks = (steps: number): string => `${figure(steps / YARDSTICK_STEPS, 3)} yardsticks`

export const setWord = (size: number, count: number): string =>
  size === 2 ? (count === 1 ? 'pair' : 'pairs') : count === 1 ? 'quad' : 'quads'

export function madeText({ order, sets, singles, tubes, family }: SetsPlan, words: Words): string {
  const left = singles.length === 0 ? 'none is left over' : `${counted(singles.length, 'single', 'singles')} left`
  return `${sets.length} ${setWord(order.size, sets.length)} from ${counted(tubes, `${family} ${words.tube}`, `${family} ${words.tubes}`)}, ${left}.`
}

export function provedText({ cost, bound, ended, order }: SetsPlan): string {
  const single = order.rule.singleCost === 'most-sets' ? 'as many sets as can be' : 'a single counting one yardstick'
  if (cost === bound) return `No other way of making them spreads less, ${single} (proved).`
  const gap = `They count ${yardsticks(cost)} together; no way counts less than ${yardsticks(bound)} (proved), so at most ${figure((100 * (cost - bound)) / cost, 2)} % could be gained.`
  return ended === 'time' ? `Stopped at its time limit. ${gap}` : gap
}

/** What "matched" means here; void without it. */
export function meantText(plan: SetsPlan, format: MatchingFormat, tested: string): string {
  const { instrument, testPoint, measured, order } = plan
  const { plateCurrent, transconductance } = order.rule.yardsticks
  const slope = measured ? ` and ${figure(100 * transconductance, 2)} %` : '; transconductance was not read'
  return `${tested} on ${instrument} at ${testPointText(testPoint, format)}. In a set all lie within ${figure(1000 * plateCurrent, 2)} mA${slope}.${carriedText(plan)} A match is void without these.`
}

function carriedText({ sets, singles, instrument }: SetsPlan): string {
  const from = carriedFrom([...sets.flatMap(({ tubes }) => tubes), ...singles])
  if (from.length === 0) return ''
  return ` Readings on ${from.join(' and ')} were carried over to ${instrument} by references read on both.`
}

/** Instruments that readings were carried over from. */
export const carriedFrom = (tubes: readonly StockTube[]): string[] =>
  [...new Set(tubes.flatMap(({ carried }) => carried?.from ?? []))].sort()

/** null: all of the set were read, or carried, alike. */
export function setDoubtText({ doubt, spreads }: StockSet, { order }: SetsPlan): string | null {
  if (doubt === undefined) return null
  const beyond = spreads.plateCurrent + doubt > order.rule.yardsticks.plateCurrent
  return `Read on different instruments: apart to ±${figure(1000 * doubt, 1)} mA (95 %)${beyond ? ', so not surely matched' : ''}.`
}

export function possibleText({ quads }: SetsPossible): string {
  return quads.least === quads.most ? String(quads.least) : `${quads.least} to ${quads.most}`
}

export function testNextText({ near, oldReading }: TestNext): string {
  if (near.length > 0) return `its old reading lies near that of ${near.join(', ')}`
  return oldReading ? 'its old reading lies near none of them' : 'nothing can be said of it yet'
}

export function setsProgressText({ stage, figures }: Progress): string {
  const { round = 0, missing = 0, chosen, gap } = figures
  if (stage === 'pairing-round')
    return `Round ${round}: ${missing === 0 ? 'no closer pair is missing' : `${counted(missing, 'pair', 'pairs')} not looked at before may be closer`}.`
  const open = gap === undefined ? '' : ` At most ${figure(100 * gap, 2)} % could still be gained.`
  return chosen === undefined ? 'At work.' : `${counted(chosen, 'set', 'sets')} so far.${open}`
}
