/**
 * How the substitute would idle at the measured plate and screen volts, by the curves of its
 * type, and what must be set or changed for it to idle within the shop's window.
 *
 * The voltages are held as they were measured; a supply that sags with current gives a
 * little less, so the band of the curves is said with every figure. Grid volts sought by
 * bisection: current falls steadily as the grid goes more negative.
 * Cathode resistor: the tube settles where its own cathode current, times the resistance
 * and the tubes sharing it, is the grid voltage that gives this current.
 */
import { e24Around } from '../../circuit/what-if/e24'
import { catalogueModel } from '../../model/catalogue-model'
import { tubeCurrents } from '../../model/plate-curves'
import type { TypeModel } from '../../model/type-model'
import type { TubeVariant } from '../../tube/tube-variant'
import { type Ohms, ohms } from '../../units'
import { capital } from '../../words'
import type { AmpSocket, SocketBias, SubstitutionRules } from '../amp-socket'
import { type Finding, finding } from '../finding'

type Stage = {
  readonly plate: number
  readonly screen: number
  readonly model: TypeModel
  readonly rating: number
  readonly screenRating: number | null
}
type Currents = { readonly plate: number; readonly screen: number }

const HALVINGS = 60
/** As predicted-idle.ts has it: handbook screen currents are met no better. */
const SCREEN_DOUBT = 0.4

const at = ({ model, plate, screen }: Stage, grid: number): Currents => {
  const { plate: ia, screen: ig2 } = tubeCurrents(model.parameters, plate, screen, grid)
  return { plate: ia, screen: ig2 }
}

/** Grid volts at which a falling quantity is met; null when it is not between these. */
function gridWhere(met: (grid: number) => boolean, deepest: number): number | null {
  if (!met(deepest) || met(0)) return null
  let [low, high] = [deepest, 0]
  for (let count = 0; count < HALVINGS; count++) {
    const middle = (low + high) / 2
    if (met(middle)) low = middle
    else high = middle
  }
  return (low + high) / 2
}

const milliamps = (amps: number): string => `${(1000 * amps).toFixed(1)} mA`
const percent = (share: number): string => `${Math.round(100 * share)} %`
const volts = (value: number): string => `${value.toFixed(1).replace('-', '−')} V`
const ohmsText = (value: number): string => `${Number(value.toPrecision(3))} Ω`

const shareAt = (stage: Stage, currents: Currents): number => (stage.plate * currents.plate) / stage.rating

/** Curves are good to so much, at 95 %. */
const bandText = ({ model }: Stage): string => `± ${percent(Math.exp(2 * model.share) - 1)}`

export function idleFindings(
  proposed: TubeVariant,
  socket: AmpSocket,
  { catalogue, words }: SubstitutionRules,
): Finding[] {
  if (proposed.role !== 'output' || !socket.bias || !socket.window) return []
  const rating = proposed.ratings?.plateWatts?.value
  if (rating === undefined)
    return [finding('idle', 'cannot-say', `No ${words.plate} dissipation is known for ${proposed.designation}.`)]
  const model = catalogueModel(proposed.typeId, catalogue)
  if (!model.ok)
    return [
      finding(
        'idle',
        'cannot-say',
        `No curves of ${proposed.designation} are known: what it would draw cannot be said.`,
      ),
    ]
  const needsScreen = model.value.parameters.kind === 'pentode'
  if (socket.plateToCathode === null || (needsScreen && socket.screenToCathode === null))
    return [
      finding(
        'idle',
        'cannot-say',
        `${capital(words.plate)} and screen volts were not measured here: what it would draw cannot be said.`,
      ),
    ]
  const stage = {
    plate: socket.plateToCathode,
    screen: socket.screenToCathode ?? 0,
    model: model.value,
    rating,
    screenRating: proposed.ratings?.screenWatts?.value ?? null,
  }
  return socket.bias.kind === 'grid-supplied'
    ? gridSupplied(stage, socket.bias, socket)
    : cathodeResistor(stage, socket.bias, socket)
}

type GridSupplied = Extract<SocketBias, { kind: 'grid-supplied' }>
type CathodeResistor = Extract<SocketBias, { kind: 'cathode-resistor' }>
type Window = { readonly window: AmpSocket['window'] }

const middle = ({ window }: Window): number => (window ? (window.low + window.high) / 2 : 0.65)

