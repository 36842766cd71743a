/** The chassis of an amplifier as its sheet has it, before anything is measured. */
import { ChassisDrawing } from '@/app/_components/chassis/chassis-drawing'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import { socketViews } from '@/app/_components/chassis/socket-views'
import { type AmpSheet, ampName } from '@/lib/domain/amp/amp'
import type { Words } from '@/lib/domain/words'

export function SheetChassis({ sheet, words }: { sheet: AmpSheet; words: Words }) {
  const { amp } = sheet
  const titleLines = amp.serial === '' ? [] : [`serial ${amp.serial}`]
  return (
    <ChassisDrawing
      title={ampName(amp)}
      titleLines={titleLines}
      sockets={socketViews(sheet, null)}
      words={chassisWords(words)}
    />
  )
}
