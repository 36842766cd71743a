/**
 * The cautions printed on every paper that goes near an amplifier.
 *
 * They are what the trade says to itself, no legal text: local codes and
 * licensed practice come first, and the last line says so.
 */
import type { CautionsBlock } from './paper'
import type { Vocabulary } from './words'
import { capital } from './words'

const fuseWords = (fuse: string): string => (fuse === '' ? 'marked on the amplifier' : `marked: ${fuse}`)

/** Work order and pickup sheet. */
export function cautionsBlock(v: Vocabulary, fuse: string): CautionsBlock {
  return {
    type: 'cautions',
    level: 'caution',
    title: 'Caution: this amplifier can kill',
    items: [
      `Lethal voltage remains inside after unplugging. Whoever opens it pulls the ${v.cord}, discharges the capacitors, proves it with a meter, and measures again after a minute: volts come back.`,
      `Hot glass: ${v.tubes} and what is near them burn skin. Let them cool; never cover the vents.`,
      `The correct load is always connected before it is switched on: a loudspeaker or dummy load of the marked impedance.`,
      `The correct fuse only, of the type and value ${fuseWords(fuse)}. A fuse that blows again means a fault. The ${v.earth} is never defeated.`,
      'Local codes and licensed practice come first. Nothing on this paper takes their place.',
    ],
  }
}

/** Receipt. */
export function shortCautions(v: Vocabulary): CautionsBlock {
  return {
    type: 'cautions',
    level: 'caution',
    title: 'Caution',
    items: [
      `Lethal voltage remains inside after unplugging: do not open it. Hot glass: let ${v.tubes} cool. Always the correct load connected, always the correct fuse. Local codes and licensed practice come first.`,
    ],
  }
}

/** For an amplifier that goes back as it came. */
export function unrepairedBox(v: Vocabulary, reason: string): CautionsBlock {
  const because = reason.trim() === '' ? [] : [`Reason: ${reason.trim()}`]
  return {
    type: 'cautions',
    level: 'danger',
    title: 'Not repaired. Not safety-tested. Do not connect.',
    items: [
      'This amplifier was not repaired and was not safety-tested. It goes back unrepaired.',
      ...because,
      `It must not be connected to the ${v.mains} supply or switched on until a competent person has repaired it and tested its safety.`,
      `${capital(v.tubes)}, capacitors and wiring inside may hold lethal voltage after unplugging.`,
    ],
  }
}
