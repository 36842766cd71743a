import { beforeAll, describe, expect, it } from 'vitest'
import type { Paper } from '@/lib/documents/paper'
import { renderPdf } from '@/lib/documents/pdf'
import { listJobHistory } from '@/lib/store/history'
import { findPaper } from '@/lib/store/paper'
import { findTube } from '@/lib/store/tube'
import { fitTube } from '@/lib/workflow/work/fit-tubes'
import { issueWorkOrder } from '@/lib/workflow/work/issue-work-order'
import { freshDatabase } from '@/tests/support/fresh-database'
import { readPdf, squeezed } from '@/tests/support/pdf-text'
import { atCounter } from '@/tests/support/person-at-work'
import { done, draftWith, jobOf, jobOnBench, send, shopOnFile } from '@/tests/support/quoted-job'
import { openStockedShop, tubeInStock } from '@/tests/support/stocked-shop'
import { acceptedJob, later, read, signed } from '@/tests/support/tested-job'

freshDatabase()
beforeAll(() => openStockedShop())

async function printed(number: string, step = atCounter('Odo', later(60).now)): Promise<string> {
  const id = done(
    await issueWorkOrder(step, await shopOnFile(), { jobNumber: number, address: 'https://bench.example' }),
  )
  const paper = await findPaper(id)
  if (!paper) throw new Error('no paper')
  const pdf = await readPdf(await renderPdf(paper.view as Paper, { createdAt: paper.issuedAt }))
  return squeezed(pdf.text)
}

const says = (text: string, ...parts: string[]) => {
  for (const part of parts) expect(text).toContain(squeezed(part))
}

describe('the work order', () => {
  it('tells sockets, tubes by mark, operations, consent, targets, safety lines and cautions', async () => {
    const { number, tubeIds } = await acceptedJob()
    const marks = await Promise.all(tubeIds.map(async (id) => (await findTube(id))?.mark ?? ''))
    done(await read(number, { phase: 'before', step: later(10) }))
    const text = await printed(number)
    says(
      text,
      `Job ${number}`,
      'Mirela Thorn',
      `6L6GC, mark ${marks[0]}`,
      `6L6GC, mark ${marks[1]}`,
      '6V6GT, mark T-101',
    )
    says(
      text,
      'Set idle current',
      'by phone, 207-555-0177, to quote',
      'Discharge proved by meter',
      'at most 60 V d.c.',
      'at most 3.5 mA',
    )
    says(text, 'Caution: this amplifier can kill', 'Chassis from above', 'Lethal voltage remains')
    // 340 V less 19 V: 80 % and 100 % of the 30 W of a 6L6GC are 74.8 and 93.5 mA.
    says(text, '321 V', '74.8 mA to 93.5 mA', '80 % to 100 %')
    expect((await listJobHistory((await jobOf(number)).id))[0]?.did).toBe('Work order printed')
  })

  it('before an answer it is one for finding the fault, and says which quote waits', async () => {
    const number = await jobOnBench()
    says(
      await printed(number),
      'Find the fault only: no quote is accepted.',
      'There is no quote yet.',
      'none recorded',
      'after a reading',
    )
    await draftWith(number, [await tubeInStock()])
    done(await send(number))
    says(await printed(number), 'is waiting for an answer. Nothing of it is ordered.')
  })

  it('what is fitted is no longer to fit, and what is signed stands in its line', async () => {
    const { number, tubeIds } = await acceptedJob()
    done(await fitTube(later(20), number, 'V3'))
    done(await signed(number, 'earth-bond'))
    const text = await printed(number)
    const [first, second] = await Promise.all(tubeIds.map(async (id) => (await findTube(id))?.mark ?? ''))
    expect(text).not.toContain(squeezed(`fit ${first}`))
    says(text, `6L6GC, mark ${first}`, `fit ${second}`, '0.11 Ω', 'Safety tester, cal. Feb 11, 2031')
  })

  it('a paper once issued stays as it was', async () => {
    const { number } = await acceptedJob()
    const id = done(
      await issueWorkOrder(later(15), await shopOnFile(), { jobNumber: number, address: 'https://bench.example' }),
    )
    const before = await findPaper(id)
    done(await fitTube(later(20), number, 'V3'))
    expect((await findPaper(id))?.view).toEqual(before?.view)
  })
})
