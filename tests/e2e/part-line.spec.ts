/**
 * A part of the drawers on a quote, from the line to its count: too few are said and block nothing, the yes sets
 * aside, the tick takes out, and taking the tick back gives back. Walked with JavaScript and without.
 */
import { expect, type Locator, type Page, test } from '@playwright/test'
import { squeezed } from '@/tests/support/pdf-text'
import { fill, paperText, pick, press } from './bench-hand'
import { seatOf } from './demo-people'

async function newPart(page: Page, name: string): Promise<string> {
  await page.goto('/stock/parts/new')
  await fill(page, 'name', name)
  await pick(page, 'kind', 'resistor')
  await fill(page, 'value', '220 kΩ 2 W')
  await fill(page, 'count', '3')
  await fill(page, 'reorderLevel', '1')
  await fill(page, 'location', 'Drawer R9')
  await fill(page, 'price', '1,25')
  await press(page, 'Write the part down')
  await expect(page.getByText('3 in the drawer, 0 set aside for jobs, 3 free')).toBeVisible()
  return new URL(page.url()).pathname
}

async function newJob(page: Page, who: string): Promise<string> {
  await page.goto('/jobs/new')
  await fill(page, 'who', who)
  await press(page, 'New customer, new amplifier')
  await fill(page, 'customer.name', who)
  await fill(page, 'customer.phone', '555-0163')
  await fill(page, 'amp.make', 'Corvane')
  await fill(page, 'amp.model', 'Tilt 20')
  await fill(page, 'amp.serial', `S-${who}`)
  await fill(page, 'amp.mainsVolts', '120')
  await pick(page, 'amp.protectionClass', 'I')
  await fill(page, 'fault', 'Loses bias when warm.')
  await press(page, 'Take it in')
  await page.waitForURL(/jobs\/\d+-\d\?taken=in/)
  return /jobs\/(\d+-\d)/.exec(page.url())?.[1] ?? ''
}

const box = (page: Page, name: string): Locator => page.locator(`[name="${name}"]`)

