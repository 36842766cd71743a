import { readFileSync } from 'node:fs'
import { expect, test } from '@playwright/test'
import { demoShop, emptyShop } from '@/tests/support/e2e-shops'

const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string }

for (const [name, address] of [
  ['demo', demoShop],
  ['empty', emptyShop],
]) {
  test(`the ${name} shop says it is well, and which version it is`, async ({ request }) => {
    const response = await request.get(`${address}/api/health`)
    expect(response.status()).toBe(200)
    expect(await response.json()).toEqual({ status: 'ok', database: 'ok', version })
  })
}
