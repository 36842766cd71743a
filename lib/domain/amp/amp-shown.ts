/** The amplifier's own fields as the history tells them. */
import { type Shown, shown } from '@/lib/domain/history/changes'
import type { AmpDetails } from './amp'

export const ampShown = (amp: AmpDetails): Shown =>
  shown([
    ['Make', amp.make],
    ['Model', amp.model],
    ['Serial', amp.serial],
    ['Mains', `${amp.mainsVolts} V`],
    ['Protection class', amp.protectionClass],
    ['Fuse', amp.fuse],
    ['Output stage', amp.outputClass],
    ['Load at the output transformer', amp.plateLoadOhms === null ? '' : `${amp.plateLoadOhms} Ω`],
    ['Note', amp.note],
  ])