for (const javaScriptEnabled of [true, false])
  test(`a quote line with a part, ${javaScriptEnabled ? 'with' : 'without'} JavaScript`, async ({ browser }) => {
    const { page, context } = await seatOf(browser, 'tess', { javaScriptEnabled })
    const name = `Bleeder ${javaScriptEnabled ? 'A' : 'B'}`
    const part = await newPart(page, name)
    const job = await newJob(page, `Wilhelmina Ostby ${javaScriptEnabled ? 'A' : 'B'}`)

    await page.goto(`/jobs/${job}/quote`)
    await press(page, 'Write a quote')
    await box(page, 'part').selectOption({ label: `${name}, 220 kΩ 2 W: $1.25, 3 free` })
    await press(page, 'Add a part')
    await expect(box(page, 'parts.0.text')).toHaveValue(`${name}, 220 kΩ 2 W`)
    await expect(box(page, 'parts.0.unitPrice')).toHaveValue('1.25')
    await expect(box(page, 'parts.0.taxable')).toBeChecked()
    await fill(page, 'parts.0.thousandths', '1,5')
    await press(page, 'Work out and keep the draft')
    await expect(page.getByText('quantity must be a whole number, as the drawer counts pieces').first()).toBeVisible()
    await fill(page, 'parts.0.thousandths', '4')
    await press(page, 'Add a part')
    await expect(box(page, 'parts.1.text')).toHaveValue('')
    await fill(page, 'parts.1.text', 'Sleeving, by free text')
    await fill(page, 'parts.1.unitPrice', '0,40')
    await press(page, 'Work out and keep the draft')
    await expect(page.getByText('The draft is kept.')).toBeVisible()
    await expect(page.getByText('4 needed, 3 free: order 1')).toBeVisible()
    await press(page, 'Print and hand over')
    await expect(page.getByText('4 needed, 3 free: order 1')).toBeVisible()
    await press(page, /accepted$/)
    await expect(page.getByRole('heading', { name: 'Accepted' })).toBeVisible()

    await page.goto('/')
    await expect(page.getByRole('region', { name: 'Parts awaited' })).toContainText(
      `Job ${job}: 4 needed, 3 set aside: order 1 × ${name}, 220 kΩ 2 W`,
    )
    await page.goto(`/jobs/${job}/work`)
    await expect(page.getByText('4 needed, 3 free: order 1')).toBeVisible()
    await press(page, /^Used Bleeder/)
    await expect(page.getByText(/4 needed, 3 free for this job; 3 in the drawer\. Nothing was saved/)).toBeVisible()
    await press(page, 'Print work order')
    await page.waitForURL('**/papers/**')
    expect(squeezed(await paperText(page, page.url()))).toContain(squeezed('4 needed, 3 free: order 1'))

    await page.goto(part)
    await expect(page.getByText('3 in the drawer, 3 set aside for jobs, 0 free; 1 short for jobs')).toBeVisible()
    await pick(page, 'way', 'put-in')
    await fill(page, 'number', '2')
    await fill(page, 'reason', 'Delivery')
    await press(page, 'Change the count')
    await expect(page.getByText('5 in the drawer, 4 set aside for jobs, 1 free')).toBeVisible()

    await page.goto(`/jobs/${job}/work`)
    await expect(page.getByText('Drawer R9')).toBeVisible()
    await press(page, /^Used Bleeder/)
    await expect(page.getByRole('button', { name: /^Not after all Bleeder/ })).toBeVisible()
    await page.goto(part)
    await expect(page.getByText('1 in the drawer, 0 set aside for jobs, 1 free')).toBeVisible()
    const jobs = page.getByRole('region', { name: 'Jobs' })
    await expect(jobs.getByRole('listitem').filter({ hasText: `Job ${job}: 4, Corvane Tilt 20` })).toBeVisible()
    await expect(page.getByText(`4 taken out of the drawer for job ${job}`).first()).toBeVisible()

    await page.goto(`/jobs/${job}/work`)
    await press(page, /^Not after all Bleeder/)
    await expect(page.getByRole('button', { name: /^Used Bleeder/ })).toBeVisible()
    await page.goto(part)
    await expect(page.getByText('5 in the drawer, 4 set aside for jobs, 1 free')).toBeVisible()
    await expect(page.getByText(`4 back in the drawer for job ${job}`).first()).toBeVisible()
    await context.close()
  })

for (const javaScriptEnabled of [true, false])
  test(`prices are looked up on a delivery without losing a box, ${javaScriptEnabled ? 'with' : 'without'} JavaScript`, async ({
    browser,
  }) => {
    const { page, context } = await seatOf(browser, 'milo', { javaScriptEnabled })
    const mark = javaScriptEnabled ? 'Z-901' : 'Z-902'
    await page.goto('/stock/receive')
    const help = page.getByRole('region', { name: 'What to ask' })
    await press(page, 'Look up prices')
    await expect(help).toContainText('Type is empty')
    await fill(page, 'designation', 'EL34')
    await pick(page, 'condition', 'used-tested')
    await fill(page, 'rows.1.mark', mark)
    await page.getByText('Further facts, the same for all').click()
    await fill(page, 'glass', 'smoked')
    await press(page, 'Look up prices')
    await expect(help.getByRole('definition')).toHaveCount(3)
    for (const line of await help.getByRole('definition').all())
      await expect(line).toHaveText(/^(\+ )?−?\$\d|^none in stock/)
    await expect(box(page, 'rows.1.mark')).toHaveValue(mark)
    await expect(box(page, 'glass')).toHaveValue('smoked')
    await fill(page, 'untested', '1')
    await fill(page, 'price', '30')
    await press(page, 'Take all into stock')
    await expect(page.getByText(`2 tubes of type EL34 taken in: ${mark}`)).toBeVisible()
    await page.goto(`/stock?q=${mark}`)
    await page.getByRole('link', { name: mark, exact: true }).click()
    await expect(page.locator('[name="glass"]')).toHaveValue('smoked')
    await expect(page.getByRole('region', { name: 'What to ask' }).getByRole('definition')).toHaveCount(3)
    await context.close()
  })
