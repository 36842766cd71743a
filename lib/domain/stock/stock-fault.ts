/** Refusals of the stock beyond those of a single tube's boxes, and their sentences. */

import type { Words } from '../words'
import { type LabelSheetFault, labelSheetFaultText } from './label/label-sheet'
import { type Whereabouts, whereaboutsWord } from './tube'

export type StockFault =
  | { readonly code: 'sheet-mark-missing' }
  | { readonly code: 'sheet-mark-unknown'; readonly mark: string; readonly designation: string }
  | { readonly code: 'sheet-other-type'; readonly mark: string; readonly designation: string; readonly wanted: string }
  | { readonly code: 'sheet-tested-already'; readonly mark: string }
  | { readonly code: 'sheet-not-in-stock'; readonly mark: string; readonly whereabouts: Whereabouts }
  | { readonly code: 'lot-empty'; readonly designation: string }
  | { readonly code: 'count-below-zero'; readonly what: string; readonly count: number; readonly by: number }
  | {
      readonly code: 'part-not-there'
      readonly part: string
      readonly needed: number
      readonly there: number
      readonly inDrawer: number
      /** Jobs the rest is set aside for. */
      readonly asideFor: readonly string[]
    }
  | { readonly code: 'photo-empty' }
  | { readonly code: 'photo-too-big'; readonly name: string; readonly bytes: number; readonly most: number }
  | { readonly code: 'photo-no-picture'; readonly name: string }
  | { readonly code: 'photo-damaged'; readonly name: string }
  | { readonly code: 'photos-full'; readonly most: number }
  | { readonly code: 'labels-off-page'; readonly fault: LabelSheetFault }
  | { readonly code: 'import-undone-already'; readonly fileName: string }
  | { readonly code: 'import-under-way'; readonly fileName: string }

const megabytes = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`

export function stockFaultText(fault: StockFault, words: Words): string {
  switch (fault.code) {
    case 'sheet-mark-missing':
      return `Mark is empty. Type or scan the mark of the ${words.tube}, or tick that new ones are taken in without asking.`
    case 'sheet-mark-unknown':
      return `Mark ${fault.mark} is not in the stock. Correct it; or press Enter once more to take it in as a new ${fault.designation} with these readings.`
    case 'sheet-other-type':
      return `${fault.mark} is a ${fault.designation}; this sheet is for ${fault.wanted}. Check the mark, or start a sheet for that type.`
    case 'sheet-tested-already':
      return `${fault.mark} stands on this sheet already. Check the mark, or correct its line.`
    case 'sheet-not-in-stock':
      return `${fault.mark} is ${whereaboutsWord(fault.whereabouts)}, so it cannot be on the tester. Check the mark, or put it back into stock first.`
    case 'lot-empty':
      return `No ${fault.designation} is left in this lot.`
    case 'count-below-zero':
      return `${fault.what}: there are ${fault.count}, so ${Math.abs(fault.by)} cannot be taken away.`
    case 'part-not-there':
      return partNotThereText(fault)
    case 'photo-empty':
      return 'No picture is chosen. Choose a JPEG, PNG or WebP file.'
    case 'photo-too-big':
      return `${fault.name} has ${megabytes(fault.bytes)}; a picture may have at most ${megabytes(fault.most)}.`
    case 'photo-no-picture':
      return `${fault.name} is no JPEG, PNG or WebP picture. Choose another file.`
    case 'photo-damaged':
      return `${fault.name} is cut off or damaged, and was not kept. Save or take the picture again.`
    case 'photos-full':
      return `There are ${fault.most} pictures already. Delete one first.`
    case 'labels-off-page':
      return labelSheetFaultText(fault.fault)
    case 'import-undone-already':
      return `${fault.fileName} was undone already. Nothing of it is left to take back.`
    case 'import-under-way':
      return `${fault.fileName} is under way. Wait until it is through, or cancel it.`
  }
}

function partNotThereText({
  part,
  needed,
  there,
  inDrawer,
  asideFor,
}: Extract<StockFault, { code: 'part-not-there' }>) {
  const aside =
    asideFor.length === 0 ? '' : `, the rest is set aside for ${asideFor.map((job) => `job ${job}`).join(', ')}`
  return `${part}: ${needed} needed, ${there} free for this job; ${inDrawer} in the drawer${aside}. Nothing was saved. Put in what came, or correct the count of the part, and tick it then.`
}