function gridSupplied(stage: Stage, bias: GridSupplied, socket: AmpSocket): Finding[] {
  const aim = middle(socket)
  const needed = gridWhere((grid) => shareAt(stage, at(stage, grid)) <= aim, -stage.plate)
  if (needed === null) {
    return [
      finding('idle', 'change', `It would not reach ${percent(aim)} of its rating at any negative grid voltage here.`),
    ]
  }
  const currents = at(stage, needed)
  const aimText = `${milliamps(currents.plate)}, ${percent(aim)} of its rating`
  const found = screenFindings(stage, currents)
  const { now, coldest, hottest } = bias
  if (now !== null) {
    const share = shareAt(stage, at(stage, now))
    const today = `At the present ${volts(now)} of grid voltage it would draw ${milliamps(at(stage, now).plate)} ${bandText(stage)}, ${percent(share)} of its rating`
    const inside = socket.window !== null && share >= socket.window.low && share <= socket.window.high
    if (inside) return [finding('idle', 'fits', `${today}. Read the idle after fitting all the same.`), ...found]
    return [reached(`${today}. For ${aimText} it needs about ${volts(needed)}`, needed, { coldest, hottest }), ...found]
  }
  return [
    reached(`For ${aimText} it needs about ${volts(needed)} of grid voltage`, needed, { coldest, hottest }),
    ...found,
  ]
}

function reached(
  sentence: string,
  needed: number,
  { coldest, hottest }: Pick<GridSupplied, 'coldest' | 'hottest'>,
): Finding {
  if (coldest === null && hottest === null)
    return finding('idle', 'adjust', `${sentence}; how far the adjustment reaches is not noted.`)
  if (coldest !== null && needed < coldest)
    return finding(
      'idle',
      'change',
      `${sentence}; the adjustment ends at ${volts(coldest)}. The bias supply must be altered first.`,
    )
  if (hottest !== null && needed > hottest)
    return finding(
      'idle',
      'change',
      `${sentence}; the adjustment ends at ${volts(hottest)}. The bias supply must be altered first.`,
    )
  return finding('idle', 'adjust', `${sentence}, within the adjustment.`)
}

/** Grid voltage at which the stage settles with a cathode resistor. */
function settled(stage: Stage, resistance: number, sharedBy: number): number | null {
  const rises = (grid: number): boolean => {
    const { plate, screen } = at(stage, grid)
    return (plate + screen) * resistance * sharedBy <= -grid
  }
  return gridWhere(rises, -stage.plate)
}

function resistorFor(stage: Stage, aim: number, sharedBy: number): Ohms | null {
  const grid = gridWhere((one) => shareAt(stage, at(stage, one)) <= aim, -stage.plate)
  if (grid === null) return null
  const { plate, screen } = at(stage, grid)
  return ohms(-grid / ((plate + screen) * sharedBy))
}

function cathodeResistor(stage: Stage, { resistance, sharedBy }: CathodeResistor, socket: AmpSocket): Finding[] {
  if (resistance === null)
    return [finding('idle', 'cannot-say', 'The cathode resistor is not noted: what it would draw cannot be said.')]
  const grid = settled(stage, resistance, sharedBy)
  if (grid === null)
    return [finding('idle', 'cannot-say', 'By its curves it would not settle with this cathode resistor.')]
  const currents = at(stage, grid)
  const share = shareAt(stage, currents)
  const sentence = `With the ${ohmsText(resistance)} cathode resistor it would settle at ${milliamps(currents.plate)} ${bandText(stage)}, ${percent(share)} of its rating`
  const found = screenFindings(stage, currents)
  const inside = socket.window !== null && share >= socket.window.low && share <= socket.window.high
  if (inside) return [finding('idle', 'fits', `${sentence}.`), ...found]
  const wanted = resistorFor(stage, middle(socket), sharedBy)
  if (wanted === null)
    return [finding('idle', 'change', `${sentence}; no resistor brings it to ${percent(middle(socket))}.`), ...found]
  const { below, above } = e24Around(wanted)
  const choice = above / wanted < wanted / below ? above : below
  return [
    finding(
      'idle',
      'change',
      `${sentence}. A resistor of ${ohmsText(choice)} would bring it near ${percent(middle(socket))}.`,
    ),
    ...found,
  ]
}

/** The model's screen current is coarse, so what is near the limit is a note and only a clear excess more. */
function screenFindings({ screen, screenRating }: Stage, { screen: current }: Currents): Finding[] {
  if (screenRating === null || current === 0) return []
  const share = (screen * current) / screenRating
  const sentence = `Its screen would dissipate about ${(screen * current).toFixed(1)} W at idle, of ${screenRating} W; the curves tell screen current to ± ${percent(SCREEN_DOUBT)} only.`
  if (share > 1 + SCREEN_DOUBT)
    return [
      finding('screen dissipation', 'change', `${sentence} Fit a larger screen resistor or lower the screen supply.`),
    ]
  return share > 1 - SCREEN_DOUBT ? [finding('screen dissipation', 'note', sentence)] : []
}
