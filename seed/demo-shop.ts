/**
 * Fills a new database with the demo shop, all of it invented. Everything goes
 * through the steps of the real program, each at its own instant before the day
 * of seeding, so histories and papers are what the program itself wrote.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { ok, type Result } from '@/lib/domain/result'
import { closeDatabase, dataFolder } from '@/lib/store/database'
import { shopCalendar } from './calendar-of-shop'
import { COLLECTED_EARLIER } from './jobs/stories/collected-earlier'
import { COLLECTED_FIRST } from './jobs/stories/collected-first'
import { COLLECTED_LATER } from './jobs/stories/collected-later'
import { NEARLY_DONE } from './jobs/stories/nearly-done'
import { JUST_IN, ON_BENCH } from './jobs/stories/on-bench'
import { RETURNED } from './jobs/stories/returned'
import { WAITING } from './jobs/stories/waiting'
import { storyHappenings } from './jobs/story'
import { calibrationHappenings, openDemoShop } from './shop/open-demo-shop'
import { signInText } from './shop/people'
import { DEMO_SHOP } from './shop/settings'
import { besideDrawers } from './stock/beside-drawers'
import { stockHappenings } from './stock/fill-drawers'
import { ownTypeHappenings } from './stock/own-types'

export const STORIES = [
  ...COLLECTED_FIRST,
  ...COLLECTED_EARLIER,
  ...COLLECTED_LATER,
  ...RETURNED,
  ...NEARLY_DONE,
  ...WAITING,
  ...ON_BENCH,
  ...JUST_IN,
] as const

/** Gives the text that says who may sign in. Refused when the database has a shop already. */
export async function seedDemoShop(now: Date): Promise<Result<string, 'already-open'>> {
  const opened = await openDemoShop(shopCalendar(now, DEMO_SHOP.timeZone))
  if (!opened.ok) return opened
  const world = opened.value
  const happenings = [
    ...calibrationHappenings(world),
    ...ownTypeHappenings(world),
    ...stockHappenings(world),
    ...besideDrawers(world),
    ...STORIES.flatMap((story) => storyHappenings(world, story)),
  ]
  const inOrder = happenings.toSorted((a, b) => a.at.getTime() - b.at.getTime())
  for (const { run } of inOrder) await run()
  return ok(signInText(DEMO_SHOP.name))
}

if (process.argv[1] === import.meta.filename) {
  // No mail of the demo's past may reach a server, whatever this machine is set up for.
  delete process.env.BENCHGLOW_SMTP_URL
  const seeded = await seedDemoShop(new Date())
  await closeDatabase()
  if (!seeded.ok) throw new Error('The demo shop is only put into an empty database: this one has a shop already')
  writeFileSync(join(dataFolder(), 'demo-sign-in.txt'), seeded.value)
}
