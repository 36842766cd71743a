/**
 * The screen feed that leaves the screen node where it was read.
 *
 *   node = reservoir − Rd·(Σ Ig2 + rest)
 * With the dropper noted the rest follows; without it the whole drop is put down to the
 * screens. Screens well off the reservoir and no dropper noted have a supply of their own.
 */
import type { ScreenFeedKind, SupplyFacts } from '@/lib/domain/amp/supply-facts'
import type { Assumption } from '@/lib/domain/circuit/amp/assumption'
import type { ScreenFeed } from '@/lib/domain/circuit/output-stage'
import { amps, ohms, ratio, volts } from '@/lib/domain/units'

export type ScreenReading = {
  readonly facts: SupplyFacts
  readonly reservoir: number
  /** Volts of the screen node; null: no screen volts were read. */
  readonly node: number | null
  /** Sum over the tubes of the group, A. Zero for triodes. */
  readonly screenCurrent: number
  readonly mainsFactor: number
}

export type FoundFeed = { readonly feed: ScreenFeed; readonly assumptions: readonly Assumption[] }

/** Drops smaller than this are the meter's. Of the reservoir; common practice, no source. */
const METER_SHARE = 0.01
/** A plain dropper to output screens loses less than this. Of the reservoir; common practice, no source. */
const MOST_DROP = 0.2
const MIDDLE_TAP = 0.5
/** What hangs on the screen node beside the screens, in their currents. Common practice, no source. */
const MOST_REST = 20

const found = (feed: ScreenFeed, ...assumptions: readonly Assumption[]): FoundFeed => ({ feed, assumptions })

const dropper = (resistance: number, drawn: number): ScreenFeed => ({
  kind: 'dropper',
  resistance: ohms(resistance),
  drawn: amps(drawn),
})

const stiff = (node: number, mainsFactor: number): ScreenFeed => ({
  kind: 'own-supply',
  openCircuit: volts(node / mainsFactor),
  sourceResistance: ohms(0),
  drawn: amps(0),
})

function withDropper(given: ScreenReading, node: number, resistance: number): FoundFeed {
  const { reservoir, screenCurrent, mainsFactor } = given
  const drop = reservoir - node
  const rest = resistance > 0 ? drop / resistance - screenCurrent : 0
  const allowance = METER_SHARE * reservoir
  if (resistance > 0 && rest >= 0 && rest <= MOST_REST * screenCurrent) return found(dropper(resistance, rest))
  if (Math.abs(drop - resistance * screenCurrent) <= allowance) return found(dropper(resistance, 0))
  const said: Assumption = { code: 'screen-facts-contradict', ohms: resistance, dropVolts: drop }
  return found(stiff(node, mainsFactor), said)
}

function withoutDropper(given: ScreenReading, node: number): FoundFeed {
  const { reservoir, screenCurrent, mainsFactor } = given
  const drop = reservoir - node
  if (Math.abs(drop) <= METER_SHARE * reservoir) return found(dropper(0, 0))
  if (drop < 0 || drop > MOST_DROP * reservoir || screenCurrent <= 0) {
    return found(stiff(node, mainsFactor), { code: 'screens-taken-stiff', volts: node })
  }
  const resistance = drop / screenCurrent
  return found(dropper(resistance, 0), { code: 'screen-dropper-from-readings', ohms: resistance })
}

function ownSupply(given: ScreenReading): FoundFeed {
  const { screenDropperOhms } = given.facts
  if (given.node === null) return found(dropper(screenDropperOhms ?? 0, 0), { code: 'screen-volts-not-read' })
  return screenDropperOhms === null
    ? withoutDropper(given, given.node)
    : withDropper(given, given.node, screenDropperOhms)
}

function feedOf(kind: ScreenFeedKind, given: ScreenReading): FoundFeed {
  switch (kind) {
    case 'own-supply':
      return ownSupply(given)
    case 'triode-strapped':
      return found({ kind: 'triode-strapped' })
    case 'ultralinear-tap': {
      // Turns for ohms: the inner layers of a winding are shorter, which at idle is worth millivolts.
      const percent = given.facts.ultralinearTapPercent
      const tap = ratio(percent === null ? MIDDLE_TAP : percent / 100)
      return found({ kind: 'primary-tap', tap }, ...(percent === null ? [{ code: 'tap-taken-middle' } as const] : []))
    }
  }
}

/** `hasScreens`: false for a group of triodes, which ask for nothing and are told nothing. */
export function screensFromReadings(given: ScreenReading, hasScreens: boolean): FoundFeed {
  if (!hasScreens) return found(dropper(0, 0))
  const { screenFeed } = given.facts
  const feed = feedOf(screenFeed ?? 'own-supply', given)
  if (screenFeed !== null) return feed
  return { ...feed, assumptions: [{ code: 'screen-feed-taken-own' }, ...feed.assumptions] }
}
