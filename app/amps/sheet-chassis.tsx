/** The chassis of an amplifier as its sheet has it, before anything is measured. */
import { ChassisDrawing } from '@/app/_components/chassis/chassis-drawing'
import { chassisWords } from '@/app/_components/chassis/chassis-words'
import { socketViews } from '@/app/_components/chassis/socket-views'
import { type AmpSheet, ampName } from '@/lib/domain/amp/amp'
import type { TubeCatalogue } from '@/lib/domain/tube/tube-catalogue'
import type { Words } from '@/lib/domain/words'

export function SheetChassis({ sheet, words, catalogue }: { sheet: AmpSheet; words: Words; catalogue: TubeCatalogue }) {
  const { amp } = sheet
  const titleLines = amp.serial === '' ? [] : [`serial ${amp.serial}`]
  return (
    <ChassisDrawing
      title={ampName(amp)}
      titleLines={titleLines}
      sockets={socketViews(sheet, null, catalogue)}
      words={chassisWords(words)}
    />
  )
}
