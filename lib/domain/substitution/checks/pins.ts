/**
 * Pin against pin: what the socket is wired for, and what the substitute has there.
 *
 * A pin that is empty in the tube the socket was made for is often used as a tie point for
 * a resistor (common practice, no source): a substitute with anything on it needs a look.
 * g3 or beam plates on a pin of their own, where the socket has nothing, must be linked to
 * the cathode. The other way round the link does no harm.
 */
import type { TubeVariant } from '../../tube/tube-variant'
import type { Words } from '../../words'
import { type Electrode, isWorking, type PinElectrode, readPin } from '../electrodes'
import { type Finding, finding } from '../finding'

const ELECTRODE_WORDS: Readonly<Record<Exclude<Electrode, 'plate'>, string>> = {
  screen: 'screen',
  grid: 'control grid',
  suppressor: 'suppressor (g3)',
  'beam plates': 'beam plates',
  cathode: 'cathode',
  heater: 'heater',
  'heater centre tap': 'heater centre tap',
  shield: 'shield',
  shell: 'shell',
  internal: 'an inner connection',
}

function named(all: readonly PinElectrode[], words: Words): string {
  const parts = all.map(({ electrode, section }) => {
    const word = electrode === 'plate' ? words.plate : ELECTRODE_WORDS[electrode]
    return section ? `${word} (${section})` : word
  })
  return parts.join(' and ') || 'nothing'
}

const keyOf = ({ electrode, section }: PinElectrode): string => `${electrode} ${section}`

/** Electrodes that may sit with the cathode inside one bulb and by themselves in another. */
const isTail = ({ electrode }: PinElectrode): boolean => electrode === 'suppressor' || electrode === 'beam plates'
const isInner = ({ electrode }: PinElectrode): boolean => electrode === 'internal' || electrode === 'shield'

const cathodePin = (pins: Readonly<Record<string, string>>): string | undefined =>
  Object.keys(pins).find((pin) => readPin(pins[pin]).some(({ electrode }) => electrode === 'cathode'))

/** A directly heated rectifier gives its current at a heater pin, where another has heater and cathode joined. */
const directlyHeated = (pin: readonly PinElectrode[], isRectifier: boolean): readonly PinElectrode[] =>
  isRectifier && pin.some(({ electrode }) => electrode === 'heater')
    ? pin.filter(({ electrode }) => electrode !== 'cathode')
    : pin

export function pinFindings(made: TubeVariant, proposed: TubeVariant, words: Words): Finding[] {
  if (made.base.name !== proposed.base.name) return []
  const [socket, tube] = [made.base.pins, proposed.base.pins]
  if (!socket || !tube) {
    if (made.typeId === proposed.typeId) return []
    const unknown = socket ? proposed : made
    return [
      finding('pins', 'cannot-say', `The pins of ${unknown.designation} are not known here: compare the data sheets.`),
    ]
  }
  const isRectifier = proposed.role === 'rectifier'
  const found = Object.keys({ ...socket, ...tube }).flatMap((pin) => {
    const at = (pins: Readonly<Record<string, string>>) => directlyHeated(readPin(pins[pin]), isRectifier)
    return pinFinding({ pin, wired: at(socket), has: at(tube), cathode: cathodePin(tube) }, words)
  })
  return found.length > 0 ? found : [finding('pins', 'fits', 'The same electrodes on the same pins.')]
}

type Pin = {
  readonly pin: string
  readonly wired: readonly PinElectrode[]
  readonly has: readonly PinElectrode[]
  readonly cathode: string | undefined
}

function pinFinding({ pin, wired, has, cathode }: Pin, words: Words): Finding[] {
  const [wiredWorking, hasWorking] = [wired.filter(isWorking), has.filter(isWorking)]
  const wiredMain = wiredWorking.filter((one) => !isTail(one))
  const hasMain = hasWorking.filter((one) => !isTail(one))
  if (!sameElectrodes(wiredMain, hasMain)) {
    const sentence = `Pin ${pin}: the socket is wired for ${named(wiredWorking, words)}, the ${words.tube} has ${named(hasWorking, words)} there.`
    return [finding('pins', 'no', sentence)]
  }
  if (hasMain.length > 0 || wiredWorking.length > 0) return []
  if (hasWorking.length > 0) {
    const sentence = `Pin ${pin} is the ${named(hasWorking, words)}: link it to the cathode${cathode ? ` (pin ${cathode})` : ''}, and free it of anything tied there.`
    return [finding('pins', 'change', sentence)]
  }
  return restingFinding(pin, wired, has, words)
}

/** Neither carries current there. */
function restingFinding(
  pin: string,
  wired: readonly PinElectrode[],
  has: readonly PinElectrode[],
  words: Words,
): Finding[] {
  const inner = has.filter(isInner)
  if (inner.length > 0 && !wired.some(isInner))
    return [finding('pins', 'note', `Pin ${pin} has ${named(inner, words)}: nothing may be tied to it.`)]
  const [shell, wiredShell] = [has, wired].map((all) => all.some(({ electrode }) => electrode === 'shell'))
  return shell && !wiredShell
    ? [finding('pins', 'note', `Pin ${pin} is the shell: see that nothing live is tied to it.`)]
    : []
}

const sameElectrodes = (some: readonly PinElectrode[], others: readonly PinElectrode[]): boolean =>
  some.length === others.length && some.every((one) => others.some((two) => keyOf(one) === keyOf(two)))
