import { describe, expect, it } from 'vitest'
import { wantedMarks } from '@/lib/domain/stock/label/label-choice'
import { labelPlace, labelSheetFaults, USUAL_LABEL_SHEETS } from '@/lib/domain/stock/label/label-sheet'

const sheet = {
  ...{ name: 'Six', pageWidth: 100, pageHeight: 100, rows: 3, columns: 2, marginLeft: 5, marginTop: 4, active: true },
  ...{ labelWidth: 40, labelHeight: 25, gapAcross: 3, gapDown: 2 },
}

describe('a sheet of labels', () => {
  it('the fourth place of three rows of two is the second row, right', () => {
    expect(labelPlace(sheet, 4, 0)).toEqual({ page: 0, x: 5 + 43, y: 4 + 27 })
  })

  it('goes on with the next page: from place 6 the second label is the first of page 2', () => {
    expect(labelPlace(sheet, 6, 1)).toEqual({ page: 1, x: 5, y: 4 })
  })

  it('labels that run over the page are told with both measures', () => {
    expect(labelSheetFaults({ ...sheet, columns: 3 })).toEqual([{ field: 'columns', needs: 131, has: 100 }])
    expect(labelSheetFaults({ ...sheet, rows: 4 })).toEqual([{ field: 'rows', needs: 110, has: 100 }])
  })

  it('all that come with the program fit their page', () => {
    expect(USUAL_LABEL_SHEETS.flatMap(labelSheetFaults)).toEqual([])
  })
})

describe('marks as they are typed', () => {
  it('takes runs of numbers, drops doubles and tells what is no mark', () => {
    expect(wantedMarks('T-0009..T-0011, t-0010 zz')).toEqual({
      marks: ['T-0009', 'T-0010', 'T-0011'],
      unreadable: ['zz'],
    })
  })
})
