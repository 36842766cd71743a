/** What stands on the label of a tube. */
import { dayInZone, formatDay } from '../../calendar'
import type { Words } from '../../words'
import type { StockedTube } from '../tube'
import { plateCurrentText, settingText, transconductanceText } from '../tube-text'

export type LabelText = {
  readonly mark: string
  readonly designation: string
  /** Figures of the test, then its point and day; empty when it was never tested. */
  readonly lines: readonly string[]
}

export function labelText({ tube, test, shortsFoundAt }: StockedTube, zone: string, words: Words): LabelText {
  const { mark, designation } = tube
  const day = (at: Date) => formatDay(dayInZone(at, zone), words.locale)
  if (shortsFoundAt) return { mark, designation, lines: [`SHORT found ${day(shortsFoundAt)}`] }
  if (!test) return { mark, designation, lines: ['untested'] }
  const figures = [plateCurrentText(test.sections), transconductanceText(test.sections)].filter(Boolean)
  // Two sections beside each other would not fit a small label, and a figure must not be cut.
  const shown = test.sections.length > 1 ? figures.map((text) => text.replace(' and ', ' / ')) : [figures.join(', ')]
  return { mark, designation, lines: [...shown, `at ${settingText(test)}`, day(test.testedAt)].filter(Boolean) }
}
