/** Whose a code is: the shop's own list says, and nothing else does. */
import type { Remark } from '../designation/designation-reading'
import type { OwnMaker } from '../seen'

function makerRemark(what: string, named: OwnMaker | undefined): Remark {
  return named
    ? { sentence: `${what}: ${named.name}.`, source: 'shop' }
    : { sentence: `${what}: whose it is, the shop’s own list does not say.`, source: 'shop' }
}

export const sourceCodeRemark = (code: string, makers: readonly OwnMaker[]): Remark =>
  makerRemark(
    `US source code ${code}`,
    makers.find(({ sourceCodes }) => sourceCodes.includes(code)),
  )

export const factoryMarkRemark = (mark: string, makers: readonly OwnMaker[]): Remark =>
  makerRemark(
    `Factory mark ${mark}`,
    makers.find(({ factoryMarks }) => factoryMarks.includes(mark)),
  )

export const janRemark = (letters: string, makers: readonly OwnMaker[]): Remark =>
  makerRemark(
    `Maker letters ${letters} after JAN`,
    makers.find(({ janLetters }) => janLetters.includes(letters)),
  )
