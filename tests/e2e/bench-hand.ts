/** The hands of the one who walks: what is pressed and filled in again and again. */
import { expect, type Page } from '@playwright/test'
import { readPdf } from '@/tests/support/pdf-text'

export const fill = (page: Page, name: string, value: string) => page.locator(`[name="${name}"]`).fill(value)

export const pick = (page: Page, name: string, value: string) => page.locator(`[name="${name}"]`).selectOption(value)

export const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click()

export const step = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Steps of this job' }).getByRole('link', { name }).click()

/** The text of a paper, as somebody who opens the PDF reads it. */
export async function paperText(page: Page, address: string): Promise<string> {
  const response = await page.request.get(address)
  expect(response.status()).toBe(200)
  expect(response.headers()['content-type']).toBe('application/pdf')
  return (await readPdf(new Uint8Array(await response.body()))).text
}
