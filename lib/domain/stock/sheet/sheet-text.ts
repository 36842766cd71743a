/** What a test sheet says of its run, in sentences. */
import { amps, siemens } from '../../units'
import { capital, type Words } from '../../words'
import { gmText, milliampsText } from '../tube-text'
import { BOOK_HIGH, BOOK_LOW } from './book-point'
import type { FigureKind, SheetAlarm, SheetFigure } from './sheet-spread'

/** With its unit; to the hundredth of a mA or mA/V, which a mean would else run beyond. */
export function sheetFigureText(kind: FigureKind, value: number): string {
  const rounded = Math.round(value * 1e5) / 1e5
  return kind === 'plateCurrent' ? milliampsText(amps(rounded)) : gmText(siemens(rounded))
}

export function sheetFigureName({ kind, section }: SheetFigure, words: Words, twin: boolean): string {
  const name = kind === 'plateCurrent' ? `${capital(words.plate)} current` : 'Transconductance'
  return twin ? `${name}, section ${section}` : name
}

const percent = (share: number): string => `${Math.round(share * 100)} %`

export function alarmText(alarm: SheetAlarm, words: Words, twin: boolean): string {
  const name = sheetFigureName(alarm, words, twin)
  const value = sheetFigureText(alarm.kind, alarm.value)
  if (alarm.against === 'run') {
    const middle = sheetFigureText(alarm.kind, alarm.median)
    return `${alarm.mark}: ${name.toLowerCase()} ${value} lies far from this run, whose middle is ${middle}. Look at the pins and test it again.`
  }
  const book = sheetFigureText(alarm.kind, alarm.book)
  return `${alarm.mark}: ${name.toLowerCase()} ${value} is ${percent(alarm.share)} of the handbook's ${book} at this point; good new ${words.tubes} read ${percent(BOOK_LOW)} to ${percent(BOOK_HIGH)}.`
}
