/** A maker as the shop knows it: its name, and the marks by which its work is told. Makers are the shop's own entries. */
import { type Shown, shown } from '@/lib/domain/history/changes'

export type MakerDetails = {
  readonly name: string
  /** Three figures before a date code. */
  readonly sourceCodes: readonly string[]
  /** Behind "JAN-". */
  readonly janLetters: readonly string[]
  /** Letters or signs of an etched code. */
  readonly factoryMarks: readonly string[]
  readonly note: string
}

export type Maker = MakerDetails & { readonly id: string; readonly version: number }

export const makerShown = (maker: MakerDetails): Shown =>
  shown([
    ['Name', maker.name],
    ['Source codes', maker.sourceCodes.join(' ')],
    ['JAN letters', maker.janLetters.join(' ')],
    ['Factory marks', maker.factoryMarks.join(' ')],
    ['Note', maker.note],
  ])
