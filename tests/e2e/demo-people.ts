/** Signing in to the demo shop, as the people its seeding leaves behind. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Browser, type BrowserContext, expect, type Page } from '@playwright/test'
import { demoSignIns } from '@/tests/support/demo-sign-in'
import { demoShop } from '@/tests/support/e2e-shops'

/** Sign-in names of the demo shop: two technicians, one at the counter. */
export type DemoName = 'tess' | 'anselm' | 'milo'

function passPhraseOf(name: DemoName): string {
  const file = join(process.env.E2E_DATA ?? '', 'demo', 'demo-sign-in.txt')
  const person = demoSignIns(readFileSync(file, 'utf8')).find(({ signInName }) => signInName === name)
  if (!person) throw new Error(`The demo shop knows nobody called ${name} (${file}).`)
  return person.passPhrase
}

/** On a sign-in page that is open already. */
export async function signInHere(page: Page, name: DemoName, passPhrase = passPhraseOf(name)): Promise<void> {
  await page.getByLabel('Sign-in name').fill(name)
  await page.getByLabel('Pass phrase').fill(passPhrase)
  await page.getByRole('button', { name: 'Sign in' }).click()
}

export async function signIn(page: Page, name: DemoName): Promise<void> {
  await page.goto(`${demoShop}/sign-in`)
  await signInHere(page, name)
  await expect(page.getByRole('heading', { name: 'The day' })).toBeVisible()
}

export type Seat = { readonly page: Page; readonly context: BrowserContext }

/** A browser window of one's own, signed in. */
export async function seatOf(
  browser: Browser,
  name: DemoName,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<Seat> {
  const context = await browser.newContext({ baseURL: demoShop, ...options })
  context.setDefaultTimeout(20_000)
  const page = await context.newPage()
  await signIn(page, name)
  return { page, context }
}
